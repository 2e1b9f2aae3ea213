#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>
#include <vector>

namespace mastwise::nmea {

// The way that the rig last drove straight, as a candidate for its heading. Whether it drove
// forward or backed in (then the nose points to the reciprocal), and whether what drove is what
// carries the antenna (a trailer is not its tow vehicle), only the driver can say.
struct StraightCourse {
  Bearing<True> course;
  double length_m;   // of the straight, 20 m at least
  double sigma_deg;  // one sigma of the course
  bool operator==(const StraightCourse&) const = default;
};

// Finds the last straight: 20 to 30 m above 5 km/h, without a turn since [common practice, no
// source]. A course counts as unchanged while it keeps within tolerance_deg of the straight's, or
// of its reciprocal: backing up along the straight is no turn. Turns below 5 km/h are seen by the
// course where the receiver gives it, and else once the rig is 10 m away from the straight; one
// that turns within less than that, on the spot, is not seen. The sigma is the larger of the
// courses' scatter and of 10 degrees at 1 km/h, 1 at 10, 0.1 at 100 [common practice, no source];
// it is not divided by the root of the count, as a receiver's courses of neighboring seconds are
// alike.
class StraightCourseFinder {
 public:
  // One good position for each epoch, with course and speed (meters a second) where the receiver
  // gives them: without them there is no straight. `now` must not run backward.
  void add(const Position& position, std::optional<Bearing<True>> course,
           std::optional<double> speed_mps, Monotonic now);

  // The last straight, or nothing when there was none, or a turn after it.
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

  std::vector<Sample> run_;  // the straight being driven: 30 m or little more
  std::optional<StraightCourse> last_;
  std::optional<Position> end_;  // of the last straight
  int creeping_aside_ = 0;       // slow positions in a row whose course was another
  std::optional<Monotonic> heard_;
};

}  // namespace mastwise::nmea
