#include "core/gear/nulls.hpp"
#include "core/sweep/sweep.hpp"
#include "core/sweep/sweep_grid.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>

#include <fmt/format.h>

namespace mastwise::aim {
namespace {

constexpr double kLeastRangeDb = 3.0;
// Common practice, no source: a reflection is 30 to 90 degrees aside. The grid's levels extend a
// little beyond the usual.
constexpr double kNearestAsideDeg = 30.0;
constexpr double kFarthestAsideDeg = 90.0;
constexpr std::array kReflectionLevelsDb{-5.0, -7.5, -10.0, -12.5};
constexpr double kReflectionPrior = 0.3;
constexpr double kAlikeDb = 0.25;

// A table says what one antenna did on its range. On a roof its beam is up to 20 % wider or
// narrower [common practice, no source], which moves side lobes and steep flanks by many decibels,
// so three widths share the prior: the nodes of Gauss and Legendre over that range. A typical
// pattern has neither, and the width of its beam hardly matters.
struct Width {
  double factor, prior;
};
constexpr std::array kNominalWidth{Width{1.0, 1.0}};
constexpr std::array kMeasuredWidths{Width{0.845, 5.0 / 18.0}, Width{1.0, 8.0 / 18.0},
                                     Width{1.155, 5.0 / 18.0}};

std::span<const Width> widths(const gear::Pattern& pattern) {
  if (pattern.from_measurement()) return kMeasuredWidths;
  return kNominalWidth;
}

// The same antenna with a wider beam, heard in place, where no null is as deep as on the range.
gear::Pattern widened(const gear::Pattern& pattern, double factor) {
  if (!pattern.from_measurement()) return pattern;
  std::string table = "angle,relative_db\n";
  for (int degree = -180; degree < 180; ++degree) {
    const double from_deg = std::clamp(degree / factor, -180.0, 180.0);
    table += fmt::format("{},{:.4f}\n", degree, pattern.relative_db(Turn::clockwise_deg(from_deg)));
  }
  const auto wider = gear::Pattern::from_table(table);
  return (wider ? *wider : pattern).no_deeper_than(gear::deepest_in_place_db(Band::uhf));
}

double power(const gear::Pattern& pattern, double off_axis_deg) {
  return std::pow(10.0, pattern.relative_db(Turn::clockwise_deg(off_axis_deg)) / 10.0);
}

bool repeats_after_half_circle(const gear::Pattern& pattern) {
  for (int degree = 0; degree < 180; ++degree) {
    const double here = pattern.relative_db(Turn::clockwise_deg(degree));
    const double behind = pattern.relative_db(Turn::clockwise_deg(degree + 180));
    if (std::fabs(here - behind) > kAlikeDb) return false;
  }
  return true;
}

// The angle between reflections that can be distinguished: a quarter of the beam.
std::size_t asides(double beamwidth_deg) {
  const double span = kFarthestAsideDeg - kNearestAsideDeg;
  return 1 + static_cast<std::size_t>(std::clamp(std::ceil(4.0 * span / beamwidth_deg), 3.0, 10.0));
}

}  // namespace

SweepFitter::SweepFitter(const gear::Pattern& pattern)
    : pattern_(pattern),
      beamwidth_deg_(pattern.half_power_beamwidth_deg().value_or(120.0)),
      combs_(repeats_after_half_circle(pattern) ? kCombs / 2 : kCombs) {
  const std::size_t count = asides(beamwidth_deg_);
  const double step = (kFarthestAsideDeg - kNearestAsideDeg) / static_cast<double>(count - 1);
  const auto ways = static_cast<double>(2 * count * kReflectionLevelsDb.size());
  for (const auto& [factor, prior] : widths(pattern)) {
    pattern_ = widened(pattern, factor);
    add_arrival(0.0, 0.0, prior * (1.0 - kReflectionPrior), false);
    for (std::size_t i = 0; i < count; ++i) {
      const double aside = kNearestAsideDeg + step * static_cast<double>(i);
      for (const double level : kReflectionLevelsDb) {
        add_arrival(aside, level, prior * kReflectionPrior / ways, true);
        add_arrival(-aside, level, prior * kReflectionPrior / ways, true);
      }
    }
  }
  pattern_ = pattern;
}

void SweepFitter::add_arrival(double aside_deg, double relative_db, double prior, bool reflected) {
  Arrival arrival{.aside_deg = aside_deg,
                  .relative_db = relative_db,
                  .log_prior = static_cast<float>(std::log(prior)),
                  .reflected = reflected,
                  .response_db = std::vector<float>(kTeeth * kRow)};
  const double part = reflected ? std::pow(10.0, relative_db / 10.0) : 0.0;
  for (std::size_t degree = 0; degree < kCombs * kTeeth; ++degree) {
    const double off_axis = -static_cast<double>(degree);
    const double sum = power(pattern_, off_axis) + part * power(pattern_, off_axis - aside_deg);
    for (std::size_t i = degree; i < kTeeth * kRow; i += kCombs * kTeeth) {
      arrival.response_db[table_entry(i)] = static_cast<float>(10.0 * std::log10(sum));
    }
  }
  arrivals_.push_back(std::move(arrival));
}

Result<SweepFitter> SweepFitter::for_pattern(const gear::Pattern& pattern) {
  double least_db = 0.0;
  for (int degree = 0; degree < 360; ++degree) {
    least_db = std::min(least_db, pattern.relative_db(Turn::clockwise_deg(degree)));
  }
  if (least_db > -kLeastRangeDb) {
    return Error{.what = fmt::format("the antenna receives all directions alike within {:.1f} dB, "
                                     "so a sweep cannot find a peak",
                                     -least_db),
                 .remedy =
                     "turning it gains nothing; choose the gear or band of an antenna with a "
                     "beam"};
  }
  return SweepFitter(pattern);
}

}  // namespace mastwise::aim
