#include "core/propagation/itm/climates.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace mastwise::itm {
namespace {

constexpr FrequencyFactor kNone = {1, 0, 0};

constexpr std::array<ClimateTable, 7> kTables = {{
    // Equatorial
    {{-9.67, 12.7, 144.9e3, 190.3e3, 133.8e3},
     {2.13, 159.5, 762.2e3, 123.6e3, 94.5e3},
     {2.11, 102.3, 636.9e3, 134.8e3, 95.6e3},
     1.224,
     1.282,
     kNone,
     kNone},
    // Continental subtropical
    {{-0.62, 9.19, 228.9e3, 205.2e3, 143.6e3},
     {2.66, 7.67, 100.4e3, 172.5e3, 136.4e3},
     {6.87, 15.53, 138.7e3, 143.7e3, 98.6e3},
     0.801,
     2.161,
     kNone,
     {0.93, 0.31, 2.00}},
    // Maritime subtropical
    {{1.26, 15.5, 262.6e3, 185.2e3, 99.8e3},
     {6.11, 6.65, 138.2e3, 242.2e3, 178.6e3},
     {10.08, 9.60, 165.3e3, 225.7e3, 129.7e3},
     1.380,
     1.282,
     kNone,
     kNone},
    // Desert
    {{-9.21, 9.05, 84.1e3, 101.1e3, 98.6e3},
     {1.98, 13.11, 139.1e3, 132.7e3, 193.5e3},
     {3.68, 159.3, 464.4e3, 93.1e3, 94.2e3},
     1.000,
     20,
     kNone,
     {0.93, 0.19, 1.79}},
    // Continental temperate
    {{-0.62, 9.19, 228.9e3, 205.2e3, 143.6e3},
     {2.68, 7.16, 93.7e3, 186.8e3, 133.5e3},
     {4.75, 8.12, 93.2e3, 135.9e3, 113.4e3},
     1.224,
     1.282,
     {0.92, 0.25, 1.77},
     {0.93, 0.31, 2.00}},
    // Maritime temperate over land
    {{-0.39, 2.86, 141.7e3, 315.9e3, 167.4e3},
     {6.86, 10.38, 187.8e3, 169.6e3, 108.9e3},
     {8.58, 13.97, 216.0e3, 152.0e3, 122.7e3},
     1.518,
     1.282,
     kNone,
     kNone},
    // Maritime temperate over sea
    {{3.15, 857.9, 2222e3, 164.8e3, 116.3e3},
     {8.51, 169.8, 609.8e3, 119.9e3, 106.6e3},
     {8.43, 8.19, 136.2e3, 188.5e3, 122.9e3},
     1.518,
     1.282,
     kNone,
     kNone},
}};

}  // namespace

double ClimateCurve::at(double effective_distance_m) const {
  const double near = effective_distance_m / x1_m;
  const double peak = (effective_distance_m - x2_m) / x3_m;
  return (c1_db + c2_db / (1 + peak * peak)) * near * near / (1 + near * near);  // (5.5)
}

double FrequencyFactor::at(double wave_number_per_m) const {
  const double position = c3 * std::log(0.133 * wave_number_per_m);
  return c1 + c2 / (1 + position * position);
}

const ClimateTable& climate_table(Climate climate) {
  return kTables[static_cast<std::size_t>(climate) - 1];
}

}  // namespace mastwise::itm
