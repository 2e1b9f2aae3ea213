#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>
#include <vector>

namespace mastwise::nmea {

// The course of the last straight drive, as a candidate for the rig heading. Only the driver can
// tell whether the rig drove forward or backed in (then the nose points to the reciprocal), and
// whether the vehicle that drove carries the antenna (a trailer is not its tow vehicle).
struct StraightCourse {
  Bearing<True> course;
  double length_m;   // of the straight, at least 20 m
  double sigma_deg;  // one sigma of the course
  bool operator==(const StraightCourse&) const = default;
};

// Finds the last straight: 20 to 30 m above 5 km/h, without a later turn [common practice, no
// source]. A course counts as unchanged while it stays within tolerance_deg of the straight's, or
// of its reciprocal: backing up along the straight is not a turn. Turns below 5 km/h show in the
// course if the receiver sends it, and otherwise once the rig is 10 m away from the straight; a
// tighter turn on the spot goes unnoticed. The sigma is the larger of the courses' scatter and of
// 10 degrees at 1 km/h, 1 at 10, 0.1 at 100 [common practice, no source]; it is not divided by the
// root of the count, since a receiver's courses in successive seconds are alike.
class StraightCourseFinder {
 public:
  // One good position for each epoch, with course and speed (meters a second) if the receiver sends
  // them; a straight needs both. `now` must not run backward.
  void add(const Position& position, std::optional<Bearing<True>> course,
           std::optional<double> speed_mps, Monotonic now);

  // The last straight; std::nullopt if there is none, or after a turn.
  const std::optional<StraightCourse>& last() const { return last_; }
  bool operator==(const StraightCourseFinder&) const = default;

  static constexpr double kLeastSpeed_mps = 5.0 / 3.6;
  static constexpr double kLeastLength_m = 20.0;
  static constexpr double kEnoughLength_m = 30.0;

 private:
  struct Sample {
    Position position;
    Bearing<True> course;
    double speed_mps;
    bool operator==(const Sample&) const = default;
  };

  void drive(const Sample& sample);
  void creep(const Position& position, std::optional<Bearing<True>> course,
             std::optional<double> speed_mps);
  void trim();
  bool is_straight() const;
  StraightCourse estimate() const;
  double length_m() const;
  Bearing<True> mean_course() const;
  double distance_from_end_m(const Position& position) const;
  void forget();

  std::vector<Sample> run_;  // the current straight: 30 m or little more
  std::optional<StraightCourse> last_;
  std::optional<Position> end_;  // of the last straight
  int creeping_aside_ = 0;       // consecutive slow positions with another course
  std::optional<Monotonic> heard_;
};

}  // namespace mastwise::nmea
