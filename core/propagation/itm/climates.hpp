#pragma once

#include "core/propagation/itm/itm.hpp"

namespace mastwise::itm {

// One of the climate's curves over effective distance. Source: Algorithm (5.5) and its table.
struct ClimateCurve {
  double c1_db;
  double c2_db;
  double x1_m;
  double x2_m;
  double x3_m;

  double at(double effective_distance_m) const;
};

// Frequency dependence of a factor: c1 + c2 / (1 + (c3 ln(0.133 k))^2).
struct FrequencyFactor {
  double c1;
  double c2;
  double c3;

  double at(double wave_number_per_m) const;
};

struct ClimateTable {
  ClimateCurve median;           // V_med
  ClimateCurve below;            // sigma_T-, for the lower fields
  ClimateCurve above;            // sigma_T+, for the higher fields
  double ducting_ratio;          // C_D: sigma_TD over sigma_T+
  double ducting_deviate;        // z_D, beyond which ducting dominates
  FrequencyFactor factor_below;  // g-
  FrequencyFactor factor_above;  // g+
};

const ClimateTable& climate_table(Climate climate);

}  // namespace mastwise::itm
