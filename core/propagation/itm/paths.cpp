#include "core/propagation/itm/limits.hpp"
#include "core/propagation/itm/medium.hpp"
#include "core/propagation/itm/reference_attenuation.hpp"
#include "core/propagation/itm/terminals.hpp"
#include "core/propagation/itm/terrain.hpp"

namespace mastwise::itm {
namespace {

// C of (4.11): weight of effective heights above the structural ones for short masts.
constexpr double kAreaHeightProductM2 = 0;
constexpr double kProfileHeightProductM2 = 10;

Path path_in_its_medium(const Link& link, double mean_elevation, double distance_m) {
  Path path;
  path.distance_m = distance_m;
  path.frequency_mhz = link.frequency_mhz;
  path.climate = link.climate;
  path.wave_number_per_m = wave_number_per_m(link.frequency_mhz);
  path.mean_elevation_m = mean_elevation;
  path.surface_refractivity = surface_refractivity(link.sea_level_refractivity, mean_elevation);
  path.earth_curvature_per_m = earth_curvature_per_m(path.surface_refractivity);
  path.ground_impedance = ground_impedance(link);
  path.terminals[0].structural_height_m = link.transmitter_height_m;
  path.terminals[1].structural_height_m = link.receiver_height_m;
  path.free_space_loss_db = free_space_loss_db(link.frequency_mhz, distance_m);
  return path;
}

Result<Path> finished(Path path, double mode_height_product_m2) {
  sum_terminals(path);
  attenuate(path, mode_height_product_m2);
  if (auto error = check_result(path)) return *error;
  path.warnings = path_warnings(path);
  return path;
}

}  // namespace

Result<Path> point_to_point(const Link& link, const TerrainProfile& profile) {
  if (auto error = check(link)) return *error;
  if (auto error = check(profile)) return *error;
  const Relief heights = relief(profile.heights_m);
  if (auto error = check_heights(profile.heights_m, heights)) return *error;
  const double distance_m = profile.spacing_m * static_cast<double>(profile.heights_m.size() - 1);
  Path path = path_in_its_medium(link, mean_elevation_m(profile.heights_m), distance_m);
  if (auto error = check_medium(path)) return *error;
  place_on_profile(path, profile, heights);
  return finished(path, kProfileHeightProductM2);
}

Result<Path> area(const Link& link, const AreaTerrain& terrain, double distance_m) {
  if (auto error = check(link)) return *error;
  if (auto error = check(terrain, distance_m)) return *error;
  Path path = path_in_its_medium(link, 0, distance_m);
  if (auto error = check_medium(path)) return *error;
  place_in_area(path, terrain);
  return finished(path, kAreaHeightProductM2);
}

}  // namespace mastwise::itm
