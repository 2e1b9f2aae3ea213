#include "core/propagation/p1812/bullington.hpp"

#include "core/propagation/p1812/knife_edge.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

// Str (14): slope of the line from transmitter to receiver, m/km.
double direct_slope(Line antennas, double distance_km) {
  return (antennas.end_m - antennas.start_m) / distance_km;  // (14)
}

// Fresnel parameter of an obstacle `obstruction_m` above the line between the antennas.
double fresnel_parameter(double obstruction_m, double from_start_km, double distance_km,
                         double wavelength_m) {
  return obstruction_m * std::sqrt(0.002 * distance_km /
                                   (wavelength_m * from_start_km * (distance_km - from_start_km)));
}

// vb (18)-(19): of the point where the rays over the two horizons meet.
double meeting_point_parameter(const BullingtonView& view, Line antennas, double distance_km,
                               double wavelength_m) {
  const double meeting_km =
      (antennas.end_m - antennas.start_m + view.receiver_slope * distance_km) /
      (view.transmitter_slope + view.receiver_slope);  // db (18)
  const double line_m =
      (antennas.start_m * (distance_km - meeting_km) + antennas.end_m * meeting_km) / distance_km;
  const double ray_m = antennas.start_m + view.transmitter_slope * meeting_km;
  return fresnel_parameter(ray_m - line_m, meeting_km, distance_km, wavelength_m);  // (19)
}

double clearance_parameter(double clearance, double distance_km, double wavelength_m) {
  return std::copysign(std::sqrt(0.002 * distance_km / wavelength_m * std::fabs(clearance)),
                       clearance);  // (15)
}

// Over the smooth surface the slope to a point at distance t, bulge (d - t) - height / t, has a
// single crest at t = sqrt(height / bulge). The steepest of the profile's points is one of the two
// next to the crest. `distance_to(i)` counts the points from the antenna.
template <class DistanceTo>
double steepest_smooth_slope(std::size_t points, double length_km, double height_m, double bulge,
                             DistanceTo distance_to) {
  const double crest_km = std::sqrt(height_m / bulge);
  std::size_t low = 1;
  std::size_t high = points - 2;
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (distance_to(middle) < crest_km) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  const auto slope = [&](std::size_t i) {
    const double t = distance_to(i);
    return bulge * (length_km - t) - height_m / t;
  };
  return std::max(slope(low), slope(std::max<std::size_t>(low, 2) - 1));
}

// Over the smooth surface q / sqrt(t r), and with it q |q| / (t r), also has a single crest (with z
// = t / r its derivative changes sign once), so bisection finds the profile's point on it.
double greatest_smooth_clearance(const Section& section, Line antennas, double bulge) {
  const double d = section.length_km;
  const auto clearance = [&](std::size_t i) {
    const double t = section.distance_km(i);
    const double q = bulge * t * (d - t) - (antennas.start_m * (d - t) + antennas.end_m * t) / d;
    return q * std::fabs(q) / (t * (d - t));
  };
  std::size_t low = 1;
  std::size_t high = section.points - 2;
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (clearance(middle) < clearance(middle + 1)) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return clearance(low);
}

}  // namespace

double bullington_loss_db(const BullingtonView& view, Line antennas, double distance_km,
                          double wavelength_m) {
  const bool line_of_sight = view.transmitter_slope < direct_slope(antennas, distance_km);
  const double v = line_of_sight
                       ? clearance_parameter(view.clearance, distance_km, wavelength_m)
                       : meeting_point_parameter(view, antennas, distance_km, wavelength_m);
  const double edge_db = knife_edge_loss_db(v);  // Luc (16), (20)
  return edge_db + (1.0 - std::exp(-edge_db / 6.0)) * (10.0 + 0.02 * distance_km);  // (21)
}

double smooth_bullington_loss_db(const Section& section, Line antennas, double bulge,
                                 double wavelength_m) {
  const double d = section.length_km;
  const std::size_t last = section.points - 1;
  BullingtonView view;
  view.transmitter_slope =
      steepest_smooth_slope(section.points, d, antennas.start_m, bulge,
                            [&](std::size_t i) { return section.distance_km(i); });
  view.receiver_slope =
      steepest_smooth_slope(section.points, d, antennas.end_m, bulge,
                            [&](std::size_t i) { return d - section.distance_km(last - i); });
  if (view.transmitter_slope < direct_slope(antennas, d)) {
    view.clearance = greatest_smooth_clearance(section, antennas, bulge);
  }
  return bullington_loss_db(view, antennas, d, wavelength_m);
}

}  // namespace mastwise::p1812
