#include "app/plan/table.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Station station(const std::string& call_sign, const std::string& channel,
                const std::string& network) {
  Station made{
      .id = call_sign, .call_sign = call_sign, .position = *Position::at_deg(43.0, -118.0)};
  made.programs = {{.virtual_channel = channel, .network = network}};
  made.provenance.source.name = "s";
  return made;
}

PlanStation seen(const Station& station, double chance_percent) {
  return {.key = key_of(station),
          .title = station.call_sign + " " + station.programs.front().virtual_channel,
          .chance_percent = chance_percent};
}

const Station kOne = station("QONE", "1.1", "Alpha"), kTwo = station("QTWO", "2.1", "Alpha"),
              kThree = station("QTHR", "3.1", "Beta"), kFar = station("QFAR", "9.1", "Gamma");

// Two networks; the first heading brings 1.1 and 3.1, a second turn 2.1 instead of 3.1.
StationsAnswer answer_for(PlanFor plan_for) {
  StationsAnswer answer;
  answer.question.plan_for = plan_for;
  for (const Station& one : {kOne, kTwo, kThree, kFar}) answer.rows.push_back({.station = one});
  answer.rows.back().reasons = {
      {.decibel = 40.0, .fact = reception::fact::Shortfall{}, .gain_percent = 90.0},
      {.decibel = 30.0,
       .fact = reception::fact::InTheWay{{.distance_m = 70'000.0}},
       .gain_percent = 80.0}};
  answer.plan = Plan{.steps = {{.bearing = Bearing<True>::degrees(10.0),
                                .brings = {seen(kOne, 95.0), seen(kThree, 80.0)},
                                .loses = {seen(kTwo, 30.0)}}},
                     .again = PlanStep{.bearing = Bearing<True>::degrees(200.0),
                                       .brings = {seen(kOne, 75.0), seen(kTwo, 88.0)},
                                       .loses = {seen(kThree, 20.0)}},
                     .out = {{"Gamma", 12.0, key_of(kFar)}}};
  return answer;
}

}  // namespace

TEST_CASE("a plan's table has the best channel of each network at each heading") {
  const PlanTable table = plan_table(answer_for(PlanFor::Networks), 1);
  REQUIRE(table.columns.size() == 2);
  CHECK(table.again);
  CHECK(table.columns[0].aim_at == key_of(kOne));
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[0].name == "Alpha");
  CHECK(table.rows[0].cells[0]->channel == "1.1");
  CHECK(table.rows[0].cells[0]->chance_percent == 95.0);
  CHECK(table.rows[0].cells[1]->channel == "2.1");
  CHECK(table.rows[1].name == "Beta");
  CHECK(table.rows[1].cells[0]->comes_in);
  CHECK_FALSE(table.rows[1].cells[1]->comes_in);
  CHECK(table.rows[1].cells[1]->chance_percent == 20.0);
  // What no heading brings has a row, too, so that it is not simply missing.
  CHECK(table.rows[2].name == "Gamma");
  CHECK_FALSE(table.rows[2].cells[0]);
  CHECK(table.wanted == 3);
  CHECK(table.brought == 2);
}

TEST_CASE("the table tells what turning again gains and loses") {
  const PlanTable table = plan_table(answer_for(PlanFor::Networks), 1);
  CHECK(table.shown == 1);
  CHECK(table.gained == 1);
  CHECK(table.lost == 1);
  REQUIRE(table.rows[0].changes.size() == 1);
  CHECK(table.rows[0].changes[0] ==
        PlanChange{.channel = "2.1", .chance_percent = 88.0, .gained = true});
  REQUIRE(table.rows[1].changes.size() == 1);
  CHECK(table.rows[1].changes[0] ==
        PlanChange{.channel = "3.1", .chance_percent = 20.0, .gained = false});
}

TEST_CASE("what no heading brings has the reason that costs most, not the shortfall itself") {
  const PlanTable table = plan_table(answer_for(PlanFor::Networks), 1);
  REQUIRE(table.weak.size() == 1);
  CHECK(table.weak[0].channel == "9.1");
  CHECK(table.weak[0].name == "Gamma");
  CHECK(table.weak[0].best_percent == 12.0);
  REQUIRE(table.weak[0].why);
  CHECK(table.weak[0].why->kind() == reception::ReasonKind::obstacle);
}

TEST_CASE("with nothing pinned the table is of the target, and says so") {
  StationsAnswer answer = answer_for(PlanFor::Pinned);
  answer.question.target = key_of(kThree);
  answer.plan->out.clear();
  const PlanTable table = plan_table(answer, 1);
  CHECK(table.nothing_pinned);
  CHECK(table.wanted == 1);
  CHECK(table.brought == 1);
  REQUIRE_FALSE(table.rows.empty());
  CHECK(table.rows[0].wanted);
  CHECK(table.rows[0].name == "QTHR 3.1");
  for (std::size_t i = 1; i < table.rows.size(); ++i) CHECK_FALSE(table.rows[i].wanted);

  answer.question.pinned = {key_of(kOne)};
  const PlanTable pinned = plan_table(answer, 1);
  CHECK_FALSE(pinned.nothing_pinned);
  CHECK(pinned.rows[0].name == "QONE 1.1");
}

TEST_CASE("a plan of all that is likely counts stations") {
  StationsAnswer answer = answer_for(PlanFor::All);
  const PlanTable table = plan_table(answer, 1);
  CHECK(table.brought == 2);  // at the plan's own heading
  CHECK(table.wanted == 3);
  answer.plan->again.reset();
  const PlanTable alone = plan_table(answer, 7);
  CHECK(alone.shown == 0);
  CHECK(alone.gained == 0);
}
