#include "tests/support/stage.hpp"

#include <cmath>

#include <catch2/catch.hpp>

// Path, plan and peak by touch, in the practice area.
using namespace mastwise;
using test::Stage;

TEST_CASE("the path's title, its margin and its sources are on the screen, and Back leads back") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("why");
  REQUIRE(stage.model().stations->target_budget);
  const double margin_db = stage.model().stations->target_budget->margin_db;
  CHECK(margin_db == *stage.model().findings.outlook->margin_db);
  CHECK(stage.shows(std::to_string(std::lround(margin_db)) + " dB to spare"));
  CHECK(stage.shows_within("PRACTICE"));
  stage.tap("close sheet");
  CHECK(stage.model().sheet == Sheet::None);
}

TEST_CASE("a plan with nothing pinned says so, and a pin changes its title") {
  Stage stage;
  stage.set(act::OpenSheet{Sheet::Plan});
  CHECK(stage.shows_within("Nothing is pinned"));
  CHECK(stage.shows_within("One turn for " + stage.model().stop.target->call_sign));
  stage.set(act::PinStation{key_of(stage.model().stations->rows[1].station)});
  stage.settle();
  CHECK_FALSE(stage.shows_within("Nothing is pinned"));
  stage.tap("plan for networks");
  stage.settle();
  CHECK(stage.shows_within("all six networks"));
}

TEST_CASE("a touch on the second turn makes the acts its own") {
  Stage stage;
  stage.set(act::ChoosePlan{PlanFor::Networks});
  stage.settle();
  stage.set(act::OpenSheet{Sheet::Plan});
  const auto& table = stage.model().plan.table;
  REQUIRE(table);
  REQUIRE(table->columns.size() == 2);
  CHECK(stage.targets().find("aim step 2") == nullptr);
  stage.tap("turn 2");
  const PlanColumn second = stage.model().plan.table->columns[1];
  stage.tap("aim step 2");
  CHECK(key_of(*stage.model().stop.target) == *second.aim_at);
  CHECK(stage.model().stop.turn == second.bearing);
  CHECK(stage.model().place == Place::Aim);
}

TEST_CASE("channels to scan are of the chosen turn, and Done leads back to the plan") {
  Stage stage;
  stage.set(act::ChoosePlan{PlanFor::Networks});
  stage.settle();
  stage.set(act::OpenSheet{Sheet::Plan});
  stage.tap("turn 2");
  stage.tap("scan step 2");
  CHECK(stage.model().sheet == Sheet::Scan);
  CHECK(stage.model().plan.scan.heading == stage.model().stations->plan->again->bearing);
  const StationKey key = stage.model().plan.scan.lines.front().key;
  const auto tick = [&] { return stage.model().plan.scan.lines.front().tick; };
  stage.tap("tick " + key.id + " missing");
  CHECK(tick() == ScanTick::not_found);
  stage.tap("tick " + key.id + " found");
  CHECK(tick() == ScanTick::found);
  stage.tap("tick " + key.id + " found");
  CHECK(tick() == ScanTick::not_tried);
  stage.tap("close sheet");
  CHECK(stage.model().sheet == Sheet::Plan);
}

TEST_CASE("a sweep takes its dial and its meter from the choices before it") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("meter shows bars10");
  stage.tap("turn by handle");
  CHECK(stage.model().peak.meter == Meter::bars_of_10);
  stage.tap("begin sweep");
  REQUIRE(stage.model().peak.sweep);
  CHECK(stage.model().peak.sweep->scale == aim::Scale::bars_of_10);
  CHECK(stage.model().peak.sweep->by == SweepBy::Handle);
  CHECK(stage.model().peak.sweep->value == 5.0);
  stage.tap("value more");
  stage.tap("value much less");
  CHECK(stage.model().peak.sweep->value == 1.0);
}

TEST_CASE("the heading to read at is set by the same keys, and the next reading is there") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("begin sweep");
  const double start_deg = stage.model().peak.sweep->heading.degrees();
  stage.tap("turn to");
  CHECK(stage.targets().find("value more") == nullptr);
  stage.tap("heading much more");
  stage.tap("heading less");
  stage.tap("heading set");
  CHECK(stage.targets().find("value more") != nullptr);
  stage.tap("read");
  CHECK(fold_circle_deg(stage.model().peak.sweep->readings.at(0).heading.degrees()) ==
        Approx(fold_circle_deg(start_deg + 10.0)));
}

TEST_CASE("two readings have a curve through them with a band, and Undo takes both away") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("begin sweep");
  stage.tap("read");
  CHECK(stage.model().peak.sweep->curve.empty());
  stage.tap("value much less");
  stage.tap("read");
  const auto& sweep = *stage.model().peak.sweep;
  REQUIRE(sweep.fit);
  CHECK(sweep.curve.size() == 120);
  CHECK(sweep.heading == *sweep.next);
  stage.tap("drop last");
  CHECK(stage.model().peak.sweep->curve.empty());
  stage.tap("end sweep");
  CHECK_FALSE(stage.model().peak.sweep);
  CHECK(stage.targets().find("begin sweep") != nullptr);
}

TEST_CASE("without a meter the keys turn, and two failing edges make the peak") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("meter shows none");
  stage.tap("begin sweep");
  CHECK(stage.targets().find("read") == nullptr);
  const double start_deg = stage.model().peak.sweep->heading.degrees();
  for (int i = 0; i < 2; ++i) stage.tap("heading much less");
  stage.tap("left edge");
  for (int i = 0; i < 4; ++i) stage.tap("heading much more");
  stage.tap("right edge");
  REQUIRE(stage.model().peak.sweep->between_edges);
  CHECK((stage.model().peak.sweep->between_edges->middle - Bearing<Dial>::degrees(start_deg))
            .size_deg() < 1e-6);
  // Back to the meter: the readings of the same sweep join the edges.
  stage.tap("meter scale");
  stage.tap("read");
  CHECK(stage.model().peak.sweep->left_edge);
  CHECK(stage.model().peak.sweep->readings.size() == 1);
}

TEST_CASE("nothing to plan or to sweep for leads to what is missing") {
  Stage stage;
  stage.set(act::SetStop{
      Stop{.source = PositionSource::ByHand, .by_hand = *Position::at_deg(42.5, -118.5)}});
  for (const Sheet sheet : {Sheet::Plan, Sheet::Path}) {
    stage.set(act::OpenSheet{sheet});
    stage.settle();
    stage.tap("find");
    CHECK(stage.model().sheet == Sheet::None);
    CHECK(stage.model().place == Place::Stations);
  }
  stage.tap("place Peak");
  stage.tap("find");
  CHECK(stage.model().place == Place::Stations);
  stage.set(act::SetStop{Stop{}});
  stage.tap("place Peak");
  stage.tap("find");
  CHECK(stage.model().place == Place::Here);
}
