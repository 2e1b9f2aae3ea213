#pragma once

#include "app/shared/ahead_stop.hpp"
#include "app/shared/survey.hpp"
#include "core/geo/position.hpp"
#include "core/reception/route.hpp"

#include <optional>
#include <string>
#include <vector>

// Places ahead and the reception along the way there.
namespace mastwise {

struct RouteQuestion {
  StationsQuestion here;  // what a survey depends on
  std::vector<Position> points = {};
  std::vector<std::string> networks = {};
  double step_km = 0.0;  // between surveys; 0: chosen by the length
  bool operator==(const RouteQuestion&) const = default;
};

// One network along the way.
struct RouteRow {
  std::string network = {};
  std::vector<reception::RouteChance> chances = {};  // of its best station, in driving order
  bool operator==(const RouteRow&) const = default;
};

// A part of the way, kilometers from the stop.
struct RoutePart {
  double from_km = 0.0;
  double to_km = 0.0;
  bool operator==(const RoutePart&) const = default;
};

struct RouteSheet {
  RouteQuestion question;
  double done = 0.0;  // of the work, within [0, 1]
  double length_km = 0.0;
  std::vector<RouteRow> rows = {};
  std::vector<RoutePart> without_terrain = {};  // each to halfway to its neighbors with terrain
  std::string trouble = {};
  bool operator==(const RouteSheet&) const = default;
};

// What the places are compared by.
enum class AheadWants { Pinned, Networks };
template <>
inline constexpr std::array kStoredNames<AheadWants> = names({"pinned", "networks"});

// A place on the way, the stop first.
struct AheadColumn {
  Position position;
  std::string name = {};                  // in the file that gave the place; empty: unknown
  std::optional<std::size_t> place = {};  // its index; the stop has none
  double at_km = 0.0;                     // along the way
  std::optional<Declination> declination = {};
  bool computed = false;
  std::vector<std::optional<AheadOffer>> offers = {};  // one for each network, once computed
  std::size_t holding = 0;                             // networks with at least the floor
  bool operator==(const AheadColumn&) const = default;
};

// One network along the way: where it has at least the floor.
struct AheadRow {
  std::string network = {};
  std::vector<reception::Stretch> stretches = {};
  bool operator==(const AheadRow&) const = default;
};

struct AheadFound {
  double floor_percent = kUsualFloor_percent;
  AheadWants wants = AheadWants::Networks;
  bool compared = false;                  // the networks are known
  std::vector<AheadRow> rows = {};        // one for each network
  std::vector<AheadColumn> columns = {};  // as driven
  std::size_t chosen = 0;                 // index of a column; 0: the stop
  double length_km = 0.0;
  double surveyed_km = 0.0;                     // from the stop
  std::vector<RoutePart> without_terrain = {};  // of what is surveyed
  // Networks that hold here, and how far on all of these do; empty while nothing is surveyed.
  std::size_t holding_here = 0;
  std::optional<double> hold_to_km = {};
  std::string trouble = {};
  bool operator==(const AheadFound&) const = default;
};

struct AheadState {
  std::vector<Position> places = {};      // possible stops, as driven
  std::vector<AheadStop> from_file = {};  // of those places that a file gave
  std::optional<AheadWants> wants = {};   // empty: what is pinned, if anything
  std::size_t floor = 0;                  // index in kPlanFloors
  std::optional<Position> chosen = {};  // one of the places; empty: the one with the most networks
  // Index of the first column where not all fit; empty: so that the chosen one is shown.
  std::optional<std::size_t> first_shown = {};
  // The last comparison, with its stop. It stays while another is computed.
  std::optional<AheadTable> table = {};
  std::optional<Position> table_from = {};
  std::optional<RouteSheet> route = {};

  AheadFound found = {};
  bool operator==(const AheadState&) const = default;
};

}  // namespace mastwise
