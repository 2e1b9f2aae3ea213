#include "core/reception/chance.hpp"

#include "core/reception/link_budget.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <cmath>
#include <random>

#include <catch2/catch.hpp>

namespace mastwise::reception {

TEST_CASE("a chance has a word") {
  CHECK(to_text(chance_word(100.0)) == "steady");
  CHECK(chance_word(89.5) == ChanceWord::steady);
  CHECK(chance_word(89.4) == ChanceWord::likely);
  CHECK(to_text(chance_word(70.0)) == "likely");
  CHECK(to_text(chance_word(69.0)) == "even odds");
  CHECK(to_text(chance_word(39.0)) == "long shot");
  CHECK(to_text(chance_word(10.0)) == "long shot");
  CHECK(to_text(chance_word(9.0)) == "out of reach");
}

// Quantiles of the normal distribution from Abramowitz and Stegun table 26.6.
TEST_CASE("a median margin of 0 is even odds") {
  CHECK(chance_percent(0.0, 8.0) == Approx(50.0));
  CHECK(chance_percent(8.0, 8.0) == Approx(84.134).margin(0.001));
  CHECK(chance_percent(8.0 * 1.281552, 8.0) == Approx(90.0).margin(0.0001));
  CHECK(chance_percent(-8.0 * 2.326348, 8.0) == Approx(1.0).margin(0.0001));
  const Deviations deviations{.location_db = 5.5, .time_db = 2.0, .model_db = 6.0};
  CHECK(deviations.total_db() == Approx(std::sqrt(5.5 * 5.5 + 4.0 + 36.0)));
}

// The chance assumes a normally distributed loss of a misaimed beam, which is an approximation.
// Here evenings are drawn one by one with the true pattern; the error may be 3 points.
TEST_CASE("the chance equals the share of evenings with a picture") {
  Receiver receiver = test::roof_antenna();
  receiver.gear.antenna.uhf = {10.0, gear::Pattern::directional(40.0, 15.0)};
  receiver.heading_error_deg = 12.0;
  const LinkBudget budget(receiver);
  const Station station = test::transmitter(test::north_of_stop(30e3), 20, 500.0, 100.0);
  std::mt19937 random(5);
  std::normal_distribution<double> normal;
  for (const double field_dbuvm : {20.0, 32.0, 36.0, 40.0, 44.0, 60.0}) {
    Measurement measurement;
    measurement.measured = true;
    measurement.slot = *channel_slot(Raster::atsc, {20});
    measurement.outlook.frequency_mhz = measurement.slot.center_mhz;
    measurement.outlook.field_dbuvm = field_dbuvm;
    measurement.outlook.terrain_coverage = 1.0;
    measurement.outlook.deviations = {.location_db = 5.5, .time_db = 2.0, .model_db = 5.0};
    budget.apply(station, measurement, true);
    const double aimed_db = *measurement.outlook.margin_db + measurement.detail.heading_db;
    int good = 0;
    constexpr int kEvenings = 20000;
    for (int i = 0; i < kEvenings; ++i) {
      const Turn off = Turn::clockwise_deg(receiver.heading_error_deg * normal(random));
      const double margin_db = aimed_db + budget.off_axis_db(Band::uhf, off) +
                               5.5 * normal(random) + 2.0 * normal(random) + 5.0 * normal(random);
      good += margin_db > 0.0 ? 1 : 0;
    }
    INFO(field_dbuvm << " dBuV/m, margin " << *measurement.outlook.margin_db);
    CHECK(*measurement.outlook.chance_percent == Approx(100.0 * good / kEvenings).margin(3.0));
  }
}

}  // namespace mastwise::reception
