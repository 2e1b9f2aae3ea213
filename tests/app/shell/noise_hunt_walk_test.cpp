#include "app/shared/survey.hpp"
#include "core/sweep/meter_lines.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>
#include <fmt/core.h>

using namespace mastwise;
using test::Stage;

namespace {

void open_hunt(Stage& stage) {
  stage.set(act::Show{Place::Here});
  stage.tap("gear");
  stage.tap("noise");
  stage.tap("noise hunt");
  REQUIRE(stage.model().sheet == Sheet::NoiseHunt);
}

}  // namespace

TEST_CASE("a hunt by the keypad finds the inverter, and the forecast counts it") {
  Stage stage(test::kUpright);  // the whole hunt without scrolling
  stage.settle();
  const Model& model = stage.model();
  const Band band = model.findings.outlook->band;
  const double before_db = *model.findings.outlook->margin_db;
  open_hunt(stage);
  stage.tap("begin hunt");
  REQUIRE(model.peak.hunt);
  CHECK(model.peak.hunt->band == band);
  stage.tap("hunt read");
  stage.tap("off Inverter");
  stage.tap("hunt more");
  stage.tap("hunt much more");
  stage.tap("hunt read");
  stage.tap("off other");
  for (const char* key : {"key T", "key V"}) stage.tap(key);
  stage.tap("key Use it");
  stage.tap("hunt read");
  REQUIRE(model.peak.hunt->steps.size() == 3);
  CHECK(model.peak.hunt->steps[2].turned_off == "TV");
  stage.tap("keep hunt");
  REQUIRE(model.settings.appliances.size() == 2);
  const gear::ApplianceNoise& inverter = model.settings.appliances[0];
  CHECK(inverter.name == "Inverter");
  CHECK(inverter.band == band);
  CHECK(inverter.rise.db == Approx(5.5).margin(0.01));
  CHECK(model.settings.appliances[1].rise.db == Approx(0.0).margin(0.01));
  stage.settle();
  const double with_db = *model.findings.outlook->margin_db;
  CHECK(with_db < before_db);
  // Off while one watches, the margin is as before; Undo brings the noise back.
  stage.tap("appliance Inverter off");
  stage.settle();
  CHECK(*model.findings.outlook->margin_db == Approx(before_db).margin(1e-6));
  stage.set(act::TakeBack{});
  stage.settle();
  CHECK(model.settings.appliances[0].on);
  CHECK(*model.findings.outlook->margin_db == Approx(with_db).margin(1e-6));
}

TEST_CASE("a connected meter reads by itself, once it has settled") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  open_hunt(stage);
  stage.set(act::ConnectMeter{"dvb:0.0"});
  stage.tap("begin hunt");
  Monotonic now = stage.now();
  const auto speak = [&](double db, int seconds) {
    for (int i = 0; i < 4 * seconds; ++i) {
      now += milliseconds(250);
      stage.session().act(act::MeterBytes{now, fmt::format("SNR {:.1f} dB\n", db)});
    }
  };
  speak(12.0, 5);
  REQUIRE(model.peak.hunt->steps.size() == 1);
  // A reading a second, as long as the meter averages.
  CHECK(model.peak.hunt->steps[0].readings_db == std::vector<double>(5, 12.0));
  stage.session().act(act::Tick{now, UtcTime(milliseconds(1'800'000'000'000))});
  stage.session().act(act::TurnedOff{"Fridge"});
  speak(15.0, 2);  // still settling
  CHECK(model.peak.hunt->steps[1].readings_db.empty());
  speak(16.0, 30);
  CHECK(model.peak.hunt->steps[1].readings_db == std::vector<double>(10, 16.0));
  // A level in dBuV says nothing of the noise.
  stage.session().act(act::MeterBytes{now, "LEVEL 57.0 dBuV\n"});
  CHECK(model.peak.hunt->value_db == 16.0);
}

TEST_CASE("a null on an interferer is offered on the dial, and a touch turns there") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  StationsAnswer answer = *model.stations;
  // The practice antenna's pattern is a typical one, whose nulls nobody measured.
  CHECK_FALSE(answer.target_null);
  stage.set(act::Show{Place::Aim});
  CHECK(stage.targets().find("aim null") == nullptr);
  const Bearing<True> heading = Bearing<True>::degrees(10.0);
  answer.target_null = NullHint{.heading = heading,
                                .interferer = "QDST",
                                .interferer_bearing = Bearing<True>::degrees(90.0),
                                .width_deg = 20.0,
                                .depth_db = 20.0,
                                .chance_percent = 80.0,
                                .gain_percent = 12.0};
  stage.session().act(act::StationsFound{answer});
  stage.round();
  CHECK(stage.shows("Null +12"));
  stage.tap("aim null");
  REQUIRE(model.stop.turn);
  CHECK(*model.stop.turn == heading);
}
