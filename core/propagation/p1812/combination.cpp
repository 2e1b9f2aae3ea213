#include "core/propagation/p1812/combination.hpp"

#include "core/propagation/p1812/ducting.hpp"
#include "core/propagation/p1812/inverse_normal.hpp"
#include "core/propagation/p1812/line_of_sight.hpp"
#include "core/propagation/p1812/troposcatter.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

// Fi (40): position of the diffraction loss between its median and its value at beta0.
double interpolation_factor(double time_percent, double beta0_percent) {
  if (time_percent <= beta0_percent) return 1.0;
  return inverse_normal(time_percent / 100.0) / inverse_normal(beta0_percent / 100.0);
}

// eta ln(exp(a / eta) + exp(b / eta)), in a form that cannot overflow.
double blend_larger(double a, double b, double eta) {
  return std::max(a, b) + eta * std::log1p(std::exp(-std::fabs(a - b) / eta));
}

// -5 log(10^(-0.2 a) + 10^(-0.2 b)), in a form that cannot underflow.
double blend_smaller(double a, double b) {
  return std::min(a, b) - 5.0 * std::log10(1.0 + std::pow(10.0, -0.2 * std::fabs(a - b)));
}

}  // namespace

double angular_factor(double angular_distance_mrad) {
  constexpr double kTheta = 0.3;  // mrad
  constexpr double kXi = 0.8;
  return 1.0 -
         0.5 * (1.0 + std::tanh(3.0 * kXi * (angular_distance_mrad - kTheta) / kTheta));  // (57)
}

double near_distance_factor(double distance_km) {
  constexpr double kSwitchKm = 20.0;  // dsw
  constexpr double kKappa = 0.5;
  return 1.0 -
         0.5 * (1.0 + std::tanh(3.0 * kKappa * (distance_km - kSwitchKm) / kSwitchKm));  // (58)
}

Loss combine(const Path& path, double time_percent) {
  const double p = time_percent;
  const double land = 1.0 - path.sea_fraction;
  Loss loss;
  loss.line_of_sight_db = path.free_space_db + focusing_db(path.transmitter_horizon_km,
                                                           path.receiver_horizon_km, p);  // (10)
  loss.interpolation = interpolation_factor(p, path.beta0_percent);
  loss.diffraction_loss_db =
      path.median.loss_db + loss.interpolation * (path.beta.loss_db - path.median.loss_db);  // (41)
  loss.diffraction_db = loss.line_of_sight_db + loss.diffraction_loss_db;                    // (43)
  loss.lowest_line_of_sight_db =
      p < path.beta0_percent
          ? loss.line_of_sight_db + land * loss.diffraction_loss_db
          : path.median_diffraction_db +
                loss.interpolation * (path.beta_line_of_sight_db + land * loss.diffraction_loss_db -
                                      path.median_diffraction_db);  // (59)
  loss.ducting_db = ducting_loss_db(path, p);
  loss.lowest_ducting_db = blend_larger(loss.ducting_db, loss.line_of_sight_db, 2.5);  // (60)
  loss.diffraction_or_ducting_db =
      loss.lowest_ducting_db > loss.diffraction_db
          ? loss.diffraction_db
          : loss.lowest_ducting_db +
                path.near_distance_factor * (loss.diffraction_db - loss.lowest_ducting_db);  // (61)
  loss.without_scatter_db = loss.diffraction_or_ducting_db +
                            path.angular_factor * (loss.lowest_line_of_sight_db -
                                                   loss.diffraction_or_ducting_db);  // (62)
  loss.scatter_db = path.scatter_median_db - scatter_enhancement_db(p);
  loss.median_locations_db = blend_smaller(loss.scatter_db, loss.without_scatter_db) +  // (63)
                             path.transmitter_clutter_db + path.receiver_clutter_db;
  return loss;
}

}  // namespace mastwise::p1812
