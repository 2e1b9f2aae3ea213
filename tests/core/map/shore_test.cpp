#include "core/map/shore.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/assets.hpp"

#include <catch2/catch.hpp>

namespace mastwise::map {

namespace {

Position place(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// The sea between two places on land.
std::vector<SeaStretch> sea_between(Position from, Position to) {
  const auto path = path_between(from, to);
  const auto shore = Shore::around(test::borders(), from, path.distance_m + 10e3);
  std::vector<SeaStretch> found;
  if (shore) shore->sea_toward(path.bearing, path.distance_m, found);
  return found;
}

}  // namespace

// Widths of straits: any atlas; to the accuracy of the coasts.
TEST_CASE("a path across a strait has its sea", "[map]") {
  // Dover to Calais: 33 km at the narrowest.
  const auto channel = sea_between(place(51.16, 1.30), place(50.93, 1.84));
  REQUIRE(channel.size() == 1);
  CHECK(channel[0].to_m - channel[0].from_m == Approx(37e3).margin(4e3));
  // New Haven to Long Island, across the Sound.
  const auto sound = sea_between(place(41.35, -72.92), place(40.90, -72.66));
  REQUIRE(sound.size() == 1);
  CHECK(sound[0].to_m - sound[0].from_m == Approx(32e3).margin(5e3));
  // Los Angeles to Avalon on Santa Catalina: 35 km from San Pedro.
  const auto catalina = sea_between(place(34.05, -118.25), place(33.38, -118.42));
  REQUIRE(catalina.size() == 1);
  CHECK(catalina[0].to_m - catalina[0].from_m == Approx(32e3).margin(5e3));
}

// Any atlas: the middle of the Channel is sea, Calais is land.
TEST_CASE("a place is at sea if an odd number of coasts lies before it", "[map]") {
  const Position dover = place(51.16, 1.30);
  const auto shore = Shore::around(test::borders(), dover, 100e3);
  REQUIRE(shore);
  const auto at_sea = [&](Position place) {
    const auto path = path_between(dover, place);
    return shore->at_sea(path.bearing, path.distance_m);
  };
  CHECK(at_sea(place(51.03, 1.58)));
  CHECK_FALSE(at_sea(place(50.90, 1.95)));
  CHECK_FALSE(at_sea(place(51.20, 1.20)));
}

TEST_CASE("inland there is no sea", "[map]") {
  CHECK(sea_between(place(39.7, -105.0), place(41.1, -104.8)).empty());
  CHECK_FALSE(Shore::around(test::borders(), place(39.7, -105.0), 300e3));
}

TEST_CASE("a place that is in the sea by these coasts claims none", "[map]") {
  // In the middle of the Channel, as a missing island would be.
  CHECK(sea_between(place(51.05, 1.55), place(50.93, 1.84)).empty());
}

TEST_CASE("the sea from the north, across north's bearing", "[map]") {
  // Along the Californian coast the same water is found from any side.
  for (const double longitude_deg : {-118.45, -118.40, -118.35}) {
    const auto there = sea_between(place(33.38, -118.42), place(34.05, longitude_deg));
    const auto back = sea_between(place(34.05, longitude_deg), place(33.38, -118.42));
    REQUIRE(there.size() == back.size());
    REQUIRE_FALSE(there.empty());
    CHECK(there[0].to_m - there[0].from_m ==
          Approx(back.back().to_m - back.back().from_m).margin(300.0));
  }
}

TEST_CASE("a coast is near within fifty kilometers", "[map]") {
  // Sacramento is 110 km from the ocean by the Golden Gate, but the bay's arms reach to 60 km.
  const Position inland = place(39.0, -120.0);
  const auto shore = Shore::around(test::borders(), inland, 400e3);
  REQUIRE(shore);
  const auto near = [&](Position place) {
    const auto path = path_between(inland, place);
    return shore->coast_near(path.bearing, path.distance_m);
  };
  CHECK(near(place(38.3, -122.9)));         // 10 km from the ocean
  CHECK_FALSE(near(place(39.5, -119.8)));   // Reno
  CHECK_FALSE(near(place(36.74, -119.0)));  // east of Fresno
}

}  // namespace mastwise::map
