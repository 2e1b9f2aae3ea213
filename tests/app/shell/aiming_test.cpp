#include "app/aim/aimed.hpp"
#include "app/session/questions.hpp"
#include "app/session/turn_tone.hpp"
#include "app/words/units.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Aiming, the sweep and the logbook through finger events, in the practice area.
using namespace mastwise;
using test::Stage;

namespace {

std::string button_of(const std::string& label, const Station& station) {
  return label + " " + station.call_sign + " " + station.id;
}

const Station& listed(const Stage& stage, std::size_t row) {
  REQUIRE(stage.model().stations);
  REQUIRE(row < stage.model().stations->rows.size());
  return stage.model().stations->rows[row].station;
}

void type_into(Stage& stage, Field field, double number) {
  stage.set(act::OpenField{field});
  stage.set(act::KeypadType{fmt::format("{}", number)});
  stage.set(act::KeypadAccept{});
}

// Points the heading sensor this far from the target; positive: the target is to the right.
void face_off_target(Stage& stage, double off_deg) {
  const double target_deg = stage.model().findings.card->bearing_true.degrees();
  stage.receive(
      test::sentence(fmt::format("HEHDT,{:.2f},T", fold_circle_deg(target_deg - off_deg))));
  stage.round();
}

}  // namespace

TEST_CASE("a touch on a plan step aims at its station and closes the plan") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("plan");
  CHECK(stage.model().sheet == Sheet::Plan);
  stage.tap("plan for all");
  REQUIRE(stage.model().stations->plan);
  REQUIRE_FALSE(stage.model().stations->plan->steps.empty());
  const StationKey wanted = stage.model().stations->plan->steps.front().brings.front().key;
  stage.tap("aim step 1");
  CHECK(stage.model().sheet == Sheet::None);
  CHECK(stage.model().place == Place::Aim);
  CHECK(key_of(*stage.model().stop.target) == wanted);
  CHECK(stage.model().findings.slack);
}

TEST_CASE("a pinned station is in the plan, and Undo unpins it") {
  Stage stage;
  stage.tap("place Stations");
  const Station station = listed(stage, 1);
  stage.tap(button_of("pin", station));
  CHECK(is_pinned(stage.model().stop, key_of(station)));
  const auto& steps = stage.model().stations->plan->steps;
  REQUIRE(steps.size() == 1);
  CHECK(steps.front().brings.front().key == key_of(station));
  stage.tap("take back");
  CHECK_FALSE(is_pinned(stage.model().stop, key_of(station)));
}

TEST_CASE("a true bearing alone cannot be chosen as a way to point") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("ways");
  REQUIRE(stage.targets().find("way true") != nullptr);
  CHECK_FALSE(stage.targets().find("way true")->enabled);
  const double before_deg = stage.model().findings.heading_error_deg;
  stage.set(act::ChoosePointing{PointingMethod::rig_sides});
  CHECK(stage.model().findings.heading_error_deg > before_deg);
}

TEST_CASE("the tone rises to the target, is continuous there, and is silent elsewhere") {
  Stage stage;
  stage.tap("place Aim");
  face_off_target(stage, 100.0);
  CHECK_FALSE(tone_of(stage.model()));  // not on the roof yet
  stage.tap("roof");
  stage.confirm();
  REQUIRE(stage.model().safety.roof);
  const double doubt_deg = aimed(stage.model())->doubt_deg;
  const double good_deg = stage.model().findings.slack->left_deg - doubt_deg;
  REQUIRE(good_deg > 2.0);
  double before_hz = 0.0, before_pulses = 0.0;
  for (const double off_deg : {150.0, 80.0, good_deg + 1.0}) {
    face_off_target(stage, off_deg);
    const auto tone = tone_of(stage.model());
    REQUIRE(tone);
    CHECK(tone->frequency_hz > before_hz);
    CHECK(tone->pulses_per_s > before_pulses);
    before_hz = tone->frequency_hz;
    before_pulses = tone->pulses_per_s;
  }
  CHECK(stage.shows("Turn right"));
  face_off_target(stage, good_deg - 1.0);
  REQUIRE(tone_of(stage.model()));
  CHECK(tone_of(stage.model())->pulses_per_s == 0.0);
  CHECK(stage.shows("Hold there"));
  stage.tap("tone off");
  CHECK_FALSE(tone_of(stage.model()));
}

TEST_CASE("a sweep by touch finds the highest reading and corrects this stop only") {
  Stage stage;
  const auto near_stop = Position::at_deg(42.5, -118.5);
  stage.tap("place Peak");
  stage.tap("begin sweep");
  const double computed_deg = stage.model().findings.card->bearing_magnetic.degrees();
  // A compass that reads 8 degrees too much; a meter of one point for each decibel of the pattern.
  const double truth_deg = computed_deg + 8.0;
  const auto pattern =
      gear_of(stage.model().settings.gear).antenna.in(stage.model().peak.sweep->band).pattern;
  const auto read_at = [&](double at_deg) {
    const double here_deg = stage.model().peak.sweep->heading.degrees();
    stage.set(act::TurnSweep{computed_deg + at_deg - here_deg});
    const double off_deg = computed_deg + at_deg - truth_deg;
    const double value = 70.0 + pattern.relative_db(Turn::clockwise_deg(off_deg));
    stage.set(act::SetMeter{value - stage.model().peak.sweep->value});
    stage.tap("read");
  };
  for (const double at_deg : {-40.0, -20.0, 0.0, 20.0, 40.0, 60.0}) read_at(at_deg);
  // Six readings within the wide lobe say little: 81 degrees to either side correct nothing.
  CHECK(stage.model().peak.sweep->fit->error95_deg > 60.0);
  stage.tap("keep sweep");
  CHECK(stage.shows_within("saved as readings"));
  CHECK(stage.model().stop.strong_stations.empty());
  CHECK_FALSE(stage.model().findings.corrected);
  for (const double at_deg : {-110.0, -90.0, -70.0, 80.0, 100.0, 120.0}) read_at(at_deg);
  REQUIRE(stage.model().peak.sweep->fit);
  const double off_deg =
      fold_half_circle_deg(stage.model().peak.sweep->fit->peak.degrees() - truth_deg);
  CHECK(std::fabs(off_deg) <= stage.model().peak.sweep->fit->error95_deg);
  stage.tap("keep sweep");
  REQUIRE(stage.model().findings.corrected);
  CHECK(stage.model().findings.corrected->degrees() ==
        Approx(fold_circle_deg(stage.model().peak.sweep->fit->peak.degrees())).margin(0.1));
  // A correction is one fact: the dial's number, every way by compass and the list agree.
  const auto corrected = *stage.model().findings.corrected;
  CHECK(stage.model().findings.card->bearing_magnetic.degrees() == Approx(corrected.degrees()));
  const std::string number = words::whole_degrees(corrected.degrees());
  stage.tap("place Aim");
  CHECK(stage.shows(number));
  CHECK(stage.shows_within("corrected"));
  stage.set(act::OpenSheet{Sheet::Ways});
  stage.settle();
  for (const float to : {140.0f, 340.0f}) stage.drag({640, 740}, {640, to}, milliseconds(400));
  CHECK(stage.shows_within(fmt::format("reads {:.0f}", corrected.degrees())));
  stage.set(act::OpenSheet{Sheet::Plan});
  const Bearing<True> planned = stage.model().stations->plan->steps.front().bearing;
  const Turn beside = planned - stage.model().findings.card->bearing_true;
  CHECK(stage.shows(words::whole_degrees((corrected + beside).degrees())));
  stage.tap("close sheet");
  stage.set(act::GoToRoof{});
  stage.confirm();
  CHECK_FALSE(stage.shows(number));
  stage.set(act::LeaveRoof{});
  // Taking it back takes all of it back.
  const Stop peaked = stage.model().stop;
  stage.set(act::ForgetCorrection{});
  CHECK(fold_half_circle_deg(stage.model().findings.card->bearing_magnetic.degrees() -
                             computed_deg) == Approx(0.0).margin(0.01));
  stage.set(act::SetStop{peaked});

  // Ten kilometers away it no longer corrects the compass.
  Stop moved = stage.model().stop;
  moved.by_hand = *Position::at_deg(near_stop->latitude_deg() + 0.1, near_stop->longitude_deg());
  stage.set(act::SetStop{moved});
  CHECK_FALSE(stage.model().findings.corrected);
}

TEST_CASE("a touch saves an outcome, the next replaces it, and Undo restores it") {
  Stage stage;
  stage.tap("place Logbook");
  const Station station = stage.model().logbook.tried.rows.front().station.station;
  stage.tap(button_of("saw", station) + " steady");
  REQUIRE(stage.model().logbook.outcomes_here.size() == 1);
  stage.tap(button_of("saw", station) + " nothing");
  REQUIRE(stage.model().logbook.outcomes_here.size() == 1);
  CHECK(stage.model().logbook.outcomes_here.front().outcome == Outcome::nothing);
  stage.tap("take back");
  REQUIRE(stage.model().logbook.outcomes_here.size() == 1);
  CHECK(stage.model().logbook.outcomes_here.front().outcome == Outcome::steady);
}

TEST_CASE("places ahead compare with this stop, and a new fix does not survey it again") {
  Stage stage;
  stage.tap("place Ahead");
  REQUIRE(stage.model().stations->ahead);
  REQUIRE(stage.model().stations->ahead->places.size() == 1);
  CHECK(stage.model().stations->ahead->places.front().here);
  stage.tap("add place");
  stage.tap_keys("42.6,-118.6");
  stage.tap("key Use it");
  REQUIRE(stage.model().stations->ahead->places.size() == 2);
  CHECK(stage.model().stations->question.ahead.size() == 1);
  stage.tap("remove place");
  CHECK(stage.model().stations->ahead->places.size() == 1);
}

// Worked by hand: edges 25 degrees left and 35 right of the computed heading have their middle 5
// degrees to the right of it.
TEST_CASE("a sweep finds the middle between two edges and compares the readings with it") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("meter shows none");
  stage.tap("begin sweep");
  CHECK_FALSE(stage.targets().find("keep sweep")->enabled);
  const double computed_deg = stage.model().peak.sweep->heading.degrees();
  stage.set(act::TurnSweep{-25.0});
  stage.tap("left edge");
  CHECK_FALSE(stage.model().peak.sweep->between_edges);
  stage.set(act::TurnSweep{60.0});
  stage.tap("right edge");
  REQUIRE(stage.model().peak.sweep->between_edges);
  const double middle_deg = stage.model().peak.sweep->between_edges->middle.degrees();
  CHECK(fold_half_circle_deg(middle_deg - computed_deg) == Approx(5.0));
  CHECK(stage.shows_within("In the middle between the two headings"));
  stage.tap("keep sweep");
  REQUIRE(stage.model().findings.corrected);
  CHECK(stage.model().findings.corrected->degrees() == Approx(middle_deg).margin(0.1));

  // Readings that peak 55 degrees away contradict the edges.
  stage.tap("meter scale");
  const auto pattern =
      gear_of(stage.model().settings.gear).antenna.in(stage.model().peak.sweep->band).pattern;
  for (const double off_deg : {-30.0, -10.0, 0.0, 10.0, 30.0}) {
    const double wanted_deg = middle_deg + 55.0 + off_deg;
    stage.set(act::TurnSweep{wanted_deg - stage.model().peak.sweep->heading.degrees()});
    const double value = 70.0 + pattern.relative_db(Turn::clockwise_deg(off_deg));
    stage.set(act::SetMeter{value - stage.model().peak.sweep->value});
    stage.tap("read");
  }
  REQUIRE(stage.model().peak.sweep->fit);
  REQUIRE(stage.model().peak.sweep->edges_agree);
  CHECK(stage.model().peak.sweep->edges_agree->verdict == Verdict::in_doubt);
}

// The handle reads 0 at the nose and turns clockwise in plan; the station is found 6 degrees on.
TEST_CASE("a station peaked on by handle corrects the handle's other readings") {
  Stage stage;
  const double nose_deg = stage.model().findings.nose->nose().degrees();
  const double target_deg = stage.model().findings.card->bearing_true.degrees();
  type_into(stage, Field::FirstReading_deg, 0.0);
  type_into(stage, Field::FirstAngle_deg, 0.0);
  type_into(stage, Field::SecondReading_deg, 90.0);
  type_into(stage, Field::SecondAngle_deg, 90.0);
  stage.set(act::KeepHandle{});
  REQUIRE(stage.model().settings.handle);
  stage.tap("place Peak");
  stage.tap("turn by handle");
  stage.tap("begin sweep");
  const double on_handle_deg = fold_circle_deg(target_deg - nose_deg + 6.0);
  stage.tap("meter none");
  const auto turn_to = [&](double reading_deg) {
    stage.set(act::TurnSweep{reading_deg - stage.model().peak.sweep->heading.degrees()});
  };
  turn_to(on_handle_deg - 30.0);
  stage.tap("left edge");
  turn_to(on_handle_deg + 30.0);
  stage.tap("right edge");
  stage.tap("keep sweep");
  const Findings& found = stage.model().findings;
  REQUIRE(found.handle_check);
  CHECK(found.handle_check->off.size_deg() == Approx(6.0).margin(0.5));
  REQUIRE(found.handle_corrected);
  CHECK(found.handle_corrected->dial_deg() == Approx(on_handle_deg).margin(0.5));
  CHECK_FALSE(found.compass_check);  // it does not check the compass
  // The handle's own sheet says the same number.
  stage.set(act::OpenSheet{Sheet::Handle});
  CHECK(stage.shows(
      fmt::format("Station at {:.0f} on the handle", found.handle_corrected->dial_deg())));
  stage.set(act::OpenSheet{Sheet::None});
  stage.tap("take back");
  stage.set(act::OpenSheet{Sheet::Handle});
  CHECK(stage.shows(
      fmt::format("Station at {:.0f} on the handle", fold_circle_deg(target_deg - nose_deg))));
}

TEST_CASE("the compass checks compare two ways to find one direction") {
  Stage stage;
  stage.set(act::OpenSheet{Sheet::Checks});
  type_into(stage, Field::OneWay_deg, 100.0);
  type_into(stage, Field::OneWayError_deg, 3.0);
  type_into(stage, Field::OtherWay_deg, 103.0);
  CHECK(stage.model().aim.agreement.lines.empty());
  // By hand: 3 degrees apart, root of 3^2 + 4^2 is 5.
  type_into(stage, Field::OtherWayError_deg, 4.0);
  REQUIRE(stage.model().aim.agreement.lines.size() == 1);
  CHECK(stage.model().aim.agreement.lines.front().find("agree") != std::string::npos);
  type_into(stage, Field::OtherWay_deg, 120.0);
  CHECK(stage.model().aim.agreement.lines.front().find("wrong") != std::string::npos);
}

TEST_CASE("a touch raises the plan's floor, and the plan lists all stations it then leaves out") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("plan");
  stage.tap("plan for all");
  const auto brought = [&] {
    std::set<std::string> stations;  // several steps may bring one
    for (const PlanStep& step : stage.model().stations->plan->steps) {
      for (const PlanStation& each : step.brings) stations.insert(each.title);
    }
    return stations.size();
  };
  const std::size_t at_70 = brought();
  stage.tap("plan floor");
  CHECK(stage.model().stations->question.plan_floor_percent == 90.0);
  for (const PlanStep& step : stage.model().stations->plan->steps) {
    for (const PlanStation& station : step.brings) CHECK(station.chance_percent >= 90.0);
  }
  CHECK(brought() <= at_70);
}

TEST_CASE("ticks of the receiver's list count only at their stop") {
  Stage stage;
  stage.set(act::ScanStep{0});
  REQUIRE_FALSE(stage.model().plan.scan.lines.empty());
  const StationKey key = stage.model().plan.scan.lines.front().key;
  stage.tap("tick " + key.id + " found");
  CHECK(stage.model().plan.scan.lines.front().tick == ScanTick::found);
  const ScanChoice by_hand = stage.model().plan.scan.which;
  stage.tap("channel entry off");
  CHECK(stage.model().plan.scan.which != by_hand);
  Stop moved = stage.model().stop;
  moved.by_hand =
      *Position::at_deg(moved.by_hand->latitude_deg() + 0.01, moved.by_hand->longitude_deg());
  stage.set(act::SetStop{moved});
  REQUIRE_FALSE(stage.model().plan.scan.lines.empty());
  for (const ScanLine& line : stage.model().plan.scan.lines) {
    CHECK(line.tick == ScanTick::not_tried);
  }
}

TEST_CASE("a ticked network of a station counts from then on") {
  Stage stage;
  const Station target = *stage.model().stop.target;
  stage.tap("place Aim");
  stage.set(act::OpenSheet{Sheet::Path});
  stage.tap("carries");
  const auto& around = stage.model().list.networks_around;
  const auto other = std::find_if(around.begin(), around.end(), [&](const std::string& network) {
    return !carries(target, network);
  });
  REQUIRE(other != around.end());
  const std::string network = *other;
  const auto carried = [&] {
    const StationRow* row = find_row(*stage.model().stations, key_of(target));
    REQUIRE(row != nullptr);
    return carries(row->station, network);
  };
  CHECK_FALSE(carried());
  stage.tap("carries " + network);
  CHECK(carried());
  // Networks from the table stay.
  CHECK_FALSE(stage.targets().find("carries " + networks_of(target).front())->enabled);
  stage.tap("carries " + network);
  CHECK_FALSE(carried());
}

TEST_CASE("the logbook continues the stop after a restart") {
  test::TemporaryFolder folder;
  const Stop stop{.source = PositionSource::ByHand, .by_hand = *Position::at_deg(42.5, -118.5)};
  const auto write_down = [&](Stage& stage, const Stop& at) {
    stage.set(act::SetStop{at});
    Station station = stage.practice_stop().target.value();
    StationsAnswer answer{.question = stations_question(stage.model())};
    answer.rows.push_back({.station = station});
    stage.set(act::StationsFound{answer});
    stage.set(act::LogOutcome{key_of(station), Outcome::steady});
  };
  {
    Stage stage(test::kTablet, folder.path());
    write_down(stage, stop);
    REQUIRE(stage.model().logbook.log.stops.size() == 1);
  }
  Stage stage(test::kTablet, folder.path());
  REQUIRE(stage.model().logbook.log.stops.size() == 1);
  write_down(stage, stop);
  CHECK(stage.model().logbook.log.stops.size() == 1);
  Stop elsewhere = stop;
  elsewhere.by_hand = *Position::at_deg(42.6, -118.5);
  write_down(stage, elsewhere);
  CHECK(stage.model().logbook.log.stops.size() == 2);
}
