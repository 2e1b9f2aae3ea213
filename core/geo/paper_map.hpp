#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <optional>

// A paper map and a ruler: from millimeters to a position, and from a bearing to millimeters.
namespace mastwise {

// Uncertainty of a ruler reading at each of its ends. Common practice, no source.
inline constexpr double kRulerError_mm = 0.5;

// The ground distance of one millimeter on the sheet.
class MapScale {
 public:
  // From the bar printed on the sheet: it is `bar_mm` long (over 0) and represents `bar_m` meters
  // of ground (over 0), within the limits of from_ratio(). 20 mm for 30 miles is 2,414 m a
  // millimeter.
  static Result<MapScale> from_bar(double bar_mm, double bar_m);
  // 1:`ratio`, 100 to 100,000,000.
  static Result<MapScale> from_ratio(double ratio);

  double meters_per_mm() const { return meters_per_mm_; }
  double ratio() const { return meters_per_mm_ * 1000.0; }
  double mm_of(double distance_m) const { return distance_m / meters_per_mm_; }
  double meters_of(double length_mm) const { return length_mm * meters_per_mm_; }

 private:
  explicit MapScale(double meters_per_mm) : meters_per_mm_(meters_per_mm) {}
  double meters_per_mm_;
};

// A place read off a sheet.
struct MapPosition {
  Position position;
  double error_m;  // of the ruler only: how accurately the map is drawn is unknown here
};

// Uncertainty, in degrees, of a bearing drawn over `length_mm`, as both ends may be half a
// millimeter off: atan(sqrt(2) 0.5 / length); 90 if the length is not over 0. 20 mm: 2.0; 97 mm:
// 0.4.
double ruler_bearing_error_deg(double length_mm);

// The place `length_mm` (over 0, at most a quarter of the way around the earth) from `named` on a
// true bearing. Its error combines the ruler's two ends along the line and `bearing_error_deg`
// across it (0 to 90; if empty, the bearing was drawn with the same ruler over the same length).
Result<MapPosition> from_named_place(Position named, Bearing<True> bearing, double length_mm,
                                     MapScale scale,
                                     std::optional<double> bearing_error_deg = std::nullopt);

// A place between two neighboring grid lines of the sheet, measured with a ruler along the other
// kind of line.
struct BetweenLines {
  double line_deg;       // the line measured from: longitude east or latitude north positive
  double next_line_deg;  // its neighbor on the place's other side
  double spacing_mm;     // between the two lines, over 0
  double from_line_mm;   // from the first toward its neighbor; negative away from it
};

// The place by its distances from a meridian and a parallel. Meridians are within [-180, 180], less
// than 180 degrees apart, also across the date line; parallels within [-90, 90]. A place more than
// one spacing outside its two lines is refused. Along a parallel equal lengths are equal
// longitudes; along a meridian they are equal ground distances, which on the ellipsoid are not
// quite equal latitudes. The error combines both readings and both spacings, with the local ground
// distance of a millimeter in each direction. Source: lengths on WGS84 by path_between();
// propagation of independent errors.
Result<MapPosition> from_graticule(const BetweenLines& meridians, const BetweenLines& parallels);

// A sheet and the stop on it, in millimeters from the lower left corner.
struct PaperSheet {
  double width_mm, height_mm;        // over 0
  double stop_right_mm, stop_up_mm;  // on the sheet
  // Direction of the sheet's vertical edge relative to true north at the stop, east positive. If
  // empty, the edge counts as true north: on a wide road map it may be 1 to 3 degrees off (common
  // practice, no source).
  std::optional<Convergence> upright = {};
};

// Where to place the ruler for a heading.
struct RulerLine {
  Bearing<Grid> from_upright;  // clockwise from the sheet's vertical edge
  double right_per_100_mm;     // how far right and up 100 mm of the ruler lead
  double up_per_100_mm;
  double length_mm;          // to the transmitter, on the sheet or beyond it
  double bearing_error_deg;  // of a ruler from the stop to the line's last point on the sheet
  // Where the line leaves the sheet; empty if the transmitter is on it.
  struct Edge {
    double right_mm, up_mm;  // from the lower left corner
    double from_stop_mm;
  };
  std::optional<Edge> edge;
};

// The line from the stop to a transmitter `distance_m` (over 0) away on `bearing`. It is straight
// on the sheet; a geodesic nearly is, on a map of a few hundred kilometers.
Result<RulerLine> ruler_line(const PaperSheet& sheet, MapScale scale, Bearing<True> bearing,
                             double distance_m);

}  // namespace mastwise
