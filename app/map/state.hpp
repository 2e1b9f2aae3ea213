#pragma once

#include "app/shared/names.hpp"
#include "app/shared/plan.hpp"
#include "app/shared/survey.hpp"
#include "core/angles/bearing.hpp"
#include "core/map/borders.hpp"
#include "core/map/hillshade.hpp"
#include "core/map/projection.hpp"
#include "core/reception/ridge_shadow.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// The map around the stop, and the best spots for a station around it.
namespace mastwise {

// A place on the screen, in units to the right of and below the map's middle.
struct MapOffset {
  double right = 0.0, down = 0.0;
  bool operator==(const MapOffset&) const = default;
};

// The part of the stop's plane on the screen. On that plane every line from the stop has its true
// bearing and length (core/map/projection.hpp).
struct MapView {
  map::PlanePoint middle = {};  // from the stop
  double meters_per_unit = 150.0;
  Bearing<True> up = {};
  bool operator==(const MapView&) const = default;
};
inline constexpr double kNearestMap = 0.5, kFarthestMap = 2000.0;  // meters per unit

map::PlanePoint point_at(const MapView& view, MapOffset offset);
MapOffset offset_of(const MapView& view, map::PlanePoint point);
map::PlanePoint plane_point(double distance_m, Bearing<True> bearing);

// A map gesture: a drag, then a zoom and a turn about a place.
struct MapMove {
  MapOffset drag = {};
  double scale = 1.0;
  double turn_deg = 0.0;  // clockwise as seen
  MapOffset about = {};
};
MapView moved(MapView view, const MapMove& move);

// A view with the stop in the middle that shows `radius_m` around it.
MapView around_stop(const MapView& view, double radius_m);

// The ground, lines, towns and stations within a radius of the stop, and the ground behind ridges
// as the target's waves reach an antenna so high.
struct MapQuestion {
  Position from;
  bool practice = false;
  double radius_m = 0.0;
  std::size_t generation = 0;  // of the catalog
  std::optional<Station> target = {};
  double antenna_m = 0.0;  // the rig's, above ground
  bool operator==(const MapQuestion&) const = default;
};
// Whether the ground of one answer serves the other question: the stop has hardly moved.
bool same_ground(const MapQuestion& asked, const MapQuestion& now);
// The same for the whole answer.
bool same_sheet(const MapQuestion& asked, const MapQuestion& now);

struct MapTown {
  std::string name;
  map::PlanePoint at;
  std::uint32_t people = 0;  // 0: unknown
  bool operator==(const MapTown&) const = default;
};

// A state, and places well within it where its name may stand.
struct MapRegion {
  std::string name;
  std::vector<map::PlanePoint> within;
  bool operator==(const MapRegion&) const = default;
};

// How far from the stop the ground behind ridges is shown.
inline constexpr double kShadow_m = 128e3;

struct MapSheet {
  MapQuestion question;
  std::vector<map::PlaneLine> lines = {};
  std::optional<map::Relief> relief = {};
  std::vector<map::PlanePoint> stations = {};  // all of the catalog there
  std::vector<MapTown> towns = {};             // the most populous first
  std::vector<MapRegion> regions = {};
  std::optional<reception::RidgeShadow> shadow = {};  // of the target; needs its antenna's height
  std::string trouble = {};
  bool operator==(const MapSheet&) const = default;
};

// The chance of the weakest station in each cell around the stop.
struct AreaQuestion {
  StationsQuestion here;  // what a survey depends on, with a position
  std::vector<Station> stations = {};
  double radius_m = 0.0;
  bool operator==(const AreaQuestion&) const = default;
};

// A place clearly better than the stop.
struct AreaSpot {
  double distance_m = 0.0;
  Bearing<True> bearing;
  double chance_percent = 0.0;
  double gain_percent = 0.0;
  bool operator==(const AreaSpot&) const = default;
};

// Cells on a side, at least 10 m wide: ground data is not finer.
std::size_t area_side(double radius_m);
bool same_area(const AreaQuestion& asked, AreaQuestion now);

struct AreaSheet {
  static constexpr std::int8_t kUnknown = -1;

  AreaQuestion question;
  double done = 0.0;  // of the work, within [0, 1]
  std::size_t side = 0;
  std::vector<std::int8_t> percent = {};  // row by row from the north-west
  std::optional<double> here_percent = {};
  std::vector<AreaSpot> spots = {};
  std::vector<std::string> left_out = {};  // call signs of stations that cannot be scanned
  std::string trouble = {};
  bool operator==(const AreaSheet&) const = default;
};

enum class MapUp { North, Rig, Turned };
template <>
inline constexpr std::array kStoredNames<MapUp> = names({"north", "rig", "turned"});

inline constexpr std::array kAreaRadii_m{500.0, 1000.0, 2000.0, 5000.0, 10'000.0, 25'000.0};

// A place on the map that was held, as seen from the stop.
struct MapSpot {
  Position position;
  double error_m = 0.0;  // one sigma, of a finger on the map
  double distance_m = 0.0;
  Bearing<True> bearing = {};
  bool operator==(const MapSpot&) const = default;
};

// The map as the person set it, and the workers' results.
struct MapState {
  MapUp up = MapUp::North;
  MapView view = {};
  std::optional<StationKey> selected = {};
  std::optional<MapSpot> spot = {};
  bool area = false;            // show the best spots
  std::size_t area_radius = 2;  // of kAreaRadii_m
  std::optional<MapSheet> sheet = {};
  std::optional<AreaSheet> area_sheet = {};
  // Serial numbers of the current sheets; 0 is none.
  std::uint64_t sheets = 0, sheet_serial = 0, area_serial = 0;
  bool operator==(const MapState&) const = default;
};

}  // namespace mastwise
