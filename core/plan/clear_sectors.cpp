#include "core/plan/clear_sectors.hpp"

#include "core/propagation/wavelength.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <utility>

namespace mastwise {
namespace {

constexpr double kDegree = 180.0 / std::numbers::pi;
// Ends nearer than this touch: arcs are sums of rounded degrees.
constexpr double kTouching_deg = 1e-9;

// Whether the bearing is within the arc, or at its ends.
bool contains(const HeadingArc& arc, Bearing<True> bearing) {
  const double into_deg = fold_circle_deg(bearing.degrees() - arc.from.degrees());
  return into_deg <= arc.length_deg + kTouching_deg || into_deg >= 360.0 - kTouching_deg;
}

HeadingArc around_way(const WantedWay& way, double direction_error_deg) {
  const double half_deg = clearance_deg(way.frequency_mhz) + direction_error_deg;
  return {Bearing<True>::degrees(way.bearing.degrees() - half_deg),
          std::min(360.0, 2.0 * half_deg)};
}

}  // namespace

double clearance_m(double frequency_mhz, double near_m) {
  constexpr double kFreeOfLoss = 0.78;
  return kFreeOfLoss * std::sqrt(wavelength_m(frequency_mhz) * near_m / 2.0);
}

double clearance_deg(double frequency_mhz, double near_m) {
  return std::atan(clearance_m(frequency_mhz, near_m) / near_m) * kDegree;
}

std::vector<HeadingArc> joined_arcs(std::vector<HeadingArc> arcs) {
  std::sort(arcs.begin(), arcs.end(), [](const HeadingArc& one, const HeadingArc& other) {
    return one.from.degrees() < other.from.degrees();
  });
  std::vector<HeadingArc> joined;
  for (const HeadingArc& arc : arcs) {
    const double into_deg =
        joined.empty() ? 0.0 : arc.from.degrees() - joined.back().from.degrees();
    if (joined.empty() || into_deg > joined.back().length_deg + kTouching_deg) {
      joined.push_back(arc);
    } else {
      joined.back().length_deg = std::max(joined.back().length_deg, into_deg + arc.length_deg);
    }
  }
  // An arc over north is the last one, and reaches the first ones.
  while (joined.size() > 1) {
    const double over_deg = joined.back().from.degrees() + joined.back().length_deg - 360.0;
    const HeadingArc& first = joined.front();
    if (over_deg + kTouching_deg < first.from.degrees()) break;
    joined.back().length_deg =
        std::max(joined.back().length_deg,
                 360.0 - joined.back().from.degrees() + first.from.degrees() + first.length_deg);
    joined.erase(joined.begin());
  }
  for (const HeadingArc& arc : joined) {
    if (arc.all_round()) return {{.from = {}, .length_deg = 360.0}};
  }
  return joined;
}

std::vector<HeadingArc> gaps_between(const std::vector<HeadingArc>& joined) {
  if (joined.empty()) return {{.from = {}, .length_deg = 360.0}};
  if (joined.front().all_round()) return {};
  std::vector<HeadingArc> gaps;
  for (std::size_t i = 0; i < joined.size(); ++i) {
    const HeadingArc& next = joined[(i + 1) % joined.size()];
    const double end_deg = joined[i].from.degrees() + joined[i].length_deg;
    const double length_deg = joined.size() == 1 ? 360.0 - joined[i].length_deg
                                                 : fold_circle_deg(next.from.degrees() - end_deg);
    gaps.push_back({Bearing<True>::degrees(end_deg), length_deg});
  }
  std::stable_sort(gaps.begin(), gaps.end(), [](const HeadingArc& one, const HeadingArc& other) {
    return one.length_deg > other.length_deg;
  });
  return gaps;
}

std::vector<ClearSector> clear_sectors(std::span<const WantedWay> ways,
                                       double direction_error_deg) {
  std::vector<HeadingArc> arcs;
  for (const WantedWay& way : ways) arcs.push_back(around_way(way, direction_error_deg));
  std::vector<ClearSector> sectors;
  for (const HeadingArc& arc : joined_arcs(std::move(arcs))) sectors.push_back({.arc = arc});
  for (ClearSector& sector : sectors) {
    for (std::size_t i = 0; i < ways.size(); ++i) {
      if (!contains(sector.arc, ways[i].bearing)) continue;
      sector.ways.push_back(i);
      sector.clearance_m = std::max(sector.clearance_m, clearance_m(ways[i].frequency_mhz));
    }
    const auto into_deg = [&](std::size_t way) {
      return fold_circle_deg(ways[way].bearing.degrees() - sector.arc.from.degrees());
    };
    std::stable_sort(
        sector.ways.begin(), sector.ways.end(),
        [&](std::size_t one, std::size_t other) { return into_deg(one) < into_deg(other); });
  }
  return sectors;
}

RigSector neighbor_sector(bool right) {
  constexpr double kHalfLength_m = 4.5, kBeside_m = 8.0;
  const double half_deg = std::atan2(kHalfLength_m, kBeside_m) * kDegree;
  return {.from = RigAngle::clockwise_deg((right ? 90.0 : 270.0) - half_deg),
          .length_deg = 2.0 * half_deg};
}

std::vector<HeadingArc> noses_that_clear(const std::vector<HeadingArc>& arcs,
                                         std::span<const RigSector> occupied) {
  // An occupied sector meets an arc from the nose at which its end reaches the arc's beginning to
  // the one at which its beginning leaves the arc's end.
  std::vector<HeadingArc> blocked;
  for (const HeadingArc& arc : arcs) {
    for (const RigSector& sector : occupied) {
      const double from_deg = arc.from.degrees() - sector.from.clockwise_deg() - sector.length_deg;
      blocked.push_back(
          {Bearing<True>::degrees(from_deg), std::min(360.0, arc.length_deg + sector.length_deg)});
    }
  }
  return gaps_between(joined_arcs(std::move(blocked)));
}

}  // namespace mastwise
