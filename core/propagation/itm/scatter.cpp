#include "core/propagation/itm/scatter.hpp"

#include "core/propagation/itm/decibel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::itm {
namespace {

// F(theta d): scatter loss over scattering angle times distance, in dB (6.9).
double angle_distance_db(double angle_distance_m) {
  struct Piece {
    double below_m, constant_db, per_m, logarithm_db;
  };
  constexpr std::array<Piece, 3> kPieces = {
      {{10e3, 133.4, 0.332e-3, -10}, {70e3, 104.6, 0.212e-3, -2.5}, {0, 71.8, 0.157e-3, 5}}};
  const Piece& piece = angle_distance_m <= kPieces[0].below_m   ? kPieces[0]
                       : angle_distance_m <= kPieces[1].below_m ? kPieces[1]
                                                                : kPieces[2];
  return piece.constant_db + piece.per_m * angle_distance_m +
         piece.logarithm_db / 10 * decibel(angle_distance_m);
}

// H_01(r, eta) at one of the tabulated efficiencies eta = 1 to 5 (6.13).
double tabulated_gain_db(double inverse_square, std::size_t eta) {
  struct Row {
    double a, b;
  };
  constexpr std::array<Row, 5> kRows = {{{25, 24}, {80, 45}, {177, 68}, {395, 80}, {705, 105}}};
  const Row& row = kRows[eta - 1];
  return decibel(1 + inverse_square * (row.b + row.a * inverse_square));
}

// H_01(r, eta), linear between the tabulated efficiencies.
double terminal_gain_db(double r, double eta) {
  const double inverse_square = 1 / (r * r);
  const double clamped = std::clamp(eta, 1.0, 5.0);
  const auto below = static_cast<std::size_t>(clamped);
  const double part = clamped - static_cast<double>(below);
  const double low = tabulated_gain_db(inverse_square, below);
  return part == 0 ? low : (1 - part) * low + part * tabulated_gain_db(inverse_square, below + 1);
}

// H_00(r_1, r_2, 0): the limit for a vanishing scattering efficiency (6.14).
double zero_efficiency_gain_db(double r1, double r2) {
  constexpr double kRoot2 = 1.4142;
  const double product = (1 + kRoot2 / r1) * (1 + kRoot2 / r2);
  return decibel(product * product * (r1 + r2) / (r1 + r2 + 2 * kRoot2));
}

// eta_s: the scattering efficiency at the crossing height of the horizon rays (4.67).
double efficiency(double crossing_height_m, double surface_refractivity) {
  constexpr double kScaleHeightM = 1.7556e3;
  const double n = surface_refractivity;
  const double damping = std::pow(std::min(1.7, crossing_height_m / 8e3), 6);
  return crossing_height_m / kScaleHeightM *
         (1 + (0.031 - n * 2.32e-3 + n * n * 5.67e-6) * std::exp(-damping));
}

}  // namespace

std::optional<Scatter> scatter(const Path& path, double distance_m,
                               const std::optional<Scatter>& farther) {
  const auto& [first, second] = path.terminals;
  const double bend_rad = first.horizon_angle_rad + second.horizon_angle_rad +
                          distance_m * path.earth_curvature_per_m;  // theta' (4.61)
  constexpr double kLargestGainDb = 15;
  double gain_db = 0;
  if (farther && farther->frequency_gain_db > kLargestGainDb) {
    gain_db = farther->frequency_gain_db;
  } else {
    const double r1 = 2 * path.wave_number_per_m * bend_rad * first.effective_height_m;   // (4.62)
    const double r2 = 2 * path.wave_number_per_m * bend_rad * second.effective_height_m;  // (4.62)
    if (r1 < 0.2 && r2 < 0.2) return std::nullopt;

    const double difference_m = first.horizon_distance_m - second.horizon_distance_m;
    const double spread_m = std::abs(difference_m);
    const double ratio = difference_m < 0 ? r1 / r2 : r2 / r1;
    const double skew = (distance_m - spread_m) / (distance_m + spread_m);  // s (4.65)
    const double q = std::clamp(ratio / skew, 0.1, 10.0);                   // (4.66)
    const double asymmetry = std::max(0.1, skew);
    const double crossing_m =
        (distance_m - spread_m) * (distance_m + spread_m) * bend_rad * 0.25 / distance_m;
    const double eta = efficiency(crossing_m, path.surface_refractivity);

    const double symmetric_db = 0.5 * (terminal_gain_db(r1, eta) + terminal_gain_db(r2, eta));
    const double correction_db =
        std::min(symmetric_db, 0.49 * (1.38 - std::log(eta)) * std::log(asymmetry) * std::log(q));
    gain_db = std::max(symmetric_db + correction_db, 0.0);
    if (eta < 1) gain_db = eta * gain_db + (1 - eta) * zero_efficiency_gain_db(r1, r2);  // (6.10)
    if (gain_db > kLargestGainDb && farther) gain_db = farther->frequency_gain_db;
  }

  const double scattering_rad =
      path.horizon_angle_sum_rad + distance_m * path.earth_curvature_per_m;  // theta (4.60)
  const double angle_distance_m = scattering_rad * distance_m;
  const double climate_db =
      -0.1 * (path.surface_refractivity - 301) * std::exp(-angle_distance_m / 40e3);  // (6.9)
  const double attenuation_db =
      angle_distance_db(angle_distance_m) + climate_db + gain_db +
      decibel(47.7 * path.wave_number_per_m * std::pow(scattering_rad, 4));  // (4.63)
  return Scatter{attenuation_db, gain_db};
}

std::optional<ScatterFit> fit_scatter(const Path& path) {
  constexpr double kStepM = 200e3;
  const double near_m = path.horizon_sum_m + kStepM;  // d_5 (4.52)
  const auto far = scatter(path, near_m + kStepM);    // A_6 (4.53), (4.55)
  if (!far) return std::nullopt;
  const auto near = scatter(path, near_m, far);  // A_5 (4.54)
  if (!near) return std::nullopt;

  const DiffractionFit& line = path.diffraction;
  const double slope = (far->attenuation_db - near->attenuation_db) / kStepM;  // m_s (4.57)
  const double wave_number = path.wave_number_per_m;
  const double curvature = path.earth_curvature_per_m;
  const double extent_m = 1 / std::cbrt(wave_number * curvature * curvature);  // X_ae (4.2)
  const double crossing_m =
      (near->attenuation_db - line.intercept_db - slope * near_m) / (line.slope_db_per_m - slope);
  const double start_m =
      std::max({path.smooth_horizon_sum_m,
                path.horizon_sum_m + 0.3 * extent_m * std::log(47.7 * wave_number),
                crossing_m});  // d_x (4.58)
  const double intercept_db = line.intercept_db + (line.slope_db_per_m - slope) * start_m;
  return ScatterFit{intercept_db, slope, start_m};  // A_es (4.59)
}

}  // namespace mastwise::itm
