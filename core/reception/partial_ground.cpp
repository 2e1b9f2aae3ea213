#include "core/reception/partial_ground.hpp"

#include "core/geo/geodesic.hpp"
#include "core/propagation/itm/roughness.hpp"
#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace mastwise::reception {
namespace {

using terrain::PathProfile;

constexpr double kRise_m = 1'000.0;
constexpr double kTwoDeviations = 0.78;
constexpr double kHills_m = 90.0;
constexpr double kLongStretch_m = 20e3;
constexpr double kShortestStretch_m = 2e3;

// Points [first, end).
struct Run {
  std::size_t first = 0;
  std::size_t end = 0;
  std::size_t size() const { return end - first; }
};

// The next run of known or of unknown points from `first` on.
Run run_from(std::span<const double> heights_m, std::size_t first, bool known) {
  const auto is_other = [known](double height_m) { return std::isnan(height_m) == known; };
  while (first < heights_m.size() && is_other(heights_m[first])) ++first;
  std::size_t end = first;
  while (end < heights_m.size() && !is_other(heights_m[end])) ++end;
  return {first, end};
}

Run longest_run(std::span<const double> heights_m, bool known) {
  Run longest;
  for (Run run = run_from(heights_m, 0, known); run.size() > 0;
       run = run_from(heights_m, run.end, known)) {
    if (run.size() > longest.size()) longest = run;
  }
  return longest;
}

double irregularity_m(const PathProfile& profile) {
  const Run known = longest_run(profile.heights_m, true);
  const double stretch_m = profile.spacing_m * static_cast<double>(known.size() - 1);
  if (stretch_m < kShortestStretch_m) return kHills_m;
  const itm::TerrainProfile ground{profile.spacing_m,
                                   std::span(profile.heights_m).subspan(known.first, known.size())};
  const double own_m = itm::irregularity_m(ground, 0.0, static_cast<double>(known.size() - 1));
  return stretch_m >= kLongStretch_m ? own_m : std::max(own_m, kHills_m);
}

void fill(const PathProfile& profile, Run gap, double begin_m, double irregularity_m,
          GuessedGround& guess) {
  const auto& known_m = profile.heights_m;
  const bool at_station = gap.first == 0;
  const double end_m = known_m[gap.end];
  const double length_m = profile.spacing_m * static_cast<double>(gap.size());
  const double hill_m = kTwoDeviations * itm::stretch_irregularity_m(irregularity_m, length_m);
  // The station's foot stays where it is.
  const double before = at_station ? 0.0 : 1.0;
  const double intervals = static_cast<double>(gap.size()) + before;
  for (std::size_t i = gap.first; i < gap.end; ++i) {
    const double from_begin = static_cast<double>(i - gap.first) + before;
    const double part = from_begin / intervals;
    const double to_edge_m = profile.spacing_m * std::min(from_begin, intervals - from_begin);
    guess.smooth_m[i] = begin_m + part * (end_m - begin_m);
    guess.rough_m[i] = guess.smooth_m[i] + hill_m * std::min(1.0, to_edge_m / kRise_m);
  }
}

}  // namespace

bool guess_ground(const PathProfile& profile, std::optional<double> start_ground_m,
                  GuessedGround& guess) {
  const auto& known_m = profile.heights_m;
  if (std::isnan(known_m.back())) return false;
  guess.smooth_m = guess.rough_m = known_m;
  const double irregular_m = irregularity_m(profile);
  for (Run gap = run_from(known_m, 0, false); gap.size() > 0;
       gap = run_from(known_m, gap.end, false)) {
    const double begin_m =
        gap.first == 0 ? start_ground_m.value_or(known_m[gap.end]) : known_m[gap.first - 1];
    fill(profile, gap, begin_m, irregular_m, guess);
  }
  return true;
}

terrain::TileCell cell_of_longest_gap(const PathProfile& profile, Position start) {
  const Run gap = longest_run(profile.heights_m, false);
  const double middle_m = profile.spacing_m * static_cast<double>(gap.first + gap.size() / 2);
  return terrain::cell_of(destination(start, profile.bearing_at_start, middle_m));
}

}  // namespace mastwise::reception
