#include "core/gear/nulls.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>

namespace mastwise::gear {
namespace {

constexpr std::size_t kStepsPerDegree = 2, kSteps = kStepsPerDegree * 360;
constexpr double kLeastDepth_db = 10.0, kLeastRise_db = 6.0, kWidthRise_db = 3.0;

using Circle = std::array<double, kSteps>;

// The steps from `from` to where the response has risen by `rise_db`; none if it gets deeper first,
// or never rises so far.
std::optional<std::size_t> steps_up(const Circle& circle, std::size_t from, double rise_db,
                                    bool clockwise) {
  for (std::size_t step = 1; step < kSteps; ++step) {
    const double there = circle[(from + (clockwise ? step : kSteps - step)) % kSteps];
    if (there < circle[from]) return std::nullopt;
    if (there >= circle[from] + rise_db) return step;
  }
  return std::nullopt;
}

}  // namespace

double deepest_in_place_db(Band band) {
  switch (band) {
    case Band::low_vhf:
      return 10.0;
    case Band::high_vhf:
      return 16.0;
    case Band::uhf:
      return 20.0;
  }
  return 10.0;
}

Antenna in_place(Antenna antenna) {
  const auto limit = [](BandAntenna& in_band, Band band) {
    in_band.pattern = in_band.pattern.no_deeper_than(deepest_in_place_db(band));
  };
  limit(antenna.low_vhf, Band::low_vhf);
  limit(antenna.high_vhf, Band::high_vhf);
  limit(antenna.uhf, Band::uhf);
  return antenna;
}

std::vector<PatternNull> nulls(const Pattern& pattern) {
  std::vector<PatternNull> found;
  if (!pattern.from_measurement()) return found;
  Circle circle;
  for (std::size_t i = 0; i < kSteps; ++i) {
    circle[i] = pattern.relative_db(Turn::clockwise_deg(static_cast<double>(i) / kStepsPerDegree));
  }
  // The axis is the strongest direction, so no null reaches around it.
  for (std::size_t i = 0; i < kSteps; ++i) {
    if (circle[i] > -kLeastDepth_db) continue;
    if (!steps_up(circle, i, kLeastRise_db, true) || !steps_up(circle, i, kLeastRise_db, false)) {
      continue;
    }
    const std::size_t right = *steps_up(circle, i, kWidthRise_db, true);
    const std::size_t left = *steps_up(circle, i, kWidthRise_db, false);
    const double middle =
        static_cast<double>(i) + (static_cast<double>(right) - static_cast<double>(left)) / 2.0;
    found.push_back({.middle = Turn::clockwise_deg(middle / kStepsPerDegree),
                     .width_deg = static_cast<double>(left + right) / kStepsPerDegree,
                     .depth_db = -circle[i]});
    i += right;
  }
  return found;
}

}  // namespace mastwise::gear
