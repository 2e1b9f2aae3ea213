#include "core/gear/gear.hpp"
#include "core/logbook/learning.hpp"
#include "core/reception/aimed.hpp"
#include "tests/support/dice.hpp"

#include <cmath>

#include <catch2/catch.hpp>

// An owner who never turns the antenna and notes what comes in from all around.
using namespace mastwise;
using namespace mastwise::learning;
using test::Dice;

namespace {

constexpr double kHeadingError_deg = 6.0;

// One log: stations all around, the antenna due east, the truth as the pattern has it.
std::vector<Trial> draw_log(Dice& dice, const gear::Pattern& pattern, bool as_aimed,
                            std::size_t outcomes) {
  const auto aimed = Bearing<True>::degrees(90.0);
  std::vector<Trial> log;
  while (log.size() < outcomes) {
    reception::Outlook outlook{.bearing = Bearing<True>::degrees(dice.between(0.0, 360.0)),
                               .band = Band::uhf,
                               .margin_db = dice.between(-15.0, 25.0)};
    outlook.deviations.location_db = 5.5;
    outlook.deviations.model_db = 5.0;
    const auto there = reception::aimed_elsewhere(outlook, pattern, aimed, kHeadingError_deg);
    REQUIRE(there);
    const double truth_db = there->margin_db + there->deviation_db * dice.normal();
    log.push_back({.margin_db = as_aimed ? there->margin_db : *outlook.margin_db,
                   .deviation_db = as_aimed ? there->deviation_db : outlook.deviations.total_db(),
                   .outcome = truth_db > 0.0             ? Outcome::steady
                              : truth_db > -kBreaksUp_db ? Outcome::breaks_up
                                                         : Outcome::nothing,
                   .band = Band::uhf,
                   .gear = "roof",
                   .stop_id = "stop-" + std::to_string(log.size() / 8)});
  }
  return log;
}

}  // namespace

TEST_CASE("with one fixed heading the logbook teaches a bias within its stated error of zero",
          "[learning]") {
  const gear::Pattern pattern = gear::Pattern::directional(50.0, 15.0);
  constexpr int kOwners = 200;
  int within = 0;
  double sum_db = 0.0, sum_as_if_aimed_db = 0.0;
  for (int owner = 0; owner < kOwners; ++owner) {
    Dice dice(static_cast<std::uint64_t>(owner) + 7'000);
    const Correction honest =
        learn(draw_log(dice, pattern, true, 60)).correction(Band::uhf, "roof");
    within += std::fabs(honest.bias_db) <= 1.96 * honest.sigma_db ? 1 : 0;
    sum_db += honest.bias_db / kOwners;
    Dice again(static_cast<std::uint64_t>(owner) + 7'000);
    sum_as_if_aimed_db +=
        learn(draw_log(again, pattern, false, 60)).correction(Band::uhf, "roof").bias_db / kOwners;
  }
  INFO("mean bias " << sum_db << " dB; as if every station had been aimed at " << sum_as_if_aimed_db
                    << " dB");
  CHECK(within >= kOwners * 93 / 100);
  CHECK(std::fabs(sum_db) < 0.5);
  // What the correction of the margin is for.
  CHECK(sum_as_if_aimed_db < -4.0);
}

TEST_CASE("a station straight ahead has its own margin, one behind the antenna that of its back") {
  const gear::Pattern pattern = gear::Pattern::directional(50.0, 15.0);
  reception::Outlook outlook{.bearing = Bearing<True>::degrees(90.0), .margin_db = 20.0};
  outlook.deviations.location_db = 5.5;
  const auto ahead =
      reception::aimed_elsewhere(outlook, pattern, Bearing<True>::degrees(90.0), 6.0);
  REQUIRE(ahead);
  CHECK(ahead->margin_db == Approx(20.0));
  const auto behind =
      reception::aimed_elsewhere(outlook, pattern, Bearing<True>::degrees(270.0), 0.0);
  REQUIRE(behind);
  CHECK(behind->margin_db == Approx(5.0));
  outlook.margin_db.reset();
  CHECK_FALSE(reception::aimed_elsewhere(outlook, pattern, Bearing<True>(), 6.0));
}
