#pragma once

#include "core/sweep/sweep.hpp"
#include "core/sweep/sweep_scale.hpp"

#include <limits>
#include <span>
#include <vector>

namespace mastwise::aim {

// Readings in units of one per decibel on a typical scale, relative to the typical reading at the
// peak.
struct SweepData {
  struct Exact {
    double heading_deg;
    float value;
    float weight;
  };
  enum class Beyond : signed char { below = -1, above = 1 };
  struct Censored {
    double heading_deg;
    float limit;
    Beyond side;
  };
  std::vector<Exact> exact = {};
  std::vector<Censored> censored = {};

  double zero = 0.0;  // on the scale
  double units_per_db = 1.0;
  // Sums over the exact readings: the weights, and the weighted values and their squares.
  float weight_sum = 0.0F, value_sum = 0.0F, square_sum = 0.0F;
  // The prior: noise variance and the number of readings it counts for, and the information on
  // level and slope in units of one reading.
  float noise_variance = 1.0F;
  float noise_worth = 0.0F;
  float level_information = 0.0F;
  float slope_information = 0.0F;
  float least = -std::numeric_limits<float>::infinity();  // the ends of the scale
  float most = std::numeric_limits<float>::infinity();
  // The arc of the readings: from `arc_start_deg` clockwise over `arc_deg`.
  double arc_start_deg = 0.0;
  double arc_deg = 0.0;
};

// `pattern`: of the antenna. Errors as SweepFitter::fit().
Result<SweepData> sweep_data(std::span<const Reading> readings, const SweepOptions& options,
                             const gear::Pattern& pattern);

}  // namespace mastwise::aim
