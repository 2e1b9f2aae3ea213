#include "core/propagation/itm/line_of_sight.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace mastwise::itm {
namespace {

struct Point {
  double distance_m;
  double attenuation_db;
};

struct Slopes {
  double per_m;      // K_1
  double logarithm;  // K_2
};

// The curve through three points if its terms are not negative; else the nearest curve that keeps
// them so (4.31) to (4.37).
std::optional<Slopes> through(const Point& near, const Point& middle, const Point& far,
                              const Path& path) {
  const double whole_m = far.distance_m - near.distance_m;
  const double part_m = middle.distance_m - near.distance_m;
  const double whole_db = far.attenuation_db - near.attenuation_db;
  const double part_db = middle.attenuation_db - near.attenuation_db;
  const double whole_log = std::log(far.distance_m / near.distance_m);
  const double part_log = std::log(middle.distance_m / near.distance_m);
  const double logarithm = std::max(
      0.0, (whole_m * part_db - part_m * whole_db) / (whole_m * part_log - part_m * whole_log));
  if (path.diffraction.intercept_db < 0 && logarithm <= 0) return std::nullopt;
  const double per_m = (whole_db - logarithm * whole_log) / whole_m;
  if (per_m >= 0) return Slopes{per_m, logarithm};
  const double only_logarithm = std::max(whole_db, 0.0) / whole_log;
  return Slopes{only_logarithm > 0 ? 0 : path.diffraction.slope_db_per_m, only_logarithm};
}

// A straight line through the two farther points (4.38) to (4.41).
Slopes straight(const Point& middle, const Point& far, const Path& path) {
  const double per_m = std::max(far.attenuation_db - middle.attenuation_db, 0.0) /
                       (far.distance_m - middle.distance_m);
  return {per_m > 0 ? per_m : path.diffraction.slope_db_per_m, 0};
}

}  // namespace

LineOfSightFit fit_line_of_sight(const Path& path) {
  const DiffractionFit& line = path.diffraction;
  const Point far{path.smooth_horizon_sum_m,
                  line.intercept_db + line.slope_db_per_m * path.smooth_horizon_sum_m};  // (4.24)
  double near_m = 1.908 * path.wave_number_per_m * path.terminals[0].effective_height_m *
                  path.terminals[1].effective_height_m;
  double middle_m = 0;
  if (line.intercept_db >= 0) {
    near_m = std::min(near_m, 0.5 * path.horizon_sum_m);       // d_0 (4.28)
    middle_m = near_m + 0.25 * (path.horizon_sum_m - near_m);  // d_1 (4.29)
  } else {
    middle_m = std::max(-line.intercept_db / line.slope_db_per_m,
                        0.25 * path.horizon_sum_m);  // d_1 (4.39)
  }
  const Point middle{middle_m, line_of_sight_db(path, middle_m)};

  std::optional<Slopes> slopes;
  if (near_m < middle_m) {
    slopes = through({near_m, line_of_sight_db(path, near_m)}, middle, far, path);
  }
  if (!slopes) slopes = straight(middle, far, path);
  return {far.attenuation_db - slopes->per_m * far.distance_m -
              slopes->logarithm * std::log(far.distance_m),  // A_el (4.42)
          slopes->per_m, slopes->logarithm};
}

}  // namespace mastwise::itm
