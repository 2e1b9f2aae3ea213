#include "core/propagation/p1812/line_of_sight.hpp"

#include <cmath>

namespace mastwise::p1812 {

double free_space_loss_db(double frequency_ghz, double distance_km, double transmitter_altitude_m,
                          double receiver_altitude_m) {
  const double rise_km = 0.001 * (transmitter_altitude_m - receiver_altitude_m);
  const double slant_km = std::hypot(distance_km, rise_km);                      // (8a)
  return 92.4 + 20.0 * std::log10(frequency_ghz) + 20.0 * std::log10(slant_km);  // (8)
}

double focusing_db(double transmitter_horizon_km, double receiver_horizon_km, double time_percent) {
  const double horizons_km = transmitter_horizon_km + receiver_horizon_km;
  return 2.6 * (1.0 - std::exp(-0.1 * horizons_km)) * std::log10(time_percent / 50.0);  // (9)
}

}  // namespace mastwise::p1812
