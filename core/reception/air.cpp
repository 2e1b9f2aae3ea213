#include "core/reception/air.hpp"

#include <array>
#include <cmath>

namespace mastwise::reception {
namespace {

using itm::Climate;

struct Box {
  Climate climate;
  double south_deg, north_deg, west_deg, east_deg;
};

// The first one that holds the place counts.
constexpr std::array kBoxes{
    Box{Climate::desert, 15.0, 33.0, -17.0, 60.0},                           // Sahara, Arabia
    Box{Climate::desert, 24.0, 38.0, 50.0, 72.0},                            // Iran, Thar
    Box{Climate::desert, 36.0, 46.0, 55.0, 110.0},                           // Karakum to Gobi
    Box{Climate::desert, 25.0, 38.0, -118.0, -103.0},                        // Mojave to Chihuahua
    Box{Climate::desert, 38.0, 42.0, -120.0, -111.0},                        // Great Basin
    Box{Climate::desert, -31.0, -19.0, 118.0, 143.0},                        // inner Australia
    Box{Climate::desert, -30.0, -18.0, 12.0, 24.0},                          // Namib, Kalahari
    Box{Climate::desert, -30.0, -15.0, -72.0, -68.0},                        // Atacama
    Box{Climate::maritime_subtropical, 10.0, 31.0, -98.0, -59.0},            // Gulf of Mexico
    Box{Climate::maritime_subtropical, 4.0, 15.0, -18.0, 9.0},               // West Africa
    Box{Climate::maritime_subtropical, 10.0, 26.0, 105.0, 125.0},            // South China Sea
    Box{Climate::maritime_temperate_over_land, 43.0, 66.0, -25.0, 9.0},      // western Europe
    Box{Climate::maritime_temperate_over_land, 38.0, 60.0, -140.0, -121.0},  // Pacific Northwest
    Box{Climate::maritime_temperate_over_land, -48.0, -34.0, 165.0, 180.0},  // New Zealand
    Box{Climate::maritime_temperate_over_land, -44.0, -40.0, 143.0, 149.0},  // Tasmania
    Box{Climate::maritime_temperate_over_land, -56.0, -38.0, -77.0, -71.0},  // southern Chile
};

double surface_n(Climate climate) {
  switch (climate) {
    case Climate::equatorial:
      return 360.0;
    case Climate::continental_subtropical:
      return 320.0;
    case Climate::maritime_subtropical:
      return 370.0;
    case Climate::desert:
      return 280.0;
    case Climate::continental_temperate:
      return 301.0;
    case Climate::maritime_temperate_over_land:
      return 320.0;
    case Climate::maritime_temperate_over_sea:
      return 350.0;
  }
  return 301.0;
}

}  // namespace

Climate climate_at(Position position) {
  const double latitude_deg = position.latitude_deg();
  const double longitude_deg = position.longitude_deg();
  for (const Box& box : kBoxes) {
    if (latitude_deg >= box.south_deg && latitude_deg <= box.north_deg &&
        longitude_deg >= box.west_deg && longitude_deg <= box.east_deg) {
      return box.climate;
    }
  }
  constexpr double kEquatorial_deg = 10.0, kSubtropical_deg = 30.0;
  if (std::fabs(latitude_deg) < kEquatorial_deg) return Climate::equatorial;
  return std::fabs(latitude_deg) < kSubtropical_deg ? Climate::continental_subtropical
                                                    : Climate::continental_temperate;
}

Air air_of(Climate climate) {
  const double n = surface_n(climate);
  return {.climate = climate,
          .surface_n = n,
          .refractivity = {.gradient_n_per_km = 7.32 * std::exp(0.005577 * n), .sea_level_n = n}};
}

}  // namespace mastwise::reception
