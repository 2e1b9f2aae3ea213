#include "tests/support/child_program.hpp"
#include "tests/support/stage.hpp"

#include <map>
#include <utility>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace mastwise {

namespace {

using nlohmann::json;
using Chances = std::map<std::pair<std::string, int>, double>;  // by call sign and channel

Chances chances_on_screen(const test::Stage& stage) {
  Chances chances;
  REQUIRE(stage.model().stations);
  for (const StationRow& row : stage.model().stations->rows) {
    if (!row.outlook || !row.outlook->chance_percent) continue;
    chances[{row.station.call_sign, row.station.rf_channel.number}] = *row.outlook->chance_percent;
  }
  return chances;
}

Chances chances_of_verb(double heading_error_deg) {
  const test::TemporaryFolder data;
  const auto ended = test::run_program(
      {"survey", "--leaves", "on", "--heading-error", std::to_string(heading_error_deg), "--json"},
      data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  Chances chances;
  for (const json& row : json::parse(ended.output)) {
    if (!row.at("chance").is_number()) continue;
    chances[{row.at("call_sign").get<std::string>(), row.at("rf_channel").get<int>()}] =
        row.at("chance").get<double>();
  }
  return chances;
}

}  // namespace

TEST_CASE("the verb survey gives the screens' chances to the digit, with their pointing error") {
  test::Stage stage;
  stage.set(act::ChooseLeaves{reception::LeafChoice::in_leaf});
  stage.settle();
  const Chances by_compass = chances_on_screen(stage);
  REQUIRE(by_compass.size() > 20);
  CHECK(chances_of_verb(stage.model().findings.heading_error_deg) == by_compass);

  stage.set(act::ChoosePointing{PointingMethod::rig_sides});
  stage.settle();
  const Chances by_rig = chances_on_screen(stage);
  CHECK(by_rig != by_compass);
  CHECK(chances_of_verb(stage.model().findings.heading_error_deg) == by_rig);
}

}  // namespace mastwise
