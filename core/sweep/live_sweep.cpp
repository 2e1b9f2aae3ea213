#include "core/sweep/live_sweep.hpp"

#include "core/sweep/sweep_scale.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise::aim {
namespace {

constexpr milliseconds kMostApart{2500};  // headings around a value
constexpr milliseconds kKept{30'000};     // of headings
constexpr milliseconds kRateBefore{2000}, kRateAfter{1000};
constexpr double kFastestBeams = 0.08;  // of the beamwidth, in one time constant
constexpr double kLagSigma_s = 0.5;
constexpr std::size_t kMostSamples = 200, kMostClosed = 240;
// A meter without averaging still takes some time for a reading.
constexpr milliseconds kLeastSmoothing{250};

double seconds(milliseconds time) {
  return static_cast<double>(time.count()) / 1000.0;
}

double median_of(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) return *middle;
  return (*middle + *std::max_element(values.begin(), middle)) / 2.0;
}

}  // namespace

LiveSweep::LiveSweep(LiveOptions options, std::vector<Reading> before)
    : options_(options), before_(std::move(before)) {
  options_.beamwidth_deg = std::clamp(options_.beamwidth_deg, 5.0, 170.0);
  options_.timing.smoothing = std::max(options_.timing.smoothing, kLeastSmoothing);
}

double LiveSweep::fastest_dps() const {
  return kFastestBeams * options_.beamwidth_deg / seconds(options_.timing.smoothing);
}

void LiveSweep::turn(Monotonic when, Bearing<Dial> heading) {
  if (!headings_.empty() && when <= headings_.back().when) return;
  double turned_deg = heading.degrees();
  if (!headings_.empty()) {
    const double last_deg = headings_.back().turned_deg;
    turned_deg = last_deg + fold_half_circle_deg(heading.degrees() - last_deg);
  }
  headings_.push_back({when, turned_deg});
  while (headings_.front().when < when - kKept) headings_.pop_front();
  place_values();
}

void LiveSweep::read(Monotonic when, std::optional<double> value) {
  values_.push_back({when - options_.timing.smoothing - options_.timing.delay, value});
  if (values_.size() > kMostSamples) values_.pop_front();
  place_values();
}

// The slope of the headings between two moments, by least squares, so that a sensor's noise does
// not look like speed; std::nullopt if they span less than half a second.
std::optional<double> LiveSweep::rate_between(Monotonic from, Monotonic to) const {
  double count = 0.0, time_sum = 0.0, turn_sum = 0.0, square_sum = 0.0, product_sum = 0.0;
  double first = 0.0, last = 0.0;
  for (const Heading& one : headings_) {
    if (one.when < from || one.when > to) continue;
    const double at = seconds(one.when - from);
    if (count == 0.0) first = at;
    last = at;
    count += 1.0;
    time_sum += at;
    turn_sum += one.turned_deg;
    square_sum += at * at;
    product_sum += at * one.turned_deg;
  }
  if (last - first < 0.5) return std::nullopt;
  return (count * product_sum - time_sum * turn_sum) / (count * square_sum - time_sum * time_sum);
}

// Gives each waiting value the heading of its moment, as soon as the next heading is there.
void LiveSweep::place_values() {
  while (!values_.empty() && !headings_.empty() && values_.front().when <= headings_.back().when) {
    const Value value = values_.front();
    values_.pop_front();
    const auto after = std::find_if(headings_.begin(), headings_.end(),
                                    [&](const Heading& one) { return one.when >= value.when; });
    if (after == headings_.begin()) continue;
    const Heading& from = *(after - 1);
    if (after->when - from.when > kMostApart) continue;
    const double part = seconds(value.when - from.when) / seconds(after->when - from.when);
    add({value.when, from.turned_deg + part * (after->turned_deg - from.turned_deg), value.value});
  }
}

void LiveSweep::add(const Sample& sample) {
  const auto rate = rate_between(sample.when - kRateBefore, sample.when + kRateAfter);
  if (!rate || std::fabs(*rate) > fastest_dps()) {
    close();
    return;
  }
  if (rested_deg_ && std::fabs(sample.turned_deg - *rested_deg_) < least_move_deg()) return;
  rested_deg_.reset();
  open_.push_back(sample);
  if (open_.size() > kMostSamples) open_.erase(open_.begin());
  const milliseconds smoothing = options_.timing.smoothing;
  const milliseconds lasted = sample.when - open_.front().when;
  const double moved = std::fabs(sample.turned_deg - open_.front().turned_deg);
  if (moved >= least_move_deg()) {
    if (lasted >= 2 * smoothing) close();
  } else if (lasted >= std::max(3 * smoothing, kLeastWaiting)) {
    close();
    rested_deg_ = sample.turned_deg;
  }
}

// Makes one reading of the gathered values, if they last long enough to be one.
void LiveSweep::close() {
  const std::vector<Sample> samples = std::exchange(open_, {});
  if (samples.empty()) return;
  const milliseconds lasted = samples.back().when - samples.front().when;
  if (lasted < options_.timing.smoothing) return;
  std::vector<double> values;
  double heading_sum = 0.0;
  for (const Sample& sample : samples) {
    heading_sum += sample.turned_deg;
    if (sample.value) values.push_back(*sample.value);
  }
  const bool locked = 2 * values.size() > samples.size();
  closed_.push_back(
      {.reading = {.heading =
                       Bearing<Dial>::degrees(heading_sum / static_cast<double>(samples.size())),
                   .value = locked ? std::optional(median_of(values)) : std::nullopt},
       .rate_dps = (samples.back().turned_deg - samples.front().turned_deg) / seconds(lasted)});
  if (closed_.size() > kMostClosed) closed_.erase(closed_.begin());
}

// The deviation of each reading from the line between the one before and the one after it.
std::vector<bool> LiveSweep::gust_marks() const {
  constexpr double kLeastDb = 3.0, kDeviations = 4.0, kSigmasOfMedian = 1.4826;
  constexpr std::size_t kLeastTriples = 3;
  const double least = kLeastDb * scale_figures(options_.scale).units_per_db;
  std::vector<bool> marks(closed_.size(), false);
  for (bool found = true; found;) {
    found = false;
    std::vector<std::size_t> places, kept;
    for (std::size_t i = 0; i < closed_.size(); ++i) {
      if (!marks[i] && closed_[i].reading.value) kept.push_back(i);
    }
    std::vector<double> off;
    for (std::size_t i = 1; i + 1 < kept.size(); ++i) {
      const Reading& from = closed_[kept[i - 1]].reading;
      const Reading& at = closed_[kept[i]].reading;
      const Reading& to = closed_[kept[i + 1]].reading;
      const double whole = (to.heading - from.heading).clockwise_deg();
      const double part = (at.heading - from.heading).clockwise_deg();
      // Where the antenna was turned back, its neighbors are both on one side.
      if (whole * part <= 0.0 || std::fabs(part) >= std::fabs(whole)) continue;
      if (std::fabs(whole) > options_.beamwidth_deg / 2.0) continue;
      places.push_back(kept[i]);
      off.push_back(std::fabs(*at.value - *from.value - part / whole * (*to.value - *from.value)));
    }
    if (off.size() < kLeastTriples) break;
    const auto worst = std::max_element(off.begin(), off.end());
    if (*worst < std::max(least, kDeviations * kSigmasOfMedian * median_of(off))) break;
    marks[places[static_cast<std::size_t>(worst - off.begin())]] = true;
    found = true;
  }
  return marks;
}

std::vector<Reading> LiveSweep::readings() const {
  std::vector<Reading> readings = before_;
  const std::vector<bool> gusts = gust_marks();
  for (std::size_t i = 0; i < closed_.size(); ++i) {
    if (!gusts[i]) readings.push_back(closed_[i].reading);
  }
  return readings;
}

std::size_t LiveSweep::gusts() const {
  const std::vector<bool> marks = gust_marks();
  return static_cast<std::size_t>(std::count(marks.begin(), marks.end(), true));
}

std::optional<double> LiveSweep::rate_dps(Monotonic now) const {
  if (headings_.empty() || headings_.back().when < now - kMostApart) return std::nullopt;
  return rate_between(headings_.back().when - kRateBefore, headings_.back().when);
}

double LiveSweep::lag_sigma_deg() const {
  if (closed_.empty()) return 0.0;
  double sum = 0.0;
  for (const Closed& one : closed_) sum += one.rate_dps;
  const auto all = static_cast<double>(closed_.size() + before_.size());
  return kLagSigma_s * std::fabs(sum) / all;
}

// A gap wider than a quarter of the beam, within the beam around the peak.
std::optional<Turn> LiveSweep::gap_to_fill(Bearing<Dial> peak) const {
  const double half_deg = options_.beamwidth_deg / 2.0;
  std::vector<double> off;
  for (const Reading& reading : readings()) {
    const double deg = (reading.heading - peak).clockwise_deg();
    if (std::fabs(deg) <= options_.beamwidth_deg) off.push_back(deg);
  }
  std::sort(off.begin(), off.end());
  double widest = half_deg / 2.0;
  std::optional<double> middle;
  for (std::size_t i = 1; i < off.size(); ++i) {
    const double center = (off[i] + off[i - 1]) / 2.0;
    if (off[i] - off[i - 1] <= widest || std::fabs(center) > half_deg) continue;
    widest = off[i] - off[i - 1];
    middle = center;
  }
  if (!middle) return std::nullopt;
  const auto here = Bearing<Dial>::degrees(headings_.back().turned_deg);
  return peak + Turn::clockwise_deg(*middle) - here;
}

LiveHint LiveSweep::hint(const std::optional<SweepFit>& fit, Monotonic now) const {
  const auto rate = rate_dps(now);
  if (rate && std::fabs(*rate) > fastest_dps()) return {LiveAdvice::too_fast};
  if (closed_.empty() && before_.empty()) return {LiveAdvice::begin};
  if (!fit || headings_.empty()) return {LiveAdvice::slowly};
  if (const auto gap = gap_to_fill(fit->peak)) return {LiveAdvice::back, *gap};
  const auto here = Bearing<Dial>::degrees(headings_.back().turned_deg);
  // Both flanks, as far as the beam has lost about 1.3 dB.
  const double flank_deg = options_.beamwidth_deg / 3.0;
  for (const double side : {-1.0, 1.0}) {
    const std::vector<Reading> all = readings();
    const bool read = std::any_of(all.begin(), all.end(), [&](const Reading& one) {
      return side * (one.heading - fit->peak).clockwise_deg() >= flank_deg;
    });
    if (read) continue;
    return {LiveAdvice::go_on,
            fit->peak + Turn::clockwise_deg(side * options_.beamwidth_deg / 2.0) - here};
  }
  if (fit->enough) return {LiveAdvice::peak, fit->peak - here};
  return {LiveAdvice::slowly};
}

}  // namespace mastwise::aim
