#include "app/words/units.hpp"
#include "core/sky/sun.hpp"
#include "tests/support/stage.hpp"

#include <cmath>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Where a person stands with the compass, and how its checks count, in the practice area.
using namespace mastwise;
using test::Stage;

namespace {

void type_reading(Stage& stage, Field field, double number) {
  stage.set(act::OpenField{field});
  stage.set(act::KeypadType{fmt::format("{:.1f}", number)});
  stage.set(act::KeypadAccept{});
}

void type_nose(Stage& stage, const std::string& degrees) {
  stage.set(act::OpenKeypad{KeypadPurpose::Nose});
  stage.set(act::KeypadType{degrees});
  stage.set(act::KeypadAccept{});
}

double deviation_deg(const Stage& stage) {
  for (const ErrorLine& line : stage.model().findings.heading_errors) {
    if (line.kind == ErrorKind::deviation) return line.sigma_deg;
  }
  return NAN;
}

// About noon at the practice stop, after the day of the build: the sun is up.
void make_it_day(Stage& stage) {
  using namespace std::chrono;
  stage.set_clock(UtcTime(sys_days{year{2027} / 6 / 15}) + hours(20));
  stage.wait(milliseconds(1000));
}

}  // namespace

TEST_CASE(
    "the place to stand decides the error of the compass, which beside the rig says nothing") {
  Stage stage;
  stage.tap("place Aim");
  const std::string number = words::whole_degrees(stage.model().findings.card->bearing_magnetic);
  CHECK(stage.shows(number));
  const double clear_deg = stage.model().findings.heading_error_deg;
  stage.tap("ways");
  stage.tap("stand table");
  CHECK(stage.model().stop.standing == Standing::picnic_table);
  CHECK(stage.model().findings.heading_error_deg > clear_deg);
  CHECK(deviation_deg(stage) ==
        Approx(deviation_sigma_deg(Standing::picnic_table,
                                   stage.model().findings.field->horizontal_nt)));
  stage.tap("stand beside");
  CHECK(stage.shows_within("No compass here"));
  for (const Saying& way : stage.model().aim.ways) {
    CHECK(way.kind != SayingKind::magnetic_bearing);
    CHECK(way.kind != SayingKind::set_compass);
  }
  stage.set(act::OpenSheet{Sheet::None});
  stage.settle();
  CHECK(stage.shows_within("No compass"));
  CHECK_FALSE(stage.shows(number));
  stage.set(act::StandAt{Standing::few_steps_off});
  stage.settle();
  CHECK(stage.shows(number));
  stage.tap("take back");
  CHECK(stage.model().stop.standing == Standing::beside_rig);
}

TEST_CASE("until somebody says where the compass is read its error is the usual one") {
  Stage stage;
  Stop stop = stage.model().stop;
  stop.standing.reset();
  stage.set(act::SetStop{stop});
  stage.tap("place Aim");
  CHECK(stage.model().findings.heading_error_deg == reception::kUsualHeadingError_deg);
  CHECK(stage.shows(words::whole_degrees(stage.model().findings.card->bearing_magnetic)));
}

TEST_CASE("a typed rig heading is as sure as the compass was where it was read") {
  Stage stage;
  type_nose(stage, "118");
  const Nose clear = *stage.model().stop.nose;
  CHECK(clear.read_at == Standing::well_clear);
  CHECK(nose_sigma_deg(stage.model(), clear) < 4.0);
  stage.set(act::OpenSheet{Sheet::Nose});
  stage.settle();
  stage.tap("read beside");
  CHECK(nose_sigma_deg(stage.model(), *stage.model().stop.nose) > 60.0);
  // Walking off to aim changes nothing about a reading taken beside the rig.
  stage.set(act::StandAt{Standing::well_clear});
  CHECK(stage.model().stop.nose->read_at == Standing::beside_rig);
  Nose by_drive = clear;
  by_drive.origin = Nose::Origin::LastCourse;
  by_drive.sigma_deg = 1.5;
  CHECK(nose_sigma_deg(stage.model(), by_drive) == 1.5);
}

TEST_CASE("a compass that agrees with the shadow is trusted more, and the trust grows old") {
  Stage stage;
  make_it_day(stage);
  stage.set(act::StandAt{Standing::picnic_table});
  const double unchecked_deg = deviation_deg(stage);
  stage.set(act::OpenSheet{Sheet::Checks});
  stage.settle();
  const auto shadow = sky::plumb_shadow(*stage.model().findings.position, moment_of(stage.model()));
  REQUIRE(shadow.direction);
  const auto reads = to_magnetic(*shadow.direction, stage.model().findings.field->declination);
  type_reading(stage, Field::CompassRead_deg, reads.degrees() + 0.5);
  stage.settle();
  stage.set(act::CheckCompass{CompassCheckBy::sun});
  stage.settle();
  REQUIRE(stage.model().stop.sights.size() == 1);
  CHECK(stage.model().findings.compass_agrees);
  CHECK_FALSE(stage.model().findings.corrected);
  CHECK(stage.shows_within("the compass agrees with the map"));
  const double fresh_deg = deviation_deg(stage);
  CHECK(fresh_deg < 0.6 * unchecked_deg);
  Stop later = stage.model().stop;
  later.sights[0].at -= std::chrono::hours(12);
  stage.set(act::SetStop{later});
  const double old_deg = deviation_deg(stage);
  CHECK(old_deg > fresh_deg);
  CHECK(old_deg < unchecked_deg);
  // Elsewhere, by the rig or beyond the stop, it says nothing.
  later.standing = Standing::few_steps_off;
  stage.set(act::SetStop{later});
  CHECK_FALSE(stage.model().findings.compass_check);
}

TEST_CASE("a compass that differs from the shadow is corrected, and beyond the model it is told") {
  Stage stage;
  make_it_day(stage);
  stage.set(act::OpenSheet{Sheet::Checks});
  stage.settle();
  const auto before = stage.model().findings.card->bearing_magnetic;
  const auto shadow = sky::plumb_shadow(*stage.model().findings.position, moment_of(stage.model()));
  const auto reads = to_magnetic(*shadow.direction, stage.model().findings.field->declination);
  type_reading(stage, Field::CompassRead_deg, reads.degrees() + 12.0);
  stage.settle();
  stage.set(act::CheckCompass{CompassCheckBy::sun});
  stage.settle();
  REQUIRE(stage.model().findings.corrected);
  const auto after = stage.model().findings.card->bearing_magnetic;
  CHECK((after - before).clockwise_deg() == Approx(12.0).margin(0.2));
  // 12 degrees are over three times the 3.2 of the reading, well clear of the rig.
  CHECK(stage.model().aim.anomaly);
  CHECK(stage.shows_within("magnetic model's error"));
  stage.set(act::StandAt{Standing::picnic_table});
  CHECK_FALSE(stage.model().aim.anomaly);
  stage.set(act::ForgetCorrection{});
  CHECK_FALSE(stage.model().findings.compass_check);
}

TEST_CASE("reciprocal bearings count for what they prove at this stop") {
  Stage stage;
  stage.set(act::StandAt{Standing::picnic_table});
  const double unchecked_deg = deviation_deg(stage);
  type_reading(stage, Field::ThereBearing_deg, 40.0);
  type_reading(stage, Field::BackBearing_deg, 221.0);
  stage.set(act::KeepReciprocal{});
  const double alike_deg = deviation_deg(stage);
  CHECK(alike_deg < unchecked_deg);
  CHECK(alike_deg > unchecked_deg / std::sqrt(2.0));
  type_reading(stage, Field::BackBearing_deg, 250.0);
  stage.set(act::KeepReciprocal{});
  CHECK(deviation_deg(stage) == Approx(30.0));
}

TEST_CASE("an adjustable compass keeps its setting, and another place asks for its ring") {
  Stage stage;
  CHECK_FALSE(stage.model().aim.ring_turn);
  stage.set(act::CompassIsSet{});
  REQUIRE(stage.model().settings.compass_set);
  const double here_deg = stage.model().findings.field->declination.east_deg();
  CHECK(stage.model().settings.compass_set->east_deg == Approx(here_deg));
  CHECK_FALSE(stage.model().aim.ring_turn);
  Stop far = stage.model().stop;
  far.by_hand = *Position::at_deg(44.5, -71.5);  // some 14 W
  stage.set(act::SetStop{far});
  REQUIRE(stage.model().aim.ring_turn);
  const double there_deg = stage.model().findings.field->declination.east_deg();
  CHECK(stage.model().aim.ring_turn->clockwise_deg() == Approx(there_deg - here_deg));
  stage.set(act::ChoosePointing{PointingMethod::set_compass});
  stage.tap("place Aim");
  CHECK(stage.shows_within("turn its ring"));
}
