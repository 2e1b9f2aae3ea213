#include "core/terrain/squares.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace mastwise::terrain {
namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
// A degree of a meridian is nowhere shorter, rounded down [WGS84: 110,574 m at the equator].
constexpr double kLeastDegree_m = 110'500.0;
constexpr int kPlaces = 10;  // along a square's side

// The way as places close together.
std::vector<Position> places_of(std::span<const Position> way, double apart_m) {
  std::vector<Position> places;
  for (std::size_t i = 0; i < way.size(); ++i) {
    places.push_back(way[i]);
    if (i + 1 == way.size()) break;
    const PathBetween leg = path_between(way[i], way[i + 1]);
    const auto steps = static_cast<int>(std::ceil(leg.distance_m / apart_m));
    for (int step = 1; step < steps; ++step) {
      places.push_back(destination(way[i], leg.bearing, leg.distance_m * step / steps));
    }
  }
  return places;
}

// How far a place within the reach may be in longitude.
double lon_reach_deg(double lat_deg, double reach_m) {
  const double lat_reach_deg = reach_m / kLeastDegree_m;
  const double farthest_deg = std::min(90.0, std::fabs(lat_deg) + lat_reach_deg);
  const double narrow = std::cos(farthest_deg * kRadian);
  return narrow * 180.0 <= lat_reach_deg ? 180.0 : std::min(180.0, lat_reach_deg / narrow);
}

std::set<TileCell> cells_around(const std::vector<Position>& places, double reach_m) {
  const double lat_reach_deg = reach_m / kLeastDegree_m;
  std::set<TileCell> cells;
  for (const Position& place : places) {
    const double lat_deg = place.latitude_deg(), lon_deg = place.longitude_deg();
    const double reach_deg = lon_reach_deg(lat_deg, reach_m);
    const auto south = static_cast<int>(std::floor(std::max(-90.0, lat_deg - lat_reach_deg)));
    const auto north = static_cast<int>(std::floor(std::min(89.0, lat_deg + lat_reach_deg)));
    const auto west = static_cast<int>(std::floor(lon_deg - reach_deg));
    const auto east = static_cast<int>(std::floor(lon_deg + reach_deg));
    for (int lat = south; lat <= north; ++lat) {
      for (int lon = west; lon <= std::min(east, west + 359); ++lon) {
        cells.insert({lat, (lon + 540) % 360 - 180});
      }
    }
  }
  return cells;
}

bool near_any(Position place, const std::vector<Position>& way, double reach_m) {
  const double lat_reach_deg = reach_m / kLeastDegree_m;
  return std::any_of(way.begin(), way.end(), [&](const Position& one) {
    return std::fabs(one.latitude_deg() - place.latitude_deg()) <= lat_reach_deg &&
           path_between(one, place).distance_m <= reach_m;
  });
}

double near_km2(TileCell cell, const std::vector<Position>& way, double reach_m) {
  constexpr double kEarth_km = 6371.0;
  const double side_km = kRadian * kEarth_km / kPlaces;
  double area_km2 = 0.0;
  for (int row = 0; row < kPlaces; ++row) {
    const double lat_deg = cell.south_deg + (row + 0.5) / kPlaces;
    for (int column = 0; column < kPlaces; ++column) {
      const auto place = Position::at_deg(lat_deg, cell.west_deg + (column + 0.5) / kPlaces);
      if (place && near_any(*place, way, reach_m)) {
        area_km2 += side_km * side_km * std::cos(lat_deg * kRadian);
      }
    }
  }
  return area_km2;
}

}  // namespace

std::vector<NearSquare> squares_near(std::span<const Position> way, double reach_m) {
  constexpr double kPartOfReach = 8.0;
  const std::vector<Position> places = places_of(way, reach_m / kPartOfReach);
  std::vector<NearSquare> squares;
  for (const TileCell cell : cells_around(places, reach_m)) {
    const double area_km2 = near_km2(cell, places, reach_m);
    if (area_km2 > 0.0) squares.push_back({cell, area_km2});
  }
  return squares;
}

}  // namespace mastwise::terrain
