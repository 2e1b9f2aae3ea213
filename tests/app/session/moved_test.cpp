#include "app/aim/moved.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Among mountains a few hundred meters change what comes in: then Aim says so.
using namespace mastwise;
using test::Stage;

namespace {

void park_at(Stage& stage, const Position& position) {
  Stop stop = stage.model().stop;
  stop.source = PositionSource::ByHand;
  stop.by_hand = position;
  stage.set(act::SetStop{stop});
  stage.settle();
}

std::vector<std::string> planned(const StationsAnswer& answer) {
  std::vector<std::string> ids;
  for (const PlanStep& step : answer.plan->steps) {
    for (const PlanStation& one : step.brings) ids.push_back(one.key.id);
  }
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  return ids;
}

double apart_deg(const Slack& one, const Slack& other) {
  const auto of = [](double a, double b) {
    return std::fabs(std::min(a, 180.0) - std::min(b, 180.0));
  };
  return std::max(of(one.left_deg, other.left_deg), of(one.right_deg, other.right_deg));
}

}  // namespace

TEST_CASE("after a short move Aim mentions a tolerance that jumped and stations gained or lost") {
  Stage stage;
  stage.tap("place Aim");
  test::Dice dice(31);
  int moves = 0, jumps = 0, changed = 0, quiet = 0;
  for (int i = 0; i < 24; ++i) {
    // The practice area's hills reach 40 km around its stop.
    const Position first =
        destination(test::kDryLake, Bearing<True>::degrees(dice.between(0.0, 360.0)),
                    40'000.0 * dice.uniform());
    park_at(stage, first);
    REQUIRE(stage.model().stations);
    const StationsAnswer before = *stage.model().stations;
    CHECK_FALSE(stage.model().aim.moved);  // kilometers from the last one
    park_at(stage, destination(first, Bearing<True>::degrees(dice.between(0.0, 360.0)), 300.0));
    const StationsAnswer& now = *stage.model().stations;
    REQUIRE(before.plan);
    REQUIRE(now.plan);
    ++moves;
    const bool jumped = before.target_slack && now.target_slack &&
                        apart_deg(*before.target_slack, *now.target_slack) > 10.0;
    const bool others = planned(before) != planned(now);
    INFO(i);
    const auto& note = stage.model().aim.moved;
    CHECK(note.has_value() == (jumped || others));
    if (!note) {
      ++quiet;
      continue;
    }
    CHECK(note->moved_m == Approx(300.0).margin(0.1));
    CHECK(note->before.has_value() == jumped);
    CHECK((!note->gained.empty() || !note->lost.empty()) == others);
    jumps += jumped ? 1 : 0;
    changed += others ? 1 : 0;
    if (jumped) CHECK(stage.shows_within(" back: "));
  }
  fmt::print("moves of 300 m: {}, the target's tolerance jumped in {}, stations changed in {}\n",
             moves, jumps, changed);
  CHECK(jumps + changed > 0);
  CHECK(quiet > 0);
}

TEST_CASE("only a move is compared, not another target, gear or heading error") {
  AimState state;
  StationsAnswer answer;
  answer.question.from = test::kDryLake;
  answer.question.target = StationKey{"s", "a"};
  answer.target_slack = Slack{40.0, 40.0};
  answer.plan = Plan{};
  follow_move(state, answer);
  CHECK_FALSE(state.moved);
  StationsAnswer there = answer;
  there.question.from = destination(test::kDryLake, Bearing<True>::degrees(10.0), 300.0);
  there.target_slack = Slack{29.0, 41.0};
  SECTION("a move") {
    follow_move(state, there);
    REQUIRE(state.moved);
    CHECK(state.moved->before == Slack{40.0, 40.0});
  }
  SECTION("less than ten degrees") {
    there.target_slack = Slack{31.0, 49.0};
    follow_move(state, there);
    CHECK_FALSE(state.moved);
  }
  SECTION("another target") {
    there.question.target = StationKey{"s", "b"};
    follow_move(state, there);
    CHECK_FALSE(state.moved);
  }
  SECTION("another heading error") {
    there.question.heading_error_deg += 1.0;
    follow_move(state, there);
    CHECK_FALSE(state.moved);
  }
  SECTION("part of the stations") {
    there.all = 10;
    follow_move(state, there);
    CHECK_FALSE(state.moved);
  }
  SECTION("far away") {
    there.question.from = destination(test::kDryLake, Bearing<True>::degrees(10.0), 5'000.0);
    follow_move(state, there);
    CHECK_FALSE(state.moved);
  }
  SECTION("a station lost") {
    answer.plan->steps.push_back({.bearing = Bearing<True>::degrees(20.0),
                                  .brings = {{.key = {"s", "c"}, .title = "QCCC 3.1"}}});
    state = {};
    follow_move(state, answer);
    there.target_slack = answer.target_slack;
    follow_move(state, there);
    REQUIRE(state.moved);
    CHECK(state.moved->lost == std::vector<std::string>{"QCCC 3.1"});
    CHECK_FALSE(state.moved->before);
  }
}
