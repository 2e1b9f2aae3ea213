#include "core/headings/walked_line.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr double kRadianPerDegree = std::numbers::pi / 180.0;

bool is_a_length(double value) {
  return std::isfinite(value) && value > 0.0;
}

Error bad_error(double error_m) {
  return Error{.what = fmt::format("{} m is not a position error", error_m),
               .remedy = "enter a positive one; 3 m is usual in the open"};
}

Result<UnsureBearing> unsure_bearing(Position from, Position to, double across_m,
                                     const char* remedy) {
  const PathBetween path = path_between(from, to);
  if (path.distance_m <= across_m) {
    return Error{.what = fmt::format("{:.1f} m apart with {:.1f} m of error gives no direction",
                                     path.distance_m, across_m),
                 .remedy = remedy};
  }
  return UnsureBearing{.bearing = path.bearing,
                       .error_deg = angle_of_error_deg(across_m, path.distance_m),
                       .distance_m = path.distance_m};
}

}  // namespace

Result<UnsureBearing> walked_bearing(Position from, Position to, double position_error_m) {
  if (!is_a_length(position_error_m)) return bad_error(position_error_m);
  return unsure_bearing(from, to, std::numbers::sqrt2 * position_error_m,
                        "walk on and average again");
}

Result<double> walk_for_error_m(double wanted_error_deg, double position_error_m) {
  if (!is_a_length(position_error_m)) return bad_error(position_error_m);
  if (!(is_a_length(wanted_error_deg) && wanted_error_deg < 45.0)) {
    return Error{.what = fmt::format("{} degrees is not a possible error", wanted_error_deg),
                 .remedy = "enter more than 0 and less than 45"};
  }
  return std::numbers::sqrt2 * position_error_m / std::tan(wanted_error_deg * kRadianPerDegree);
}

Result<UnsureBearing> landmark_bearing(Position from, Position landmark, double error_m) {
  if (!is_a_length(error_m)) return bad_error(error_m);
  return unsure_bearing(from, landmark, error_m, "choose a landmark farther away");
}

Result<Position> line_target(Position start, Bearing<True> bearing, double distance_m) {
  if (!is_a_length(distance_m)) {
    return Error{.what = fmt::format("{} m is not a walking distance", distance_m),
                 .remedy = "enter a distance of more than 0 m"};
  }
  return destination(start, bearing, distance_m);
}

OnLine on_line(Position start, Bearing<True> bearing, Position walker) {
  const PathBetween path = path_between(start, walker);
  const double off = (path.bearing - bearing).clockwise_deg() * kRadianPerDegree;
  return {path.distance_m * std::cos(off), path.distance_m * std::sin(off)};
}

}  // namespace mastwise
