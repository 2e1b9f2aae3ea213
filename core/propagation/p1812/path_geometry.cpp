#include "core/propagation/p1812/path_geometry.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

// The elevation angle in mrad of a slope in m/km.
double elevation_mrad(double slope) {
  return 1000.0 * std::atan(0.001 * slope);
}

}  // namespace

HorizonPoints find_horizons(const Section& section, const double* heights_m, Line antennas,
                            double bulge, const Outlook& bare, Path& path) {
  const Obstacles& seen = bare.obstacles;
  const double d = section.length_km;
  const double rise = (antennas.end_m - antennas.start_m) / d;
  const double direct_from_transmitter = rise - bulge * d;  // theta_td (78) before the arc tangent
  const double direct_from_receiver = -rise - bulge * d;
  path.line_of_sight = seen.transmitter_horizon_median <= direct_from_transmitter;
  HorizonPoints points;
  if (path.line_of_sight) {
    const std::size_t closest =
        find_clearance(section, heights_m, antennas, bulge, bare.clearances.median);
    points = {closest, closest};  // (80)
    path.transmitter_elevation_mrad = elevation_mrad(direct_from_transmitter);
    path.receiver_elevation_mrad = elevation_mrad(direct_from_receiver);
  } else {
    points = {
        find_transmitter_horizon(section, heights_m, antennas, bulge,
                                 seen.transmitter_horizon_median),
        find_receiver_horizon(section, heights_m, antennas, bulge, seen.receiver_horizon_median)};
    path.transmitter_elevation_mrad = elevation_mrad(seen.transmitter_horizon_median);  // (76)
    path.receiver_elevation_mrad = elevation_mrad(seen.receiver_horizon_median);        // (79)
  }
  path.transmitter_horizon_km = section.distance_km(points.transmitter);  // (78)
  path.receiver_horizon_km = d - section.distance_km(points.receiver);    // (81a)
  path.angular_distance_mrad = 1000.0 * d / path.median_earth_radius_km +
                               path.transmitter_elevation_mrad +
                               path.receiver_elevation_mrad;  // (82)
  return points;
}

void fit_smooth_surface(const GroundSums& sums, double first_height_m, double last_height_m,
                        const Obstacles& bare, Path& path) {
  const double d = path.distance_km;
  path.smooth_transmitter_m = (2.0 * sums.v1 * d - sums.v2) / (d * d);  // hst (85)
  path.smooth_receiver_m = (sums.v2 - sums.v1 * d) / (d * d);           // hsr (86)

  double start_m = path.smooth_transmitter_m;
  double end_m = path.smooth_receiver_m;
  if (bare.above_line_m > 0.0) {  // hobs (87a)
    const double rise = (path.receiver_altitude_m - path.transmitter_altitude_m) / d;
    const double from_transmitter = bare.transmitter_slope - rise;  // alpha_obt (87b)
    const double from_receiver = bare.receiver_slope + rise;        // alpha_obr (87c)
    const double both = from_transmitter + from_receiver;
    start_m -= bare.above_line_m * from_transmitter / both;  // (88a), (88c)
    end_m -= bare.above_line_m * from_receiver / both;       // (88b), (88d)
  }
  path.diffraction_smooth_transmitter_m = std::min(start_m, first_height_m);  // hstd (89a)
  path.diffraction_smooth_receiver_m = std::min(end_m, last_height_m);        // hsrd (89b)
  path.diffraction_transmitter_height_m =
      path.transmitter_altitude_m - path.diffraction_smooth_transmitter_m;  // (37a)
  path.diffraction_receiver_height_m =
      path.receiver_altitude_m - path.diffraction_smooth_receiver_m;  // (37b)

  path.ducting_smooth_transmitter_m = std::min(path.smooth_transmitter_m, first_height_m);  // (90a)
  path.ducting_smooth_receiver_m = std::min(path.smooth_receiver_m, last_height_m);         // (90b)
  path.transmitter_effective_height_m =
      path.transmitter_altitude_m - path.ducting_smooth_transmitter_m;  // hte (92a)
  path.receiver_effective_height_m =
      path.receiver_altitude_m - path.ducting_smooth_receiver_m;  // hre (92b)
}

double terrain_roughness_m(const Section& section, const double* heights_m, HorizonPoints horizons,
                           const Path& path) {
  const Line surface = {path.ducting_smooth_transmitter_m, path.ducting_smooth_receiver_m};
  return highest_above(section, heights_m, surface, horizons.transmitter,
                       std::max(horizons.transmitter, horizons.receiver));  // (91), (93)
}

}  // namespace mastwise::p1812
