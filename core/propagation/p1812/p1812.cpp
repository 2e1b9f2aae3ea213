#include "core/propagation/p1812/p1812.hpp"

#include "core/propagation/field.hpp"
#include "core/propagation/p1812/combination.hpp"
#include "core/propagation/p1812/delta_bullington.hpp"
#include "core/propagation/p1812/ducting.hpp"
#include "core/propagation/p1812/ducting_incidence.hpp"
#include "core/propagation/p1812/line_of_sight.hpp"
#include "core/propagation/p1812/location_variability.hpp"
#include "core/propagation/p1812/path_geometry.hpp"
#include "core/propagation/p1812/terminal_clutter.hpp"
#include "core/propagation/p1812/troposcatter.hpp"
#include "core/propagation/p1812/validation.hpp"
#include "core/propagation/p1812/zones.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

constexpr double kEarthRadiusKm = 6371.0;
constexpr double kBetaRadiusFactor = 3.0;  // kbeta, section 3.7

Section section_of(const Profile& profile, Scratch& scratch) {
  const std::size_t points = profile.heights_m.size();
  Section section;
  section.points = points;
  if (!profile.distances_km.empty()) {
    section.distances_km = profile.distances_km.data();
    section.length_km = profile.distances_km.back();
    return section;
  }
  auto& reciprocals = scratch.reciprocals;
  if (reciprocals.empty()) reciprocals.push_back(1.0);
  while (reciprocals.size() < points) {
    reciprocals.push_back(1.0 / static_cast<double>(reciprocals.size()));
  }
  section.reciprocals = reciprocals.data();
  section.spacing_km = profile.spacing_km;
  section.length_km = profile.spacing_km * static_cast<double>(points - 1);
  return section;
}

// g (1c): ground and clutter; only the ground if there is no clutter. The model never reads the two
// ends, where clutter does not count.
const double* surface_of(const Profile& profile, Scratch& scratch) {
  if (profile.clutter_m.empty()) return profile.heights_m.data();
  const std::size_t points = profile.heights_m.size();
  if (scratch.surface_m.size() < points) scratch.surface_m.resize(points);
  for (std::size_t i = 0; i < points; ++i) {
    scratch.surface_m[i] = profile.heights_m[i] + profile.clutter_m[i];
  }
  return scratch.surface_m.data();
}

// The height used for the path: the antenna's, or the top of the clutter around it.
double calculated_height_m(double antenna_height_m, const TerminalClutter& clutter) {
  return clutter.kind == TerminalClutter::Kind::none ? antenna_height_m
                                                     : std::max(antenna_height_m, clutter.height_m);
}

Bulges bulges_of(const Path& path) {
  return {500.0 / path.median_earth_radius_km, 500.0 / path.beta_earth_radius_km};
}

// Sections 3.6 to 3.8: all results from the profile.
void analyze_profile(const Profile& profile, const Section& section, const GroundSums& sums,
                     const Outlook& bare, Path& path) {
  const double* heights_m = profile.heights_m.data();
  const Line antennas = {path.transmitter_altitude_m, path.receiver_altitude_m};
  const ZoneShares shares = share_zones(section, profile.zones);
  path.sea_fraction = shares.sea_fraction;
  path.longest_land_km = shares.longest_land_km;
  path.longest_inland_km = shares.longest_inland_km;
  const HorizonPoints horizons =
      find_horizons(section, heights_m, antennas, bulges_of(path).median, bare, path);
  fit_smooth_surface(sums, profile.heights_m.front(), profile.heights_m.back(), bare.obstacles,
                     path);
  path.terrain_roughness_m = terrain_roughness_m(section, heights_m, horizons, path);
}

// Section 4.3, with the surface that includes the clutter.
void diffract(const Section& section, const Outlook& covered, Polarization polarization,
              Path& path) {
  const double d = path.distance_km;
  const Line antennas = {path.transmitter_altitude_m, path.receiver_altitude_m};
  const Bulges bulges = bulges_of(path);
  const Obstacles& seen = covered.obstacles;
  SphericalPath smooth = {.distance_km = d,
                          .frequency_ghz = path.frequency_ghz,
                          .wavelength_m = 0.2998 / path.frequency_ghz,
                          .earth_radius_km = path.median_earth_radius_km,
                          .transmitter_height_m = path.diffraction_transmitter_height_m,
                          .receiver_height_m = path.diffraction_receiver_height_m,
                          .sea_fraction = path.sea_fraction,
                          .polarization = polarization};
  const BullingtonView median = {seen.transmitter_horizon_median + bulges.median * d,  // (13)
                                 seen.receiver_horizon_median + bulges.median * d,     // (17)
                                 covered.clearances.median};
  path.median = delta_bullington(section, median, antennas, smooth);
  smooth.earth_radius_km = path.beta_earth_radius_km;
  const BullingtonView beta = {seen.transmitter_horizon_beta + bulges.beta * d,
                               seen.receiver_horizon_beta + bulges.beta * d,
                               covered.clearances.beta};
  path.beta = delta_bullington(section, beta, antennas, smooth);
}

// Sections 4.2 to 4.6, as far as they are independent of the time percentage.
void prepare_mechanisms(const Link& link, Path& path) {
  path.beta0_percent = ducting_incidence_percent(path.longest_land_km, path.longest_inland_km,
                                                 link.path_latitude_deg);
  path.free_space_db = free_space_loss_db(path.frequency_ghz, path.distance_km,
                                          path.transmitter_altitude_m, path.receiver_altitude_m);
  path.beta_line_of_sight_db =
      path.free_space_db + focusing_db(path.transmitter_horizon_km, path.receiver_horizon_km,
                                       path.beta0_percent);               // (11)
  path.median_diffraction_db = path.free_space_db + path.median.loss_db;  // (42)
  path.angular_factor = angular_factor(path.angular_distance_mrad);
  path.near_distance_factor = near_distance_factor(path.distance_km);
  path.ducting_fixed_coupling_db =
      fixed_coupling_loss_db(path, link.transmitter_coast_km, link.receiver_coast_km);
  path.ducting_specific_db_per_mrad =
      5e-5 * path.median_earth_radius_km * std::cbrt(path.frequency_ghz);  // (51)
  path.ducting_angle_mrad = limited_angular_distance_mrad(path);
  path.ducting_incidence_percent = path_incidence_percent(path);
  path.ducting_slope = time_slope(path.ducting_incidence_percent, path.distance_km);
  path.scatter_median_db =
      scatter_median_loss_db(path.frequency_ghz, path.distance_km, path.angular_distance_mrad,
                             link.refractivity.sea_level_n);
}

// Section 4.7: nothing varies at sea; an explicit deviation has priority.
double deviation_db(const Profile& profile, const Link& link) {
  if (link.location_deviation_db) return *link.location_deviation_db;
  if (!profile.zones.empty() && profile.zones.back() == Zone::sea) return 0.0;
  double clutter_m = 0.0;
  if (link.receiver_clutter.kind != TerminalClutter::Kind::none) {
    clutter_m = link.receiver_clutter.height_m;
  } else if (!profile.clutter_m.empty()) {
    clutter_m = profile.clutter_m[profile.clutter_m.size() - 2];
  }
  return location_deviation_db(0.001 * link.frequency_mhz, link.prediction_resolution_m,
                               link.receiver_height_m, clutter_m);
}

Path start_path(const Profile& profile, const Section& section, const Link& link) {
  Path path;
  path.frequency_ghz = 0.001 * link.frequency_mhz;
  path.distance_km = section.length_km;
  path.median_earth_radius_km =
      kEarthRadiusKm * 157.0 / (157.0 - link.refractivity.gradient_n_per_km);  // (6), (7a)
  path.beta_earth_radius_km = kEarthRadiusKm * kBetaRadiusFactor;              // (7b)
  path.transmitter_altitude_m =
      profile.heights_m.front() +
      calculated_height_m(link.transmitter_height_m, link.transmitter_clutter);
  path.receiver_altitude_m =
      profile.heights_m.back() + calculated_height_m(link.receiver_height_m, link.receiver_clutter);
  path.transmitter_clutter_db = terminal_clutter_loss_db(
      link.transmitter_clutter, link.transmitter_height_m, path.frequency_ghz);
  path.receiver_clutter_db =
      terminal_clutter_loss_db(link.receiver_clutter, link.receiver_height_m, path.frequency_ghz);
  path.location_deviation_db = deviation_db(profile, link);
  path.warnings = warn_about(profile, section, link);
  return path;
}

// Sections 4.7, 4.9 and 4.10 for p within [1, 50].
Loss finish(const Path& path, double time_percent, double locations_percent) {
  Loss loss = combine(path, time_percent);
  loss.location_db = location_loss_db(path.location_deviation_db, locations_percent);
  loss.basic_loss_db =
      std::max(loss.line_of_sight_db, loss.median_locations_db + loss.location_db);  // (69)
  loss.warnings = path.warnings;
  return loss;
}

}  // namespace

Result<Path> analyze_path(const Profile& profile, const Link& link, Scratch& scratch) {
  if (auto error = check_link(link)) return *error;
  if (auto error = check_profile(profile)) return *error;
  if (auto error = check_clutter(profile)) return *error;
  const Section section = section_of(profile, scratch);
  const double* heights_m = profile.heights_m.data();
  const GroundSums sums = sum_ground(section, heights_m);
  if (auto error = check_ground(profile, sums)) return *error;

  Path path = start_path(profile, section, link);
  const Line antennas = {path.transmitter_altitude_m, path.receiver_altitude_m};
  const Bulges bulges = bulges_of(path);
  const Outlook bare = look_along(section, heights_m, antennas, bulges);
  analyze_profile(profile, section, sums, bare, path);
  const double* surface_m = surface_of(profile, scratch);
  diffract(section,
           surface_m == heights_m ? bare : look_along(section, surface_m, antennas, bulges),
           link.polarization, path);
  prepare_mechanisms(link, path);
  return path;
}

Result<Loss> loss_for(const Path& path, const Percentages& percentages) {
  if (auto error = check_percentages(percentages)) return *error;
  const double time_percent = percentages.time_percent;
  const double locations_percent = percentages.locations_percent;
  const bool mirrored = time_percent > 50.0;
  Loss loss = finish(path, mirrored ? 100.0 - time_percent : time_percent, locations_percent);
  if (mirrored) {
    const Loss median = finish(path, 50.0, locations_percent);
    loss.basic_loss_db = 2.0 * median.basic_loss_db - loss.basic_loss_db;
    loss.warnings |= static_cast<Warnings>(Warning::mirrored_time);
  }
  loss.field_dbuvm = field_of_1kw_dbuvm(loss.basic_loss_db, path.frequency_ghz * 1000.0);  // (70)
  return loss;
}

Result<Loss> loss_of(const Profile& profile, const Link& link, const Percentages& percentages,
                     Scratch& scratch) {
  const Result<Path> path = analyze_path(profile, link, scratch);
  if (!path) return path.error();
  return loss_for(*path, percentages);
}

}  // namespace mastwise::p1812
