#include "core/catalog/catalog.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/receiver_epoch.hpp"
#include "tests/support/stage.hpp"
#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

// The walks that a traveller takes, by finger, with the touches counted. The numbers are Mastwise's
// own aims.
using namespace mastwise;
using test::Stage;

namespace {

void receive_at(Stage& stage, const Position& place) {
  for (int second = 0; second < 12; ++second) {
    stage.receive(test::epoch(place, second));
    stage.wait(milliseconds(1000));
  }
}

// The place in the sweep's plot at this height of its scale, by the words of its ends.
touch::Point height_of(const Stage& stage, double meter) {
  const auto line_px = [&](const char* words) {
    for (const ui::DrawnText& text : stage.drawn()) {
      if (text.text == words) return text.rect.center().y * stage.metrics().px_per_unit;
    }
    FAIL("no \"" << words << "\" beside the plot");
    return 0.0f;
  };
  float left_px = 0.0f;
  for (const ui::DrawnText& text : stage.drawn()) {
    if (text.text == "100") left_px = text.rect.right * stage.metrics().px_per_unit;
  }
  const float none_px = line_px("0"), most_px = line_px("100");
  const auto share = static_cast<float>(meter / 100.0);
  return {left_px + 100.0f, none_px + share * (most_px - none_px)};
}

}  // namespace

TEST_CASE("first start in a browser: the position comes from there, not from a plug") {
  Stage stage(test::kTablet, {}, true);
  stage.set(act::InBrowser{});
  CHECK(stage.shows_within("Looking for your position"));
  CHECK(stage.shows_within("Allow it in the browser"));
  CHECK_FALSE(stage.shows_within("Plug in"));
}

TEST_CASE("first start: from nothing to a practice heading in 2 taps, nothing assumed") {
  Stage stage(test::kTablet, {}, true);
  REQUIRE(stage.model().sheet == Sheet::Start);
  CHECK_FALSE(stage.model().stop.practice);
  CHECK(stage.shows_within("Looking for a receiver"));
  CHECK(stage.shows_within("None yet"));
  CHECK_FALSE(stage.targets().find("show")->enabled);
  stage.tap("practice");
  CHECK(stage.model().place == Place::Stations);
  stage.tap("turn 0");
  REQUIRE(stage.model().findings.card);
  CHECK(stage.shows(fmt::format(
      "{}°", std::lround(stage.model().findings.card->bearing_magnetic.degrees()) % 360)));
  CHECK(stage.taps() == 2);
}

TEST_CASE("first start with stations on board and a receiver: 2 taps to the first heading") {
  test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path(), true);
  REQUIRE(stage.model().sheet == Sheet::Start);
  receive_at(stage, test::kDryLake);
  CHECK(stage.targets().find("show")->enabled);
  stage.tap("show");
  CHECK(stage.model().place == Place::Stations);
  stage.tap("turn 0");
  CHECK(stage.model().findings.card);
  CHECK(stage.taps() == 2);
}

TEST_CASE("arrive and aim: 2 taps from the list's place to the number") {
  Stage stage;
  receive_at(stage, test::kDryLake);
  stage.tap("place Stations");
  stage.tap("turn 0");
  REQUIRE(stage.model().stop.turn);
  CHECK(stage.model().findings.card->bearing_true == *stage.model().stop.turn);
  REQUIRE(stage.model().findings.outlook->chance_percent);
  CHECK(*stage.model().findings.outlook->chance_percent >= kUsualFloor_percent);
  CHECK(stage.taps() == 2);
}

TEST_CASE("the roof with a heading sensor: 2 taps from Aim to the turn, one of them its prompt") {
  Stage stage;
  stage.set(act::Show{Place::Aim});
  const double target_deg = stage.model().findings.card->bearing_true.degrees();
  const auto turn_to = [&](double facing_deg) {
    stage.receive(
        test::sentence(fmt::format("HEHDT,{:.2f},T", std::fmod(facing_deg + 360.0, 360.0))));
    stage.settle();
  };
  turn_to(target_deg - 100.0);
  const int before = stage.taps();
  stage.tap("roof");
  stage.confirm();
  REQUIRE(stage.model().safety.roof);
  CHECK(stage.taps() - before == 2);
  CHECK(stage.shows("100°"));
  turn_to(target_deg + 90.0);
  CHECK(stage.shows("90°"));
  CHECK(stage.taps() - before == 2);
}

TEST_CASE("the receiver is dead: coordinates from a paper map, a tap each and 2 more") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  stage.set(act::Show{Place::Here});
  const int before = stage.taps();
  stage.set(act::OpenKeypad{KeypadPurpose::Position});
  const std::string typed = "42.5,-118.5";
  stage.tap_keys(typed);
  stage.tap("key Use it");
  CHECK(stage.model().findings.position == test::kDryLake);
  CHECK(stage.taps() - before == static_cast<int>(typed.size()) + 1);
}

// The compass reads 8 degrees too much; the meter gives a point for each decibel of the pattern.
TEST_CASE("a sweep and its correction: a touch for each reading and 3 more") {
  Stage stage;
  stage.tap("place Peak");
  const int before = stage.taps();
  const double computed_deg = stage.model().findings.card->bearing_magnetic.degrees();
  stage.tap("begin sweep");
  const auto pattern =
      gear_of(stage.model().settings.gear).antenna.in(stage.model().peak.sweep->band).pattern;
  const auto sweep = [&]() -> const Sweep& { return *stage.model().peak.sweep; };
  int readings = 0;
  while (!(sweep().fit && sweep().fit->enough) && readings < 40) {
    const double off_deg = sweep().heading.degrees() - computed_deg - 8.0;
    const double meter = 70.0 + pattern.relative_db(Turn::clockwise_deg(off_deg));
    stage.tap_at(height_of(stage, meter));
    ++readings;
    REQUIRE(sweep().readings.size() == static_cast<std::size_t>(readings));
    REQUIRE(sweep().readings.back().value);
    CHECK(*sweep().readings.back().value == Approx(meter).margin(2.0));
  }
  REQUIRE(sweep().fit->enough);
  stage.tap("keep sweep");
  INFO(stage.model().trouble << ", 95 % within " << sweep().fit->error95_deg);
  stage.tap("place Aim");
  REQUIRE(stage.model().findings.corrected);
  const double found_deg = stage.model().findings.corrected->degrees() - computed_deg - 8.0;
  CHECK(std::fabs(fold_half_circle_deg(found_deg)) < 4.0);
  CHECK(stage.taps() - before == readings + 3);
  CHECK(readings <= 16);
}

TEST_CASE("a finger that slides over the plot reads where it lifts") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("begin sweep");
  stage.drag(height_of(stage, 20.0), height_of(stage, 75.0), milliseconds(600));
  REQUIRE(stage.model().peak.sweep->readings.size() == 1);
  CHECK(*stage.model().peak.sweep->readings[0].value == Approx(75.0).margin(2.0));
  stage.tap("turn to");
  stage.tap_at(height_of(stage, 30.0));
  CHECK(stage.model().peak.sweep->readings.size() == 1);
}

TEST_CASE("pack up and drive off: 2 taps to an antenna that counts as down") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("raise");
  stage.confirm();
  REQUIRE(stage.model().safety.antenna == safety::Antenna::Raised);
  const int before = stage.taps();
  stage.tap("lower");
  stage.confirm();
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  CHECK(stage.taps() - before == 2);
}

TEST_CASE("a heading of the turn plan stays after a restart, and another station ends it") {
  test::TemporaryFolder folder;
  std::optional<Bearing<True>> turn;
  {
    Stage stage(test::kTablet, folder.path());
    stage.tap("place Stations");
    stage.tap("turn 0");
    turn = stage.model().stop.turn;
    REQUIRE(turn);
    stage.wait(milliseconds(3000));
  }
  Stage stage(test::kTablet, folder.path());
  REQUIRE(stage.model().stop.turn);
  CHECK(stage.model().stop.turn->degrees() == Approx(turn->degrees()));
  stage.set(act::SelectStation{key_of(stage.model().stations->rows[3].station)});
  CHECK_FALSE(stage.model().stop.turn);
  stage.set(act::TakeBack{});
  REQUIRE(stage.model().stop.turn);
  CHECK(stage.model().stop.turn->degrees() == Approx(turn->degrees()));
}

TEST_CASE("a finger held on a word of the trade explains it, but not over a safety prompt") {
  Stage stage;
  stage.tap("place Aim");
  const auto word_px = [&](const char* word) {
    for (const ui::DrawnText& text : stage.drawn()) {
      if (text.text.find(word) == std::string::npos) continue;
      const float scale = stage.metrics().px_per_unit;
      return touch::Point{text.rect.center().x * scale, text.rect.center().y * scale};
    }
    FAIL(word << " is not on the screen");
    return touch::Point{};
  };
  const auto hold = [&](touch::Point place) {
    stage.finger(SDL_FINGERDOWN, place);
    stage.wait(milliseconds(800));
    stage.finger(SDL_FINGERUP, place);
    stage.settle();
  };
  hold(word_px("magnetic"));
  CHECK(stage.model().explained == "magnetic");
  CHECK(stage.shows("Magnetic"));
  stage.tap("close explanation");
  CHECK(stage.model().explained.empty());
  CHECK(stage.model().sheet == Sheet::None);
  stage.tap("raise");
  for (const ui::DrawnText& text : stage.drawn()) {
    const float scale = stage.metrics().px_per_unit;
    hold({text.rect.center().x * scale, text.rect.center().y * scale});
    REQUIRE(stage.model().explained.empty());
    if (stage.model().safety.asking != Asking::Raise) break;
  }
}

TEST_CASE("letters grow at a touch as far as the screen has room, and back") {
  Stage stage(test::kLargeTablet);
  const float usual = stage.metrics().px_per_unit;
  stage.set(act::OpenSheet{Sheet::Settings});
  stage.tap("text_size larger");
  CHECK(stage.metrics().px_per_unit == Approx(1.3 * usual));
  CHECK(stage.model().settings.text_size == TextSize::Larger);
  stage.tap("text_size usual");
  CHECK(stage.metrics().px_per_unit == usual);
}
