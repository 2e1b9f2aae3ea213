#include "app/path/waterfall.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using reception::SignalBudget;
using reception::SignalLoss;

namespace {

// By hand: 160 - 100 - 20 - 3 - 0.4 + 2 = 38.6.
const SignalBudget kBudget{.tower_db = 160.0,
                           .steps = {{.what = SignalLoss::distance, .decibel = 100.0},
                                     {.what = SignalLoss::ridge, .decibel = 20.0},
                                     {.what = SignalLoss::ground, .decibel = -2.0},
                                     {.what = SignalLoss::heading, .decibel = 0.4},
                                     {.what = SignalLoss::noise, .decibel = 3.0}},
                           .margin_db = 38.6};

}  // namespace

TEST_CASE("a waterfall falls from the tower to the margin, without what does not show") {
  const auto rows = waterfall(kBudget, 8);
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].before_db == 160.0);
  CHECK(rows[1].after_db == Approx(40.0));
  CHECK(rows[2].after_db == Approx(42.0));  // a reflection adds
  CHECK(rows[3].step->what == SignalLoss::noise);
  CHECK(rows[3].after_db == Approx(39.0));
}

TEST_CASE("small steps that together show are one row") {
  SignalBudget budget = kBudget;
  for (int i = 0; i < 3; ++i) {
    budget.steps.push_back({.what = SignalLoss::logbook, .decibel = 0.45});
  }
  const auto rows = waterfall(budget, 8);
  REQUIRE(rows.size() == 5);
  CHECK_FALSE(rows[4].step);
  CHECK(rows[4].decibel() == Approx(0.4 + 3 * 0.45));
}

TEST_CASE("a short waterfall keeps the largest steps and still ends at the margin") {
  for (std::size_t most = 1; most <= 6; ++most) {
    INFO(most << " rows");
    const auto rows = waterfall(kBudget, most);
    CHECK(rows.size() <= most);
    CHECK(rows.front().before_db == 160.0);
    for (std::size_t i = 1; i < rows.size(); ++i) {
      CHECK(rows[i].before_db == rows[i - 1].after_db);
    }
    CHECK(rows.back().after_db == Approx(38.6).margin(0.5));
    long shown = std::lround(kBudget.tower_db);
    for (const WaterfallRow& row : rows) shown -= row.shown_db();
    CHECK(shown == std::lround(kBudget.margin_db));
  }
  const auto three = waterfall(kBudget, 3);
  REQUIRE(three.size() == 3);
  CHECK(three[0].step->what == SignalLoss::distance);
  CHECK(three[1].step->what == SignalLoss::ridge);
  CHECK_FALSE(three[2].step);
}
