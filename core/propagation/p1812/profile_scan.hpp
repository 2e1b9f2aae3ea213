#pragma once

#include <cstddef>

// The passes over a profile's points: all work proportional to their number. Each pass handles both
// effective Earth radii. The same passes handle the bare ground (horizons, smooth surface) and the
// ground with its clutter (diffraction).
namespace mastwise::p1812 {

// The distances of a profile's points: measured ones, or even steps with a table of 1/i.
struct Section {
  const double* distances_km = nullptr;  // null: even steps
  double spacing_km = 0.0;
  const double* reciprocals = nullptr;  // 1/i for i = 1 .. points - 1; [0] is any finite value
  std::size_t points = 0;               // at least 4
  double length_km = 0.0;

  double distance_km(std::size_t point) const {
    return distances_km != nullptr ? distances_km[point] : spacing_km * static_cast<double>(point);
  }
};

// A straight line between two heights at the ends of the path; for the antennas hts and hrs.
struct Line {
  double start_m = 0.0;
  double end_m = 0.0;
};

// 500 Ce for the median and the beta effective Earth radius, so that the Earth's bulge at a point
// is bulge * d_i * (d - d_i) in m with distances in km; in m/km^2.
struct Bulges {
  double median = 0.0;
  double beta = 0.0;
};

// Least-squares sums of attachment 1 section 5.6.1 and the extremes of the heights. Not finite if
// any height or distance is not.
struct GroundSums {
  double v1 = 0.0;  // (83)
  double v2 = 0.0;  // (84)
  double lowest_m = 0.0;
  double highest_m = 0.0;
  double shortest_step_km = 0.0;
};
GroundSums sum_ground(const Section& section, const double* heights_m);

// Maxima over the points between the ends, in m and m/km. With t the distance of a point from the
// transmitter, r from the receiver, and h its height:
struct Obstacles {
  double above_line_m = 0.0;       // h - line: hobs (87a)
  double transmitter_slope = 0.0;  // (h - hts) / t
  double receiver_slope = 0.0;     // (h - hrs) / r
  // The same with the Earth's fall-away, the steepest seen from each end: (h - hts) / t - bulge t
  double transmitter_horizon_median = 0.0;
  double transmitter_horizon_beta = 0.0;
  double receiver_horizon_median = 0.0;
  double receiver_horizon_beta = 0.0;
};

// Maxima over the points between the ends of q |q| / (t r) in 1/1000. There q is the height of the
// point, with the Earth's bulge, over the line between the antennas, m; the greatest Fresnel
// parameter of (15) is sign * sqrt(0.002 d / lambda * |value|).
struct Clearances {
  double median = 0.0;
  double beta = 0.0;
};

// The view along a profile. The clearances count, and are computed, only if the antennas see each
// other at one of the radii.
struct Outlook {
  Obstacles obstacles;
  Clearances clearances;
};
Outlook look_along(const Section& section, const double* heights_m, Line antennas, Bulges bulges);

// The point between the ends with the maximum of `look_along` for the median radius; among several,
// the nearest to the antenna that looks, or to the transmitter. `bulge` is 500 Ce there.
std::size_t find_transmitter_horizon(const Section& section, const double* heights_m, Line antennas,
                                     double bulge, double maximum);
std::size_t find_receiver_horizon(const Section& section, const double* heights_m, Line antennas,
                                  double bulge, double maximum);
std::size_t find_clearance(const Section& section, const double* heights_m, Line antennas,
                           double bulge, double maximum);

// The greatest height over a line from the path's start to its end, from point `first` to point
// `last`, both included, m: hm (93).
double highest_above(const Section& section, const double* heights_m, Line line, std::size_t first,
                     std::size_t last);

}  // namespace mastwise::p1812
