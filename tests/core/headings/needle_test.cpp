#include "core/headings/needle.hpp"

#include "core/geo/magnetic_field.hpp"
#include "tests/support/folders.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

// The zone's limit is common practice, no source; these check that it is applied, and to which end
// sinks, which follows from the direction of the field.
TEST_CASE("a needle made for another zone drags next door and sticks beyond", "[ways]") {
  using enum NeedleZone;
  CHECK(needle_zone(30.0) == northern);
  CHECK(needle_zone(29.9) == equator);
  CHECK(needle_zone(-29.9) == equator);
  CHECK(needle_zone(-30.0) == southern);
  CHECK(needle_here(northern, 66.0) == NeedleHere{northern, NeedleSwing::free, false});
  CHECK(needle_here(northern, 0.0) == NeedleHere{equator, NeedleSwing::drags, false});
  CHECK(needle_here(northern, -64.0) == NeedleHere{southern, NeedleSwing::sticks, false});
  CHECK(needle_here(southern, 66.0) == NeedleHere{northern, NeedleSwing::sticks, true});
  CHECK(needle_here(southern, 0.0) == NeedleHere{equator, NeedleSwing::drags, true});
  CHECK(needle_here(equator, -64.0) == NeedleHere{southern, NeedleSwing::drags, false});
  CHECK(needle_here(equator, 66.0) == NeedleHere{northern, NeedleSwing::drags, true});
}

TEST_CASE("a needle for any zone always swings free, one of an unsaid zone is a northern one",
          "[ways]") {
  for (const double dip_deg : {-89.0, -30.0, 0.0, 30.0, 89.0}) {
    CHECK(needle_here(NeedleZone::anywhere, dip_deg).swing == NeedleSwing::free);
    CHECK(needle_here(std::nullopt, dip_deg) == needle_here(NeedleZone::northern, dip_deg));
  }
}

// Needles sold in the United States, Canada and Europe are those of the north, Australian and South
// African ones those of the south [common practice, no source].
TEST_CASE("the zones are those in which needles are sold", "[ways]") {
  const auto model = MagneticModel::load(test::build_folder() + "/assets/magnetic");
  REQUIRE(model);
  struct Sold {
    const char* where;
    double latitude_deg, longitude_deg;
    NeedleZone zone;
  };
  const UtcTime date = std::chrono::sys_days{std::chrono::year{2027} / 1 / 1};
  for (const Sold& sold : {Sold{"Boise", 43.6, -116.2, NeedleZone::northern},
                           Sold{"Miami", 25.8, -80.2, NeedleZone::northern},
                           Sold{"Madrid", 40.4, -3.7, NeedleZone::northern},
                           Sold{"Mexico City", 19.4, -99.1, NeedleZone::northern},
                           Sold{"Quito", -0.2, -78.5, NeedleZone::equator},
                           Sold{"Sydney", -33.9, 151.2, NeedleZone::southern},
                           Sold{"Cape Town", -33.9, 18.4, NeedleZone::southern}}) {
    INFO(sold.where);
    const auto at = Position::at_deg(sold.latitude_deg, sold.longitude_deg);
    CHECK(needle_zone(model->at(*at, date).inclination_deg) == sold.zone);
  }
}
