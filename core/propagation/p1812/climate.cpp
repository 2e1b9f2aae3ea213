#include "core/propagation/p1812/climate.hpp"

#include <cmath>

namespace mastwise::p1812 {

namespace {

double typical_refractivity_n(Climate climate) {
  switch (climate) {
    case Climate::equatorial:
      return 360.0;
    case Climate::continental_subtropical:
      return 320.0;
    case Climate::maritime_subtropical:
      return 370.0;
    case Climate::desert:
      return 280.0;
    case Climate::continental_temperate:
      return 301.0;
    case Climate::maritime_temperate_land:
      return 320.0;
    case Climate::maritime_temperate_sea:
      return 350.0;
  }
  return 301.0;
}

}  // namespace

Refractivity refractivity_of(Climate climate) {
  const double n = typical_refractivity_n(climate);
  return {.gradient_n_per_km = 7.32 * std::exp(0.005577 * n), .sea_level_n = n};
}

}  // namespace mastwise::p1812
