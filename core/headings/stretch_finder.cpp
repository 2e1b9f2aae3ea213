#include "core/headings/stretch_finder.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {

std::optional<DrivenStretch> StretchFinder::add(const Sample& sample, const MagneticField& field,
                                                UtcTime at, Monotonic now) {
  if (!run_.empty() && now - run_.back().at > kGap) run_.clear();
  if (sample.speed_mps < kLeastSpeed_mps || (not_before_ && now < *not_before_)) {
    run_.clear();
    return std::nullopt;
  }
  run_.push_back({now, sample});
  // The part of the run that is straight up to now.
  double least_deg = 0.0, most_deg = 0.0;
  auto from = run_.end();
  while (from != run_.begin()) {
    const double off_deg = (std::prev(from)->sample.course - sample.course).clockwise_deg();
    least_deg = std::min(least_deg, off_deg);
    most_deg = std::max(most_deg, off_deg);
    if (most_deg - least_deg > kSteady_deg) break;
    --from;
  }
  run_.erase(run_.begin(), from);
  if (now - run_.front().at < kSettling + kWindow) return std::nullopt;
  const auto stretch = finish(field, at);
  run_.clear();
  not_before_ = now + kPause;
  return stretch;
}

std::optional<DrivenStretch> StretchFinder::finish(const MagneticField& field, UtcTime at) const {
  // Both directions are counted from the last ones, since bearings cannot be averaged.
  const Held& last = run_.back();
  double count = 0.0, course_deg = 0.0, read_deg = 0.0, read_squares = 0.0, speed_mps = 0.0;
  for (const Held& one : run_) {
    if (one.at < last.at - kWindow) continue;
    const double turned_deg = (one.sample.read - last.sample.read).clockwise_deg();
    count += 1.0;
    course_deg += (one.sample.course - last.sample.course).clockwise_deg();
    read_deg += turned_deg;
    read_squares += turned_deg * turned_deg;
    speed_mps += one.sample.speed_mps;
  }
  constexpr double kFewest = 6.0;
  if (count < kFewest) return std::nullopt;
  const double mean_read_deg = read_deg / count;
  const double scatter_deg =
      std::sqrt(std::max(0.0, read_squares / count - mean_read_deg * mean_read_deg));
  // 10 degrees at 1 km/h, 1 at 10, 0.1 at 100 [common practice, no source].
  const double course_sigma_deg = 10.0 / (3.6 * speed_mps / count);
  const auto course = last.sample.course + Turn::clockwise_deg(course_deg / count);
  const auto read = last.sample.read + Turn::clockwise_deg(mean_read_deg);
  return DrivenStretch{
      .read = read,
      .deviation_deg = (to_magnetic(course, field.declination) - read).clockwise_deg(),
      .sigma_deg = std::hypot(kRoad_deg, course_sigma_deg, scatter_deg / std::sqrt(count)),
      .horizontal_nt = field.horizontal_nt,
      .at = at};
}

}  // namespace mastwise
