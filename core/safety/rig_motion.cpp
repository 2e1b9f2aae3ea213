#include "core/safety/rig_motion.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace mastwise::safety {
namespace {

double angle_between_deg(const motion::Vector& a, const motion::Vector& b) {
  return std::atan2(length(cross(a, b)), dot(a, b)) * 180.0 / std::numbers::pi;
}

}  // namespace

bool ShakeWatch::add(const motion::Sample& acceleration) {
  constexpr double kSecond_s = 1.0, kGap_s = 1.5;
  const double at_s = acceleration.at_s;
  const bool gap = at_s < began_s_ || at_s > began_s_ + kSecond_s + kGap_s;
  if (gap) {
    forget();
    began_s_ = at_s;
  } else if (at_s >= began_s_ + kSecond_s) {
    close_second();
    began_s_ = at_s;
  }
  second_.push_back(acceleration.value);
  return shakes();
}

void ShakeWatch::close_second() {
  constexpr std::size_t kFewest = 3;
  if (second_.size() < kFewest) return forget();
  const double count = static_cast<double>(second_.size());
  motion::Vector sum;
  for (const motion::Vector& value : second_) sum = sum + value;
  const motion::Vector mean = (1.0 / count) * sum;
  double squares = 0.0;
  for (const motion::Vector& value : second_) squares += dot(value - mean, value - mean);
  const bool shook = std::sqrt(squares / count) >= kShake_mps2;
  const bool steady = mean_ && angle_between_deg(*mean_, mean) <= kStill_deg;
  seconds_still_ = steady && !shook ? seconds_still_ + 1 : 0;
  if (seconds_still_ >= kSecondsStill) still_ = mean;
  const bool tilted = still_ && angle_between_deg(*still_, mean) > kTakenUp_deg;
  if (tilted && std::exchange(tilted_, tilted)) still_.reset();
  tilted_ = tilted;
  seconds_ = shook && still_ && !tilted ? seconds_ + 1 : 0;
  mean_ = mean;
  second_.clear();
}

bool TurnWatch::add(double heading_deg, Monotonic now) {
  constexpr std::size_t kFewest = 3;
  if (!read_.empty() && now < read_.back().first) forget();
  read_.emplace_back(now, heading_deg);
  std::erase_if(read_, [&](const auto& old) { return old.first < now - kWithin; });
  // Turns from the newest reading: the middle one needs an order.
  std::vector<double> early_deg, late_deg;
  for (const auto& [when, read_deg] : read_) {
    const double off_deg = fold_half_circle_deg(read_deg - heading_deg);
    if (when <= now - kWithin + kEarly) early_deg.push_back(off_deg);
    if (when >= now - kStays) late_deg.push_back(off_deg);
  }
  turns_ = false;
  if (early_deg.size() < kFewest || late_deg.size() < kFewest) return false;
  const auto middle = early_deg.begin() + static_cast<std::ptrdiff_t>(early_deg.size() / 2);
  std::nth_element(early_deg.begin(), middle, early_deg.end());
  turns_ = std::all_of(late_deg.begin(), late_deg.end(), [&](double off_deg) {
    return std::fabs(fold_half_circle_deg(off_deg - *middle)) > kTurned_deg;
  });
  return turns_;
}

}  // namespace mastwise::safety
