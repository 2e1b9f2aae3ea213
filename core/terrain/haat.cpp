#include "core/terrain/haat.hpp"

#include "core/terrain/globe_point.hpp"

#include <algorithm>

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/GeodesicLine.hpp>

namespace mastwise::terrain {
namespace {

using GeographicLib::Geodesic;

std::optional<double> average_ground_m(const TileSource& tiles, Position antenna,
                                       Bearing<True> bearing) {
  const auto radial =
      Geodesic::WGS84().Line(antenna.latitude_deg(), antenna.longitude_deg(), bearing.degrees());
  constexpr int kPoints = static_cast<int>((kHaatLast_m - kHaatFirst_m) / kHaatSpacing_m) + 1;
  double sum_m = 0.0;
  for (int point = 0; point < kPoints; ++point) {
    double latitude_deg = 0.0;
    double longitude_deg = 0.0;
    radial.Position(kHaatFirst_m + point * kHaatSpacing_m, latitude_deg, longitude_deg);
    const auto ground_m = ground_height_m(tiles, GlobePoint::of_deg(latitude_deg, longitude_deg));
    if (!ground_m) return std::nullopt;
    sum_m += *ground_m;
  }
  return sum_m / kPoints;
}

}  // namespace

std::size_t Haat::known_radials() const {
  return static_cast<std::size_t>(
      std::count_if(radials.begin(), radials.end(),
                    [](const HaatRadial& radial) { return radial.average_ground_m.has_value(); }));
}

Haat height_above_average_terrain(const TileSource& tiles, Position antenna,
                                  double antenna_amsl_m) {
  Haat haat;
  double sum_m = 0.0;
  double azimuth_deg = 0.0;
  for (HaatRadial& radial : haat.radials) {
    radial.bearing = Bearing<True>::degrees(azimuth_deg);
    radial.average_ground_m = average_ground_m(tiles, antenna, radial.bearing);
    sum_m += radial.average_ground_m.value_or(0.0);
    azimuth_deg += 45.0;
  }
  if (haat.known_radials() == haat.radials.size()) {
    haat.haat_m = antenna_amsl_m - sum_m / static_cast<double>(haat.radials.size());
  }
  return haat;
}

std::optional<double> haat_m(Position antenna, double antenna_amsl_m, const TileSource& tiles) {
  return height_above_average_terrain(tiles, antenna, antenna_amsl_m).haat_m;
}

}  // namespace mastwise::terrain
