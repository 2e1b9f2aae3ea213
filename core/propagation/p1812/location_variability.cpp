#include "core/propagation/p1812/location_variability.hpp"

#include "core/propagation/p1812/inverse_normal.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

double location_deviation_db(double frequency_ghz, double prediction_resolution_m,
                             double receiver_height_m, double clutter_height_m) {
  const double sigma_db =
      (0.52 + 0.024 * frequency_ghz) * std::pow(prediction_resolution_m, 0.28);  // sigma_L
  const double over_clutter_m = receiver_height_m - clutter_height_m;
  const double height_variation = std::clamp(1.0 - over_clutter_m / 10.0, 0.0, 1.0);  // u(h)
  return height_variation * sigma_db;
}

double location_loss_db(double deviation_db, double locations_percent) {
  return -inverse_normal(locations_percent / 100.0) * deviation_db;
}

}  // namespace mastwise::p1812
