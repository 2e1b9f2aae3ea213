#pragma once

#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace mastwise::nmea {

// The position of a parked rig, from many positions of its receiver.
struct ParkedPosition {
  Position mean;
  // One sigma along one axis, in meters, of a single position about the mean; std::nullopt for a
  // single position. The mean is better than that, but not by the root of the count, since a
  // receiver's errors in successive seconds are alike.
  std::optional<double> scatter_m;
  std::size_t count;
  milliseconds duration;  // from the first to the last position
  bool operator==(const ParkedPosition&) const = default;
};

// Averages positions in the plane that touches the ellipsoid at the first of them (GeographicLib
// LocalCartesian). That errs by less than a millimeter within 100 m, at every longitude and at the
// poles. It restarts when the rig moves: when kAwayInARow positions in a row are farther from the
// mean than four times the scatter, clamped to kLeastAway_m to kMostAway_m. A single position that
// far away is a glitch of the receiver and is left out.
class ParkedAverage {
 public:
  // One position for each epoch, see Fix::positions_taken. `now` must not run backward.
  void add(const Position& position, Monotonic now);
  // std::nullopt before the first position.
  std::optional<ParkedPosition> result() const;
  void restart() { *this = ParkedAverage(); }
  // Some of the positions as offsets from the mean, evenly over the time: at most kShown.
  struct Offset {
    double east_m = 0.0, north_m = 0.0;
    bool operator==(const Offset&) const = default;
  };
  std::vector<Offset> scatter() const;
  static constexpr std::size_t kShown = 48;
  bool operator==(const ParkedAverage&) const = default;

  static constexpr std::size_t kAwayInARow = 3;
  static constexpr double kLeastAway_m = 10.0;
  static constexpr double kMostAway_m = 30.0;

 private:
  struct Sample {
    Position position;
    Monotonic when;
    bool operator==(const Sample&) const = default;
  };
  void include(const Sample& sample);
  void show(const Offset& at);
  bool is_away(double east_m, double north_m) const;
  double scatter_m() const;

  std::optional<Position> origin_;
  std::size_t count_ = 0;
  std::vector<Offset> shown_;  // from the origin; every stride_-th position
  std::size_t stride_ = 1;
  double mean_east_m_ = 0.0;
  double mean_north_m_ = 0.0;
  double squares_m2_ = 0.0;  // of the distances from the mean, both axes together
  Monotonic first_{};
  Monotonic last_{};
  std::vector<Sample> away_;  // the latest consecutive ones, fewer than kAwayInARow
};

}  // namespace mastwise::nmea
