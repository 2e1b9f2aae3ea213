#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/map/borders.hpp"
#include "core/map/projection.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace mastwise::map {

// A stretch of sea on a straight line from the center, meters from it.
struct SeaStretch {
  double from_m = 0.0;
  double to_m = 0.0;
  bool operator==(const SeaStretch&) const = default;
};

// The coasts around a place on land. Each coast that a line from there crosses leads from land to
// sea or back. Accuracy that of the coasts, 100 m to 1 km; inland lakes count as land.
class Shore {
 public:
  // The coasts within `radius_m` (0 to 2,000,000 m) of the center; std::nullopt if there are none,
  // or if PROJ refuses.
  static std::optional<Shore> around(const Borders& borders, Position center, double radius_m);

  // The sea between the center and a place on land, nearest first; `found` is refilled. Empty also
  // if an odd number of coasts lies between: then one end is in the sea by these coasts, which do
  // not know every pier and island.
  void sea_toward(Bearing<True> bearing, double distance_m, std::vector<SeaStretch>& found) const;

  // Whether that place lies at sea: an odd number of coasts on the line there. The center is on
  // land. `distance_m` within the radius.
  bool at_sea(Bearing<True> bearing, double distance_m) const;

  // Whether a coast lies within 50 km, to some 7 km; false beyond the radius.
  bool coast_near(Bearing<True> bearing, double distance_m) const;

 private:
  static constexpr std::size_t kSectors = 720;
  static constexpr double kCell_m = 10e3;

  struct Edge {
    PlanePoint from, to;
  };

  explicit Shore(double radius_m);
  void add(const PlaneLine& line);
  void add(const Edge& edge);
  void mark_near(PlanePoint point);
  std::ptrdiff_t cell_of(double offset_m) const;
  // Where the line crosses coasts, in any order.
  std::vector<double> crossings_m(Bearing<True> bearing, double distance_m) const;

  double radius_m_;
  std::ptrdiff_t side_;     // of the square of cells
  std::vector<bool> near_;  // cells within 50 km of a coast
  std::vector<Edge> crossed_ = {};
  // Of the edges that reach into each sector of bearings, their indexes.
  std::array<std::vector<std::size_t>, kSectors> sectors_ = {};
};

}  // namespace mastwise::map
