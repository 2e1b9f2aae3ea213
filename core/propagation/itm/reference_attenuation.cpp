#include "core/propagation/itm/reference_attenuation.hpp"

#include "core/propagation/itm/diffraction.hpp"
#include "core/propagation/itm/line_of_sight.hpp"
#include "core/propagation/itm/scatter.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::itm {
namespace {

// The line through two points of A_diff.
DiffractionFit fit_diffraction(const Path& path, double mode_height_product_m2) {
  const Diffraction diffraction(path, mode_height_product_m2);
  const double curvature = path.earth_curvature_per_m;
  const double extent_m =
      1 / std::cbrt(path.wave_number_per_m * curvature * curvature);  // X_ae (4.2)
  const double near_m = std::max(path.smooth_horizon_sum_m,
                                 path.horizon_sum_m + 1.3787 * extent_m);  // d_3 (4.3)
  const double far_m = near_m + 2.7574 * extent_m;                         // d_4 (4.4)
  const double near_db = diffraction.attenuation_db(near_m);               // A_3 (4.5)
  const double far_db = diffraction.attenuation_db(far_m);                 // A_4 (4.6)
  const double slope = (far_db - near_db) / (far_m - near_m);              // m_d (4.7)
  return {near_db - slope * near_m, slope};                                // A_ed (4.8)
}

}  // namespace

void attenuate(Path& path, double mode_height_product_m2) {
  path.diffraction = fit_diffraction(path, mode_height_product_m2);
  const double d = path.distance_m;
  double attenuation_db = path.diffraction.intercept_db + path.diffraction.slope_db_per_m * d;
  path.range = Range::diffraction;
  if (d < path.smooth_horizon_sum_m) {
    path.line_of_sight = fit_line_of_sight(path);
    const LineOfSightFit& fit = *path.line_of_sight;
    attenuation_db = fit.intercept_db + fit.slope_db_per_m * d + fit.logarithm_db * std::log(d);
    path.range = Range::line_of_sight;
  } else {
    path.scatter = fit_scatter(path);
    if (path.scatter && d > path.scatter->starting_distance_m) {
      attenuation_db = path.scatter->intercept_db + path.scatter->slope_db_per_m * d;
      path.range = Range::scatter;
    }
  }
  path.reference_attenuation_db = attenuation_db < 0 ? 0 : attenuation_db;  // (4.1)
}

}  // namespace mastwise::itm
