#include "core/nmea/straight_course.hpp"

#include <algorithm>
#include <cmath>

#include <GeographicLib/Geodesic.hpp>

namespace mastwise::nmea {
namespace {

constexpr milliseconds kLongestSilence{3000};
constexpr double kSeenAway_m = 10.0;        // beyond a parked receiver's usual wandering
constexpr double kSeenCreeping_m = 3.0;     // beyond its scatter of neighboring seconds
constexpr double kSlowestCourse_mps = 0.4;  // below, a course is noise
constexpr double kAsideOfStraight_deg = 30.0;
constexpr int kCreepingAside = 2;
constexpr std::size_t kFewestPositions = 3;

double course_sigma_deg(double speed_mps) {
  return 10.0 / (3.6 * speed_mps);
}

double tolerance_deg(double speed_mps) {
  return std::max(5.0, 3.0 * course_sigma_deg(speed_mps));
}

struct Leg {
  double length_m;
  Bearing<True> bearing;
};

Leg leg(const Position& from, const Position& to) {
  double length_m = 0.0;
  double azimuth_deg = 0.0;
  double azimuth_at_end_deg = 0.0;
  GeographicLib::Geodesic::WGS84().Inverse(from.latitude_deg(), from.longitude_deg(),
                                           to.latitude_deg(), to.longitude_deg(), length_m,
                                           azimuth_deg, azimuth_at_end_deg);
  return {length_m, Bearing<True>::degrees(azimuth_deg)};
}

// Angle between the lines of two courses, forward or back.
double aside_deg(Bearing<True> one, Bearing<True> other) {
  const double turn_deg = (one - other).size_deg();
  return std::min(turn_deg, 180.0 - turn_deg);
}

}  // namespace

void StraightCourseFinder::add(const Position& position, std::optional<Bearing<True>> course,
                               std::optional<double> speed_mps, Monotonic now) {
  const bool after_gap = heard_ && now - *heard_ > kLongestSilence;
  heard_ = now;
  if (after_gap) {
    run_.clear();
    if (distance_from_end_m(position) > kSeenAway_m) forget();
  }
  if (course && speed_mps && *speed_mps >= kLeastSpeed_mps) {
    drive(Sample{position, *course, *speed_mps});
  } else {
    creep(position, course, speed_mps);
  }
}

void StraightCourseFinder::drive(const Sample& sample) {
  creeping_aside_ = 0;
  if (last_ && aside_deg(sample.course, last_->course) > tolerance_deg(sample.speed_mps)) forget();
  run_.push_back(sample);
  trim();
  if (run_.size() < kFewestPositions || length_m() < kLeastLength_m) return;
  last_ = estimate();
  end_ = sample.position;
}

void StraightCourseFinder::creep(const Position& position, std::optional<Bearing<True>> course,
                                 std::optional<double> speed_mps) {
  run_.clear();
  if (!last_) return;
  const double away_m = distance_from_end_m(position);
  const bool shows_aside = course && speed_mps && *speed_mps >= kSlowestCourse_mps &&
                           away_m > kSeenCreeping_m &&
                           aside_deg(*course, last_->course) > tolerance_deg(*speed_mps);
  creeping_aside_ = shows_aside ? creeping_aside_ + 1 : 0;
  const bool lies_aside = away_m > kSeenAway_m && aside_deg(leg(*end_, position).bearing,
                                                            last_->course) > kAsideOfStraight_deg;
  if (creeping_aside_ >= kCreepingAside || lies_aside) forget();
}

// Drops the oldest positions that are off the straight, or more than are needed.
void StraightCourseFinder::trim() {
  while (!is_straight()) run_.erase(run_.begin());
  while (run_.size() > kFewestPositions &&
         leg(run_[1].position, run_.back().position).length_m >= kEnoughLength_m) {
    run_.erase(run_.begin());
  }
}

bool StraightCourseFinder::is_straight() const {
  const Bearing<True> mean = mean_course();
  return std::all_of(run_.begin(), run_.end(), [&](const Sample& sample) {
    return (sample.course - mean).size_deg() <= tolerance_deg(sample.speed_mps);
  });
}

StraightCourse StraightCourseFinder::estimate() const {
  const Bearing<True> mean = mean_course();
  double squares_deg2 = 0.0;
  double speed_sum_mps = 0.0;
  for (const Sample& sample : run_) {
    squares_deg2 += std::pow((sample.course - mean).clockwise_deg(), 2);
    speed_sum_mps += sample.speed_mps;
  }
  const auto count = static_cast<double>(run_.size());
  const double scatter_deg = std::sqrt(squares_deg2 / (count - 1.0));
  return {mean, length_m(), std::max(scatter_deg, course_sigma_deg(speed_sum_mps / count))};
}

double StraightCourseFinder::length_m() const {
  return leg(run_.front().position, run_.back().position).length_m;
}

// The mean of turns from the newest course, since headings on both sides of north cannot be
// averaged.
Bearing<True> StraightCourseFinder::mean_course() const {
  const Bearing<True> newest = run_.back().course;
  double turns_deg = 0.0;
  for (const Sample& sample : run_) turns_deg += (sample.course - newest).clockwise_deg();
  return newest + Turn::clockwise_deg(turns_deg / static_cast<double>(run_.size()));
}

double StraightCourseFinder::distance_from_end_m(const Position& position) const {
  return end_ ? leg(*end_, position).length_m : 0.0;
}

void StraightCourseFinder::forget() {
  last_.reset();
  end_.reset();
  creeping_aside_ = 0;
}

}  // namespace mastwise::nmea
