#include "core/geo/circle_boxes.hpp"

#include <algorithm>

#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("the boxes contain the whole circle, across the antimeridian and at the poles") {
  for (const double latitude_deg : {0.0, 45.0, -80.0, 89.0}) {
    for (const double longitude_deg : {0.0, 179.5, -180.0}) {
      for (const double meters : {1.0, 50e3, 1000e3, 5000e3}) {
        const auto boxes = boxes_around(*Position::at_deg(latitude_deg, longitude_deg), meters);
        for (int bearing_deg = 0; bearing_deg < 360; ++bearing_deg) {
          double there_lat = 0.0, there_lon = 0.0;
          GeographicLib::Geodesic::WGS84().Direct(latitude_deg, longitude_deg, bearing_deg, meters,
                                                  there_lat, there_lon);
          const Position there = *Position::at_deg(there_lat, there_lon);
          const bool held = std::any_of(boxes.begin(), boxes.end(), [&](const auto& box) {
            return there.latitude_deg() >= box.south_deg && there.latitude_deg() <= box.north_deg &&
                   there.longitude_deg() >= box.west_deg && there.longitude_deg() <= box.east_deg;
          });
          if (!held)
            FAIL_CHECK(latitude_deg << " " << longitude_deg << " " << meters << " " << bearing_deg);
        }
      }
    }
  }
}
