#include "core/sweep/sweep_data.hpp"

#include "core/gear/nulls.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::aim {
namespace {

constexpr double kEstimatedNoiseWorth = 1.0;
constexpr double kKnownNoiseWorth = 400.0;
constexpr double kMostDecibels = 300.0;  // to either side of any reference
constexpr double kLeastNoise = 1e-3;
constexpr double kMostNoise = 1e3;
constexpr double kEndOfScale = 0.5;  // readings are rounded: the last step begins this far inside

Error at_reading(std::size_t index, std::string what, std::string remedy) {
  return {.what = std::move(what),
          .where = fmt::format("reading {}", index + 1),
          .remedy = std::move(remedy)};
}

// The narrowest arc that contains every heading: the circle without its widest gap.
void set_arc(SweepData& data, std::span<const Reading> readings) {
  std::vector<double> headings;
  for (const Reading& reading : readings) headings.push_back(reading.heading.degrees());
  std::sort(headings.begin(), headings.end());
  double widest = headings.front() + 360.0 - headings.back();
  data.arc_start_deg = headings.front();
  for (std::size_t i = 1; i < headings.size(); ++i) {
    if (headings[i] - headings[i - 1] <= widest) continue;
    widest = headings[i] - headings[i - 1];
    data.arc_start_deg = headings[i];
  }
  data.arc_deg = 360.0 - widest;
}

double highest(std::span<const Reading> readings) {
  double most = -std::numeric_limits<double>::infinity();
  for (const Reading& reading : readings) most = std::max(most, reading.value.value_or(most));
  return most;
}

// A reading below it, or none, says "this or less". On a scale without a lower end that is the
// lowest reading, or with a measured pattern the deepest null in place and two sigmas of noise: how
// deep a null of a table really is, the fit does not know.
double floor_of(const ScaleFigures& figures, std::span<const Reading> readings,
                const gear::Pattern& pattern) {
  if (std::isfinite(figures.least)) return figures.least + kEndOfScale;
  double least = std::numeric_limits<double>::infinity();
  for (const Reading& reading : readings) least = std::min(least, reading.value.value_or(least));
  if (!pattern.from_measurement()) return least;
  const double null_db = gear::deepest_in_place_db(Band::uhf);
  return std::max(least, highest(readings) - null_db * figures.units_per_db - 2.0 * figures.noise);
}

Result<Done> check(std::span<const Reading> readings, const SweepOptions& options,
                   const ScaleFigures& figures) {
  if (options.noise && !(*options.noise >= kLeastNoise && *options.noise <= kMostNoise)) {
    return Error{.what = fmt::format("{} is not the noise of a meter", *options.noise),
                 .remedy = "give one sigma of a reading in the meter's units, 0.001 to 1000"};
  }
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (!readings[i].value) continue;
    const double value = *readings[i].value;
    const double least = std::max(figures.least, -kMostDecibels);
    const double most = std::min(figures.most, kMostDecibels);
    if (value >= least && value <= most) continue;
    return at_reading(i,
                      fmt::format("{} is not on the scale \"{}\"", value, to_text(options.scale)),
                      fmt::format("it goes from {} to {}", least, most));
  }
  const Reading* first = nullptr;
  for (const Reading& reading : readings) {
    if (!reading.value) continue;
    if (first == nullptr) first = &reading;
    if (!(reading.heading == first->heading)) return Done{};
  }
  return Error{
      .what = first == nullptr ? "no heading has a reading" : "only one heading has a reading",
      .remedy = "read the meter at two headings or more, 10 to 15 degrees apart"};
}

void set_prior(SweepData& data, const ScaleFigures& figures, const SweepOptions& options) {
  const double units = data.units_per_db;
  const double noise = options.noise ? std::hypot(*options.noise, figures.rounding) : figures.noise;
  const double variance = noise * noise / (units * units);
  const double level_sigma = figures.peak_level_sigma / units;
  data.noise_variance = static_cast<float>(variance);
  data.noise_worth = static_cast<float>(options.noise ? kKnownNoiseWorth : kEstimatedNoiseWorth);
  data.level_information = static_cast<float>(variance / (level_sigma * level_sigma));
  data.slope_information =
      static_cast<float>(variance / (figures.slope_sigma * figures.slope_sigma));
}

}  // namespace

Result<SweepData> sweep_data(std::span<const Reading> readings, const SweepOptions& options,
                             const gear::Pattern& pattern) {
  const ScaleFigures figures = scale_figures(options.scale);
  const auto checked = check(readings, options, figures);
  if (!checked) return checked.error();

  const double zero = std::isnan(figures.peak_level) ? highest(readings) : figures.peak_level;
  SweepData data{.zero = zero, .units_per_db = figures.units_per_db};
  const auto scaled = [&](double value) {
    return static_cast<float>((value - zero) / figures.units_per_db);
  };
  const double floor = floor_of(figures, readings, pattern);
  for (const Reading& reading : readings) {
    const double heading_deg = reading.heading.degrees();
    const double value = reading.value.value_or(floor);
    if (!reading.value || value < floor) {
      data.censored.push_back({heading_deg, scaled(floor), SweepData::Beyond::below});
    } else if (value > figures.most - kEndOfScale) {
      const float limit = scaled(figures.most - kEndOfScale);
      data.censored.push_back({heading_deg, limit, SweepData::Beyond::above});
    } else {
      const bool hurried = reading.waiting && *reading.waiting < kLeastWaiting;
      const double weight = hurried ? kHurriedWeight : 1.0;
      data.exact.push_back({heading_deg, scaled(value), static_cast<float>(weight)});
      const SweepData::Exact& exact = data.exact.back();
      data.weight_sum += exact.weight;
      data.value_sum += exact.weight * exact.value;
      data.square_sum += exact.weight * exact.value * exact.value;
    }
  }
  data.least = scaled(figures.least);
  data.most = scaled(figures.most);
  set_arc(data, readings);
  set_prior(data, figures, options);
  return data;
}

}  // namespace mastwise::aim
