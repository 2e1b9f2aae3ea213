#include "core/reception/transmitter_height.hpp"

#include "core/terrain/haat.hpp"

#include <algorithm>

namespace mastwise::reception {
namespace {

double within_limits_m(double height_m) {
  return std::clamp(height_m, 10.0, 3'000.0);
}

std::optional<double> antenna_amsl_m(const Station& station, const terrain::TileSource& tiles) {
  if (station.antenna_amsl_m || !station.haat_m) return station.antenna_amsl_m;
  const auto sea_level_haat_m = terrain::haat_m(station.position, 0.0, tiles);
  if (!sea_level_haat_m) return std::nullopt;
  return *station.haat_m - *sea_level_haat_m;
}

}  // namespace

std::optional<double> height_over_tile_m(const Station& station, const terrain::TileSource& tiles) {
  const auto ground_m = terrain::ground_height_m(tiles, station.position);
  if (!ground_m) return std::nullopt;
  const auto amsl_m = antenna_amsl_m(station, tiles);
  if (!amsl_m) return std::nullopt;
  return within_limits_m(*amsl_m - *ground_m);
}

std::optional<double> height_over_country_m(const Station& station) {
  if (station.haat_m) return within_limits_m(*station.haat_m);
  if (!station.antenna_amsl_m || !station.site_amsl_m) return std::nullopt;
  return within_limits_m(*station.antenna_amsl_m - *station.site_amsl_m);
}

std::optional<double> height_over_ground_m(const Station& station, double ground_amsl_m) {
  if (station.antenna_amsl_m) return within_limits_m(*station.antenna_amsl_m - ground_amsl_m);
  return height_over_country_m(station);
}

}  // namespace mastwise::reception
