#include "core/geo/paper_map.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
// Half a millimeter at each of a reading's two ends.
constexpr double kReading_mm = std::numbers::sqrt2 * kRulerError_mm;

bool is_positive(double value) {
  return std::isfinite(value) && value > 0.0;
}

std::optional<Error> fault(const BetweenLines& lines, const char* kind, double limit_deg) {
  const auto on_earth = [&](double degrees) { return std::fabs(degrees) <= limit_deg; };
  if (!on_earth(lines.line_deg) || !on_earth(lines.next_line_deg)) {
    return Error{.what = fmt::format("{} and {} degrees are not valid {}s", lines.line_deg,
                                     lines.next_line_deg, kind),
                 .remedy = fmt::format("give two from -{0} to {0}", limit_deg)};
  }
  if (!is_positive(lines.spacing_mm)) {
    return Error{
        .what = fmt::format("{} mm cannot be the distance between two {}s", lines.spacing_mm, kind),
        .remedy = "measure from one line to the next"};
  }
  const double part = lines.from_line_mm / lines.spacing_mm;
  if (!(part >= -1.0 && part <= 2.0)) {
    return Error{
        .what = fmt::format("{} mm from the {} is past its neighbors", lines.from_line_mm, kind),
        .remedy = fmt::format("choose the two {}s nearest to the place", kind)};
  }
  return std::nullopt;
}

Error same_lines(const char* kind) {
  return Error{.what = fmt::format("the two {}s must differ, by less than 180 degrees", kind),
               .remedy = "read the numbers at the sheet's edge again"};
}

// The ground distance of one reading's error, including the error of the spacing.
double error_of(const BetweenLines& lines, double spacing_m) {
  const double part = lines.from_line_mm / lines.spacing_mm;
  return kReading_mm * std::hypot(1.0, part) * spacing_m / lines.spacing_mm;
}

// The length of a parallel between two longitudes, from a piece short enough to be straight.
double along_parallel_m(Position place, double longitudes_deg) {
  constexpr double kPiece_deg = 0.001;
  const double west_deg = place.longitude_deg() >= 0.0 ? place.longitude_deg() - kPiece_deg
                                                       : place.longitude_deg() + kPiece_deg;
  const Position beside = Position::at_deg(place.latitude_deg(), west_deg).value();
  return path_between(place, beside).distance_m / kPiece_deg * std::fabs(longitudes_deg);
}

// Length of a line from the stop until it leaves the sheet along one axis.
double run_mm(double at_mm, double size_mm, double step) {
  if (step > 0.0) return (size_mm - at_mm) / step;
  if (step < 0.0) return at_mm / -step;
  return std::numeric_limits<double>::infinity();
}

std::optional<Error> fault(const PaperSheet& sheet) {
  if (!is_positive(sheet.width_mm) || !is_positive(sheet.height_mm)) {
    return Error{.what = fmt::format("{} by {} mm is not a valid sheet size", sheet.width_mm,
                                     sheet.height_mm),
                 .remedy = "measure its printed part"};
  }
  const bool on_sheet = sheet.stop_right_mm >= 0.0 && sheet.stop_right_mm <= sheet.width_mm &&
                        sheet.stop_up_mm >= 0.0 && sheet.stop_up_mm <= sheet.height_mm;
  if (on_sheet) return std::nullopt;
  return Error{.what = "the stop is not on the sheet",
               .remedy = "measure from the sheet's lower left corner, to the right and up"};
}

}  // namespace

Result<MapScale> MapScale::from_bar(double bar_mm, double bar_m) {
  if (!is_positive(bar_mm)) {
    return Error{.what = fmt::format("a scale bar of {} mm has no length", bar_mm),
                 .remedy = "measure the bar with the ruler and enter its millimeters"};
  }
  if (!is_positive(bar_m)) {
    return Error{.what = fmt::format("a scale bar of {} m covers no ground", bar_m),
                 .remedy = "enter the distance printed at its end"};
  }
  return from_ratio(bar_m / bar_mm * 1000.0);
}

Result<MapScale> MapScale::from_ratio(double ratio) {
  if (!(ratio >= 100.0 && ratio <= 1e8)) {
    return Error{.what = fmt::format("1:{:.0f} is not a map scale", ratio),
                 .remedy = "check it: a road map's is 1:100,000 to 1:5,000,000"};
  }
  return MapScale(ratio / 1000.0);
}

double ruler_bearing_error_deg(double length_mm) {
  if (!(length_mm > 0.0)) return 90.0;
  return line_error_deg(kRulerError_mm, length_mm);
}

Result<MapPosition> from_named_place(Position named, Bearing<True> bearing, double length_mm,
                                     MapScale scale, std::optional<double> bearing_error_deg) {
  constexpr double kQuarterWay_m = 1.0e7;
  const double distance_m = scale.meters_of(length_mm);
  if (!(is_positive(distance_m) && distance_m <= kQuarterWay_m)) {
    return Error{.what = fmt::format("{} mm from the named place is not a distance", length_mm),
                 .remedy = "measure from the place to the stop; at the place itself use its name"};
  }
  const double across_deg = bearing_error_deg.value_or(ruler_bearing_error_deg(length_mm));
  if (!(across_deg >= 0.0 && across_deg < 90.0)) {
    return Error{.what = fmt::format("{} degrees is not a bearing error", across_deg),
                 .remedy = "enter 0 to 90"};
  }
  const double along_m = scale.meters_of(kReading_mm);
  const double across_m = distance_m * std::tan(across_deg * kRadian);
  return MapPosition{.position = destination(named, bearing, distance_m),
                     .error_m = std::hypot(along_m, across_m)};
}

Result<MapPosition> from_graticule(const BetweenLines& meridians, const BetweenLines& parallels) {
  if (auto error = fault(meridians, "meridian", 180.0)) return *error;
  if (auto error = fault(parallels, "parallel", 90.0)) return *error;
  const double longitudes_deg = fold_half_circle_deg(meridians.next_line_deg - meridians.line_deg);
  if (longitudes_deg == 0.0 || longitudes_deg == 180.0) return same_lines("meridian");
  if (parallels.line_deg == parallels.next_line_deg) return same_lines("parallel");

  const double longitude_deg = fold_half_circle_deg(
      meridians.line_deg + longitudes_deg * meridians.from_line_mm / meridians.spacing_mm);
  const auto foot = Position::at_deg(parallels.line_deg, longitude_deg);
  const auto next = Position::at_deg(parallels.next_line_deg, longitude_deg);
  if (!foot) return foot.error();
  if (!next) return next.error();
  const double latitudes_m = path_between(*foot, *next).distance_m;
  const bool north = parallels.next_line_deg > parallels.line_deg;
  const Position place = destination(*foot, Bearing<True>::degrees(north ? 0.0 : 180.0),
                                     latitudes_m * parallels.from_line_mm / parallels.spacing_mm);
  const double error_east_m = error_of(meridians, along_parallel_m(place, longitudes_deg));
  const double error_north_m = error_of(parallels, latitudes_m);
  return MapPosition{.position = place, .error_m = std::hypot(error_east_m, error_north_m)};
}

Result<RulerLine> ruler_line(const PaperSheet& sheet, MapScale scale, Bearing<True> bearing,
                             double distance_m) {
  if (auto error = fault(sheet)) return *error;
  if (!is_positive(distance_m)) {
    return Error{.what = fmt::format("{} m to the transmitter is not a distance", distance_m),
                 .remedy = "choose a transmitter away from the stop"};
  }
  const Bearing<Grid> from_upright = to_grid(bearing, sheet.upright.value_or(Convergence()));
  const double right = std::sin(from_upright.degrees() * kRadian);
  const double up = std::cos(from_upright.degrees() * kRadian);
  const double length_mm = scale.mm_of(distance_m);
  const double on_sheet_mm = std::min(run_mm(sheet.stop_right_mm, sheet.width_mm, right),
                                      run_mm(sheet.stop_up_mm, sheet.height_mm, up));
  RulerLine line{.from_upright = from_upright,
                 .right_per_100_mm = 100.0 * right,
                 .up_per_100_mm = 100.0 * up,
                 .length_mm = length_mm,
                 .bearing_error_deg = ruler_bearing_error_deg(std::min(length_mm, on_sheet_mm)),
                 .edge = std::nullopt};
  if (length_mm > on_sheet_mm) {
    line.edge = RulerLine::Edge{.right_mm = sheet.stop_right_mm + right * on_sheet_mm,
                                .up_mm = sheet.stop_up_mm + up * on_sheet_mm,
                                .from_stop_mm = on_sheet_mm};
  }
  return line;
}

}  // namespace mastwise
