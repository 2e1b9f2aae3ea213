#include "core/plan/turn_plan.hpp"

#include "tests/core/plan/curves.hpp"

#include <catch2/catch.hpp>

// Worked by hand: tents of 90 percent that fall by 2 a degree, so that the floor of 70 is met 10
// degrees to either side.
namespace mastwise {

namespace {

using test::level;
using test::tent;
using test::tents;
using Curves = std::vector<std::optional<reception::ChanceCurve>>;

TurnPlan plan_for_all(const Curves& curves) {
  TurnPlanRequest request;
  for (std::size_t i = 0; i < curves.size(); ++i) request.wishes.push_back({.stations = {i}});
  return turn_plan(curves, request);
}

double bearing_deg(const TurnPlan& plan, std::size_t heading) {
  return plan.headings.at(heading).bearing.degrees();
}

}  // namespace

TEST_CASE("turn plan: without wanted stations the plan is empty") {
  const TurnPlan plan = turn_plan(Curves{tent(10.0)}, {});
  CHECK(plan.headings.empty());
  CHECK(plan.out_of_plan.empty());
  CHECK(plan.fewest_proved);
  CHECK(plan_for_all({}).headings.empty());
}

TEST_CASE("turn plan: one station is aimed at with its tolerance") {
  const TurnPlan plan = plan_for_all({tent(77.0)});
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == Approx(77.0));
  CHECK(plan.headings[0].slack.left_deg == Approx(10.0));
  CHECK(plan.headings[0].slack.right_deg == Approx(10.0));
  REQUIRE(plan.headings[0].brings.size() == 1);
  CHECK(plan.headings[0].brings[0].chance_percent == Approx(90.0));
  CHECK(plan.headings[0].brings[0].relied_on);
  CHECK(plan.headings[0].off_axis_for.empty());
}

// As on the dial: the middle of what a flat and lopsided curve allows would be 83.
TEST_CASE("turn plan: one station is aimed at straight where nothing else brings more") {
  reception::ChanceCurve::Values percent{};
  for (std::size_t heading = 60; heading <= 106; ++heading) percent[heading] = 95.0;
  percent[77] = 94.6;
  const TurnPlan plan =
      plan_for_all({reception::ChanceCurve(Bearing<True>::degrees(77.0), percent)});
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == Approx(77.0));
  // A point gained is worth a heading beside the station.
  percent[77] = 93.0;
  const TurnPlan beside =
      plan_for_all({reception::ChanceCurve(Bearing<True>::degrees(77.0), percent)});
  REQUIRE(beside.headings.size() == 1);
  CHECK(bearing_deg(beside, 0) != Approx(77.0));
}

TEST_CASE("turn plan: stations exactly the sum of their tolerances apart share one heading") {
  const TurnPlan touching = plan_for_all({tent(100.0), tent(120.0)});
  REQUIRE(touching.headings.size() == 1);
  CHECK(bearing_deg(touching, 0) == Approx(110.0));
  CHECK(touching.headings[0].slack.left_deg == Approx(0.0).margin(1e-6));
  CHECK(touching.headings[0].slack.right_deg == Approx(0.0).margin(1e-6));
  CHECK(touching.headings[0].brings.size() == 2);
  // Two degrees closer: a degree of tolerance to either side. A degree farther: two headings.
  const TurnPlan within = plan_for_all({tent(101.0), tent(119.0)});
  REQUIRE(within.headings.size() == 1);
  CHECK(bearing_deg(within, 0) == Approx(110.0));
  CHECK(within.headings[0].slack.left_deg == Approx(1.0));
  CHECK(within.headings[0].slack.right_deg == Approx(1.0));
  const TurnPlan beyond = plan_for_all({tent(100.0), tent(121.0)});
  REQUIRE(beyond.headings.size() == 2);
  CHECK(bearing_deg(beyond, 0) == Approx(100.0));
  CHECK(bearing_deg(beyond, 1) == Approx(121.0));
  REQUIRE(beyond.headings[0].loses.size() == 1);
  CHECK(beyond.headings[0].loses[0].station == 1);
  CHECK(beyond.headings[0].loses[0].wished);
  CHECK(beyond.headings[0].loses[0].chance_percent == Approx(48.0));  // 90 - 2 x 21
  CHECK(beyond.headings[0].loses[0].best_percent == Approx(90.0));
}

TEST_CASE("turn plan: arcs that touch between whole degrees share a heading") {
  // Peaks of 89 meet 70 after 9.5 degrees: from 19 degrees apart on, one point is left.
  const TurnPlan plan = plan_for_all({tent(100.0, 89.0), tent(119.0, 89.0)});
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == Approx(109.5));
}

TEST_CASE("turn plan: headings work across north") {
  const TurnPlan plan = plan_for_all({tent(353.0), tent(7.0)});
  REQUIRE(plan.headings.size() == 1);
  CHECK((plan.headings[0].bearing - Bearing<True>()).size_deg() == Approx(0.0).margin(1e-6));
  CHECK(plan.headings[0].slack.left_deg == Approx(3.0));
  CHECK(plan.headings[0].slack.right_deg == Approx(3.0));
}

TEST_CASE("turn plan: two faces also bring in opposite stations") {
  const TurnPlan plan = plan_for_all({tents({{30.0}, {210.0}}), tents({{210.0}, {30.0}})});
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == Approx(30.0));  // the first wanted station is ahead
  CHECK(plan.headings[0].brings.size() == 2);
  CHECK(plan.headings[0].slack.left_deg == Approx(10.0));
  // Two of three are south.
  const TurnPlan south =
      plan_for_all({tents({{30.0}, {210.0}}), tents({{210.0}, {30.0}}), tents({{212.0}, {32.0}})});
  REQUIRE(south.headings.size() == 1);
  CHECK(bearing_deg(south, 0) > 200.0);
  CHECK(bearing_deg(south, 0) < 215.0);
}

TEST_CASE("turn plan: an omnidirectional antenna needs no turn") {
  const TurnPlan plan = plan_for_all({test::level(80.0, 45.0), test::level(95.0, 300.0)});
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == 45.0);
  CHECK(plan.headings[0].slack == Slack{180.0, 180.0});
  CHECK(plan.headings[0].slack.all_round());
  CHECK(plan.headings[0].loses.empty());
}

TEST_CASE("turn plan: stations with equal curves share one heading") {
  const TurnPlan plan = plan_for_all(Curves(12, tent(200.0)));
  REQUIRE(plan.headings.size() == 1);
  CHECK(bearing_deg(plan, 0) == Approx(200.0));
  CHECK(plan.headings[0].brings.size() == 12);
}

TEST_CASE("turn plan: a pinned station gets its heading, or the plan lists it as missed") {
  // Stations 0 and 1 fit one heading, the pinned one needs another.
  const Curves curves{tent(100.0), tent(112.0), tent(250.0, 71.0), tent(300.0, 69.0)};
  const TurnPlan plan = turn_plan(
      curves,
      {.wishes = {{.stations = {0}}, {.stations = {1}}, {.stations = {2}, .pinned = true}}});
  REQUIRE(plan.headings.size() == 2);
  CHECK(bearing_deg(plan, 0) == Approx(106.0));
  CHECK(bearing_deg(plan, 1) == Approx(250.0));
  CHECK(plan.headings[1].brings.at(0).station == 2);
  const TurnPlan without =
      turn_plan(curves, {.wishes = {{.stations = {0}}, {.stations = {3}, .pinned = true}}});
  CHECK(without.headings.size() == 1);
  REQUIRE(without.out_of_plan.size() == 1);
  CHECK(without.out_of_plan[0].wish == 1);
  CHECK(without.out_of_plan[0].station == std::size_t{3});
  CHECK(*without.out_of_plan[0].best_percent == Approx(69.0));
}

TEST_CASE("turn plan: a station without a known chance is never claimed") {
  const TurnPlan plan = plan_for_all({std::nullopt, tent(20.0), test::level(0.0)});
  REQUIRE(plan.headings.size() == 1);
  CHECK(plan.headings[0].brings.size() == 1);
  CHECK(plan.headings[0].brings[0].station == 1);
  REQUIRE(plan.out_of_plan.size() == 2);
  CHECK_FALSE(plan.out_of_plan[0].best_percent);
  CHECK_FALSE(plan.out_of_plan[0].station);
  CHECK(*plan.out_of_plan[1].best_percent == 0.0);
}

TEST_CASE("turn plan: any station of a network is enough") {
  // The network is at 40 and at 205; the other wanted station is at 200.
  const Curves curves{tent(40.0, 99.0), tent(205.0, 85.0), tent(200.0)};
  const TurnPlan plan = turn_plan(curves, {.wishes = {{.stations = {0, 1}}, {.stations = {2}}}});
  REQUIRE(plan.headings.size() == 1);
  REQUIRE(plan.headings[0].brings.size() == 2);
  CHECK(plan.headings[0].brings[0].relied_on);
  CHECK(plan.headings[0].brings[1].relied_on);
  REQUIRE(plan.headings[0].loses.size() == 1);
  CHECK(plan.headings[0].loses[0].station == 0);
  CHECK(plan.headings[0].loses[0].wished);
  // Alone, the better of the two is chosen.
  const TurnPlan alone = turn_plan(curves, {.wishes = {{.stations = {0, 1}}}});
  REQUIRE(alone.headings.size() == 1);
  CHECK(bearing_deg(alone, 0) == Approx(40.0));
}

TEST_CASE("turn plan: among plans with as few headings the better chances win") {
  // The middle one fits with either neighbor; with the second all have more.
  const TurnPlan plan = plan_for_all({tent(80.0), tent(97.0), tent(107.0)});
  REQUIRE(plan.headings.size() == 2);
  // Alone at 80; 97 and 107 have 160 between them anywhere from one to the other, so the middle.
  CHECK(bearing_deg(plan, 0) == Approx(102.0));
  CHECK(bearing_deg(plan, 1) == Approx(80.0));
}

TEST_CASE("turn plan: other stations are listed where they come in or are lost") {
  const Curves curves{tent(100.0), tent(103.0), tent(300.0)};
  const TurnPlan plan = turn_plan(curves, {.wishes = {{.stations = {0}}}});
  REQUIRE(plan.headings.size() == 1);
  REQUIRE(plan.headings[0].brings.size() == 2);
  CHECK(plan.headings[0].brings[1].station == 1);
  CHECK_FALSE(plan.headings[0].brings[1].wished);
  CHECK_FALSE(plan.headings[0].brings[1].relied_on);
  CHECK(plan.headings[0].slack.right_deg == Approx(10.0));  // of the wanted station alone
  REQUIRE(plan.headings[0].loses.size() == 1);
  CHECK_FALSE(plan.headings[0].loses[0].wished);
}

// By hand: tents at 100 and 190; from the first heading the other comes in at 180 to 200, whose
// middle is 190, and that loses the first.
TEST_CASE("turn plan: where one heading is enough, the best second turn is known") {
  TurnPlanRequest request{.wishes = {{.stations = {0}}}};
  const Curves curves{tent(100.0), tent(190.0), tent(193.0)};
  const TurnPlan plan = turn_plan(curves, request);
  REQUIRE(plan.headings.size() == 1);
  REQUIRE(plan.again);
  // Both others come in from 183 to 200.
  CHECK(plan.again->bearing.degrees() == Approx(191.5));
  CHECK(plan.again->slack.left_deg == Approx(8.5));
  CHECK(plan.again->slack.right_deg == Approx(8.5));
  REQUIRE(plan.again->brings.size() == 2);
  REQUIRE(plan.again->loses.size() == 1);
  CHECK(plan.again->loses[0].station == 0);
}

TEST_CASE("turn plan: a second turn that gains as much and loses less is better") {
  // The second station comes in at two headings; at the farther one the first does not get lost.
  const TurnPlanRequest request{.wishes = {{.stations = {0}}}};
  const TurnPlan plan =
      turn_plan(Curves{tents({{100.0}, {300.0, 85.0}}), tents({{150.0}, {300.0}})}, request);
  REQUIRE(plan.again);
  CHECK(plan.again->bearing.degrees() == Approx(300.0).margin(10.0));
  CHECK(plan.again->loses.empty());
}

TEST_CASE("turn plan: without anything to gain, or with several headings, there is no other turn") {
  const TurnPlanRequest first{.wishes = {{.stations = {0}}}};
  CHECK_FALSE(turn_plan(Curves{tent(100.0), tent(102.0, 60.0)}, first).again);
  CHECK_FALSE(plan_for_all({tent(100.0), tent(200.0)}).again);
  CHECK_FALSE(turn_plan(Curves{level(99.0), level(80.0)}, first).again);
}

TEST_CASE("turn plan: stations that no heading brings are told, the best first") {
  const TurnPlanRequest request{.wishes = {{.stations = {0}}, {.stations = {1}}}};
  const TurnPlan plan = turn_plan(
      Curves{tent(100.0), tent(50.0, 40.0), tent(60.0, 30.0), std::nullopt, tent(70.0, 69.0)},
      request);
  REQUIRE(plan.out_of_plan.size() == 1);
  REQUIRE(plan.too_weak.size() == 2);
  CHECK(plan.too_weak[0].station == 4);
  CHECK(plan.too_weak[0].best_percent == Approx(69.0));
  CHECK(plan.too_weak[1].station == 2);
}

}  // namespace mastwise
