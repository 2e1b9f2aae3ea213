#include "core/nmea/parked.hpp"

#include <algorithm>
#include <cmath>

#include <GeographicLib/LocalCartesian.hpp>

namespace mastwise::nmea {
namespace {

GeographicLib::LocalCartesian plane_at(const Position& origin) {
  return GeographicLib::LocalCartesian(origin.latitude_deg(), origin.longitude_deg());
}

ParkedAverage::Offset offset(const Position& origin, const Position& position) {
  double east_m = 0.0;
  double north_m = 0.0;
  double up_m = 0.0;
  plane_at(origin).Forward(position.latitude_deg(), position.longitude_deg(), 0.0, east_m, north_m,
                           up_m);
  return {east_m, north_m};
}

}  // namespace

void ParkedAverage::add(const Position& position, Monotonic now) {
  const Sample sample{position, now};
  if (!origin_) origin_ = position;
  const Offset from_origin = offset(*origin_, position);
  if (count_ == 0 || !is_away(from_origin.east_m, from_origin.north_m)) {
    away_.clear();
    include(sample);
    return;
  }
  away_.push_back(sample);
  if (away_.size() < kAwayInARow) return;
  const std::vector<Sample> moved_to = std::move(away_);
  restart();
  for (const Sample& there : moved_to) add(there.position, there.when);
}

// The running mean and sum of squares [Welford 1962], in the plane at the first position.
void ParkedAverage::include(const Sample& sample) {
  const Offset at = offset(*origin_, sample.position);
  if (count_ == 0) first_ = sample.when;
  last_ = sample.when;
  if (count_ % stride_ == 0) show(at);
  ++count_;
  const double east_before_m = at.east_m - mean_east_m_;
  const double north_before_m = at.north_m - mean_north_m_;
  mean_east_m_ += east_before_m / static_cast<double>(count_);
  mean_north_m_ += north_before_m / static_cast<double>(count_);
  squares_m2_ +=
      east_before_m * (at.east_m - mean_east_m_) + north_before_m * (at.north_m - mean_north_m_);
}

// Half of them go when there is no more room.
void ParkedAverage::show(const Offset& at) {
  if (shown_.size() == kShown) {
    for (std::size_t i = 0; i < kShown / 2; ++i) shown_[i] = shown_[2 * i];
    shown_.resize(kShown / 2);
    stride_ *= 2;
    if (count_ % stride_ != 0) return;
  }
  shown_.push_back(at);
}

std::vector<ParkedAverage::Offset> ParkedAverage::scatter() const {
  std::vector<Offset> from_mean = shown_;
  for (Offset& each : from_mean) {
    each.east_m -= mean_east_m_;
    each.north_m -= mean_north_m_;
  }
  return from_mean;
}

bool ParkedAverage::is_away(double east_m, double north_m) const {
  const double limit_m = std::clamp(4.0 * scatter_m(), kLeastAway_m, kMostAway_m);
  return std::hypot(east_m - mean_east_m_, north_m - mean_north_m_) > limit_m;
}

double ParkedAverage::scatter_m() const {
  if (count_ < 2) return 0.0;
  return std::sqrt(squares_m2_ / (2.0 * static_cast<double>(count_ - 1)));
}

std::optional<ParkedPosition> ParkedAverage::result() const {
  if (count_ == 0) return std::nullopt;
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  double height_m = 0.0;
  plane_at(*origin_).Reverse(mean_east_m_, mean_north_m_, 0.0, latitude_deg, longitude_deg,
                             height_m);
  const auto mean = Position::at_deg(latitude_deg, longitude_deg);
  if (!mean) return std::nullopt;
  return ParkedPosition{*mean, count_ < 2 ? std::nullopt : std::optional(scatter_m()), count_,
                        last_ - first_};
}

}  // namespace mastwise::nmea
