#include "core/reception/air.hpp"

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

itm::Climate climate_of(double latitude_deg, double longitude_deg) {
  return climate_at(*Position::at_deg(latitude_deg, longitude_deg));
}

}  // namespace

// The examples that NTIA Report 82-100 gives for its climates (from memory), and American stops.
TEST_CASE("places have the climate that they are examples of") {
  using itm::Climate;
  CHECK(climate_of(0.0, 22.0) == Climate::equatorial);                       // Congo
  CHECK(climate_of(13.0, 30.0) == Climate::continental_subtropical);         // Sudan
  CHECK(climate_of(6.5, 3.4) == Climate::maritime_subtropical);              // West Africa
  CHECK(climate_of(23.0, 10.0) == Climate::desert);                          // Sahara
  CHECK(climate_of(52.0, -1.5) == Climate::maritime_temperate_over_land);    // England
  CHECK(climate_of(50.0, 20.0) == Climate::continental_temperate);           // Poland
  CHECK(climate_of(44.4, -71.7) == Climate::continental_temperate);          // New Hampshire
  CHECK(climate_of(33.4, -112.0) == Climate::desert);                        // Phoenix
  CHECK(climate_of(25.8, -80.2) == Climate::maritime_subtropical);           // Miami
  CHECK(climate_of(47.6, -122.3) == Climate::maritime_temperate_over_land);  // Seattle
  CHECK(climate_of(-41.3, 174.8) == Climate::maritime_temperate_over_land);  // Wellington
  CHECK(climate_of(-25.0, 133.0) == Climate::desert);                        // inner Australia
}

// A surface refractivity of 301 N-units is the 4/3 earth [NTIA Report 82-100; Recommendation ITU-R
// P.310].
TEST_CASE("the continental temperate climate has the 4/3 earth") {
  const Air air = air_of(itm::Climate::continental_temperate);
  CHECK(157.0 / (157.0 - air.refractivity.gradient_n_per_km) == Approx(4.0 / 3.0).margin(0.002));
  CHECK(air.surface_n == 301.0);
}

// Recommendation ITU-R P.453: moist air bends more; its median falls by 30 to 60 N in the first
// kilometer nearly everywhere on land (from memory).
TEST_CASE("moist climates bend waves more than dry ones") {
  const auto fall = [](itm::Climate climate) {
    return air_of(climate).refractivity.gradient_n_per_km;
  };
  using itm::Climate;
  CHECK(fall(Climate::desert) < fall(Climate::continental_temperate));
  CHECK(fall(Climate::continental_temperate) < fall(Climate::maritime_temperate_over_land));
  CHECK(fall(Climate::maritime_temperate_over_land) < fall(Climate::maritime_subtropical));
  for (const Climate climate :
       {Climate::equatorial, Climate::continental_subtropical, Climate::maritime_subtropical,
        Climate::desert, Climate::continental_temperate, Climate::maritime_temperate_over_land,
        Climate::maritime_temperate_over_sea}) {
    CHECK(fall(climate) > 30.0);
    CHECK(fall(climate) < 60.0);
    CHECK(air_of(climate).climate == climate);
  }
}

}  // namespace mastwise::reception
