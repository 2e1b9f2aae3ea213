#include "core/logbook/reliability.hpp"

#include "tests/support/dice.hpp"
#include "tests/support/logbook_records.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::learning;

// R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3 (Wilson's score method
// without continuity correction), from memory, and recomputed from Wilson's formula.
TEST_CASE("the interval of a rate agrees with Newcombe's table", "[learning]") {
  struct Case {
    std::size_t successes, trials;
    double low, high;
  };
  for (const Case& one : {Case{81, 263, 0.2553, 0.3662}, Case{15, 148, 0.0624, 0.1605},
                          Case{0, 20, 0.0, 0.1611}, Case{1, 29, 0.0061, 0.1718}}) {
    const Interval interval = wilson_interval(one.successes, one.trials);
    INFO(one.successes << " of " << one.trials);
    CHECK(interval.low == Approx(one.low).margin(0.00005));
    CHECK(interval.high == Approx(one.high).margin(0.00005));
  }
  CHECK(wilson_interval(20, 20).high == 1.0);
  CHECK(wilson_interval(20, 20).low == Approx(1.0 - 0.1611).margin(0.00005));
}

// By hand: chances 80, 80, 80, 20, 20 % with 2 of 3 and 1 of 2 steady. Mean rate 0.6.
// brier = (2 x 0.04 + 0.64 + 0.64 + 0.04) / 5 = 0.28
// reliability = (3 (0.8 - 2/3)^2 + 2 (0.2 - 0.5)^2) / 5 = (0.053333 + 0.18) / 5 = 0.0466667
// resolution = (3 (2/3 - 0.6)^2 + 2 (0.5 - 0.6)^2) / 5 = (0.0133333 + 0.02) / 5 = 0.00666667
// uncertainty = 0.6 x 0.4 = 0.24, and 0.0466667 - 0.0066667 + 0.24 = 0.28.
TEST_CASE("the Brier score splits into its parts as worked by hand", "[learning]") {
  const std::vector<Forecast> forecasts{
      {80.0, true}, {80.0, true}, {80.0, false}, {20.0, true}, {20.0, false}};
  const auto score = brier_score(forecasts);
  REQUIRE(score);
  CHECK(score->brier == Approx(0.28).margin(1e-12));
  CHECK(score->reliability == Approx(0.0466666667).margin(1e-9));
  CHECK(score->resolution == Approx(0.0066666667).margin(1e-9));
  CHECK(score->uncertainty == Approx(0.24).margin(1e-12));
  REQUIRE(score->skill);
  CHECK(*score->skill == Approx(1.0 - 0.28 / 0.24).margin(1e-12));
  CHECK_FALSE(brier_score({}));
  CHECK_FALSE(brier_score(std::vector<Forecast>{{90.0, true}, {70.0, true}})->skill);
}

// The decomposition is exact [Murphy 1973, equation 11 for two events].
TEST_CASE("the Brier score is the sum of its parts for any forecasts", "[learning]") {
  test::Dice dice(3);
  for (int log = 0; log < 50; ++log) {
    std::vector<Forecast> forecasts;
    const std::size_t count = 1 + dice.below(400);
    for (std::size_t i = 0; i < count; ++i) {
      forecasts.push_back({dice.between(0.0, 100.0), dice.uniform() < 0.4});
    }
    const auto score = brier_score(forecasts);
    REQUIRE(score->brier ==
            Approx(score->reliability - score->resolution + score->uncertainty).margin(1e-12));
  }
}

TEST_CASE("the reliability table counts every forecast once", "[learning]") {
  const auto table = reliability_table(std::vector<Forecast>{
      {0.0, false}, {9.99, false}, {10.0, true}, {95.0, true}, {100.0, true}, {99.0, false}});
  REQUIRE(table.size() == 10);
  CHECK(table[0].forecasts == 2);
  CHECK(table[0].steady == 0);
  CHECK(table[1].forecasts == 1);
  CHECK(table[5].forecasts == 0);
  CHECK_FALSE(table[5].steady_percent);
  CHECK_FALSE(table[5].interval_percent);
  CHECK(table[9].from_percent == 90.0);
  CHECK(table[9].forecasts == 3);
  CHECK(*table[9].mean_chance_percent == Approx(98.0));
  CHECK(*table[9].steady_percent == Approx(200.0 / 3.0));
  // Wilson by hand for 2 of 3: center (2/3 + 0.64024) / 2.28049 = 0.57308.
  CHECK(0.5 * (table[9].interval_percent->low + table[9].interval_percent->high) ==
        Approx(57.31).margin(0.01));
}

TEST_CASE("a breaking picture is not steady, and deleted outcomes do not count", "[learning]") {
  OutcomeRecord steady = test::outcome_record("a", "QAAB", Outcome::steady);
  OutcomeRecord breaks = test::outcome_record("a", "QBBC", Outcome::breaks_up);
  OutcomeRecord unknown = test::outcome_record("a", "QCCD", Outcome::nothing);
  OutcomeRecord deleted = steady;
  steady.chance_percent = breaks.chance_percent = deleted.chance_percent = 70.0;
  deleted.mark.deleted = true;
  CHECK(forecasts(std::vector{steady, breaks, unknown, deleted}) ==
        std::vector<Forecast>{{70.0, true}, {70.0, false}});
}

// The words' limits are those of reception::chance_word: 89.5 % shows as 90 and is steady.
TEST_CASE("by word, each forecast counts in the class that the screen showed", "[learning]") {
  const auto table = reliability_by_word(std::vector<Forecast>{
      {9.4, false}, {9.6, false}, {39.4, true}, {40.0, true}, {69.5, false}, {89.5, true}});
  REQUIRE(table.size() == 5);
  const std::size_t counts[]{1, 2, 1, 1, 1};
  const double limits[]{0.0, 10.0, 40.0, 70.0, 90.0};
  for (std::size_t i = 0; i < table.size(); ++i) {
    INFO(i);
    CHECK(table[i].forecasts == counts[i]);
    CHECK(table[i].from_percent == limits[i]);
  }
  CHECK(table[1].steady == 1);
  CHECK(*table[1].mean_chance_percent == Approx(24.5));
  CHECK(*table[1].steady_percent == Approx(50.0));
  // Wilson by hand for 1 of 2: (0.5 +- 0.693 sqrt(...)): 9.45 to 90.55 %.
  CHECK(table[1].interval_percent->low == Approx(9.45).margin(0.01));
  CHECK(table[1].interval_percent->high == Approx(90.55).margin(0.01));
}
