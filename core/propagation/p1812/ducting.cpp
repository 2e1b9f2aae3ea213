#include "core/propagation/p1812/ducting.hpp"

#include "core/propagation/p1812/ducting_incidence.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

// Ast, Asr (48): shielding near an antenna, dB; horizon angle mrad, distance km.
double site_shielding_db(double elevation_mrad, double horizon_km, double frequency_ghz) {
  const double excess_mrad = elevation_mrad - 0.1 * horizon_km;  // theta'' (48a)
  if (excess_mrad <= 0.0) return 0.0;
  return 20.0 * std::log10(1.0 + 0.361 * excess_mrad * std::sqrt(frequency_ghz * horizon_km)) +
         0.264 * excess_mrad * std::cbrt(frequency_ghz);
}

// Act, Acr (49): coupling of an antenna near the coast to a duct over the sea, dB.
double over_sea_coupling_db(double coast_km, double horizon_km, double altitude_m,
                            double sea_fraction) {
  if (sea_fraction < 0.75 || coast_km > horizon_km || coast_km > 5.0) return 0.0;
  return -3.0 * std::exp(-0.25 * coast_km * coast_km) *
         (1.0 + std::tanh(0.07 * (50.0 - altitude_m)));
}

// mu2 (55): correction for the path's geometry, at most 1.
double geometry_correction(const Path& path) {
  const double tau = inland_parameter(path.longest_inland_km);
  const double epsilon = 3.5;
  const double alpha =
      std::max(-3.4, -0.6 - epsilon * 1e-9 * std::pow(path.distance_km, 3.1) * tau);  // (55a)
  const double roots =
      std::sqrt(path.transmitter_effective_height_m) + std::sqrt(path.receiver_effective_height_m);
  const double ratio = path.distance_km / roots;
  return std::min(1.0, std::pow(500.0 / path.median_earth_radius_km * ratio * ratio, alpha));
}

// mu3 (56): correction for the terrain's roughness.
double roughness_correction(const Path& path) {
  if (path.terrain_roughness_m <= 10.0) return 1.0;
  const double between_km = std::min(
      path.distance_km - path.transmitter_horizon_km - path.receiver_horizon_km, 40.0);  // (56a)
  return std::exp(-4.6e-5 * (path.terrain_roughness_m - 10.0) * (43.0 + 6.0 * between_km));
}

}  // namespace

double fixed_coupling_loss_db(const Path& path, double transmitter_coast_km,
                              double receiver_coast_km) {
  const double f = path.frequency_ghz;
  const double low_frequency_db = f < 0.5 ? 45.375 - 137.0 * f + 92.5 * f * f : 0.0;  // Alf (47a)
  const double omega = path.sea_fraction;
  return 102.45 + 20.0 * std::log10(f) +
         20.0 * std::log10(path.transmitter_horizon_km + path.receiver_horizon_km) +
         low_frequency_db +
         site_shielding_db(path.transmitter_elevation_mrad, path.transmitter_horizon_km, f) +
         site_shielding_db(path.receiver_elevation_mrad, path.receiver_horizon_km, f) +
         over_sea_coupling_db(transmitter_coast_km, path.transmitter_horizon_km,
                              path.transmitter_altitude_m, omega) +
         over_sea_coupling_db(receiver_coast_km, path.receiver_horizon_km, path.receiver_altitude_m,
                              omega);  // (47)
}

double limited_angular_distance_mrad(const Path& path) {
  const double start = std::min(path.transmitter_elevation_mrad, 0.1 * path.transmitter_horizon_km);
  const double end = std::min(path.receiver_elevation_mrad, 0.1 * path.receiver_horizon_km);
  return 1000.0 * path.distance_km / path.median_earth_radius_km + start + end;  // (52), (52a)
}

double path_incidence_percent(const Path& path) {
  return path.beta0_percent * geometry_correction(path) * roughness_correction(path);  // (54)
}

double time_slope(double incidence_percent, double distance_km) {
  const double log_beta = std::log10(incidence_percent);
  return 1.076 / std::pow(2.0058 - log_beta, 1.012) *
         std::exp(-(9.51 - 4.8 * log_beta + 0.198 * log_beta * log_beta) * 1e-6 *
                  std::pow(distance_km, 1.13));  // (53a)
}

double ducting_loss_db(const Path& path, double time_percent) {
  const double ratio = time_percent / path.ducting_incidence_percent;
  const double time_db = -12.0 + (1.2 + 3.7e-3 * path.distance_km) * std::log10(ratio) +
                         12.0 * std::pow(ratio, path.ducting_slope);  // A(p) (53)
  const double anomalous_db =
      path.ducting_specific_db_per_mrad * path.ducting_angle_mrad + time_db;  // Ad(p) (50)
  return path.ducting_fixed_coupling_db + anomalous_db;                       // (46)
}

}  // namespace mastwise::p1812
