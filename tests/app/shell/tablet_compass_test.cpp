#include "app/aim/actions.hpp"
#include "app/shared/settings_json.hpp"
#include "app/shell/tablet_line.hpp"
#include "platform/clock.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/sensor_tree.hpp"
#include "tests/support/tablet_in_hand.hpp"

#include <chrono>
#include <cmath>
#include <thread>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// A tablet's own sensors, from the kernel's folders to the number on the dial.
using namespace mastwise;
using namespace std::chrono_literals;
using motion::TabletState;
using test::Dice;
using test::Stage;

namespace {

// Writes the readings as a driver would: counts of a tenth of a milligauss and of 0.01 m/s^2.
void write_sensors(test::SensorTree& tree, const test::HeldTablet::Seen& seen) {
  const auto write = [&](const char* file, double value) {
    tree.write(file, fmt::format("{:.0f}", value));
  };
  write("iio:device0/in_accel_x_raw", 100.0 * seen.acceleration_mps2.x);
  write("iio:device0/in_accel_y_raw", 100.0 * seen.acceleration_mps2.y);
  write("iio:device0/in_accel_z_raw", 100.0 * seen.acceleration_mps2.z);
  write("iio:device1/in_magn_x_raw", 100.0 * seen.field_ut.x);
  write("iio:device1/in_magn_y_raw", 100.0 * seen.field_ut.y);
  write("iio:device1/in_magn_z_raw", 100.0 * seen.field_ut.z);
}

void learn(Stage& stage) {
  stage.tap("place Aim");
  stage.tap("ways");
  stage.tap("tablet");
  REQUIRE(stage.model().sheet == Sheet::Tablet);
  test::hold_tablet(stage, 1.0, {});
}

}  // namespace

TEST_CASE("a tablet learns its iron, then the dial follows the person who holds it") {
  Stage stage;
  stage.set(act::StandAt{Standing::well_clear});
  learn(stage);
  CHECK_FALSE(stage.model().settings.tablet_points.empty());
  CHECK(stage.model().findings.tablet.state == TabletState::holds);
  CHECK_FALSE(stage.model().findings.facing);
  const double before_deg = stage.model().findings.heading_error_deg;
  stage.tap("use tablet");
  test::hold_tablet(stage, 0.0, {}, 75.0);
  const Findings& found = stage.model().findings;
  REQUIRE(found.facing);
  CHECK(found.facing_by_tablet);
  const double declination_deg = found.field->declination.east_deg();
  CHECK(std::fabs(fold_half_circle_deg(found.facing->degrees() - 75.0 - declination_deg)) < 3.0);
  CHECK(found.turn);
  // 2 degrees of the hand, 1.3 of its level, 1 of the sight, less than a baseplate compass.
  CHECK(found.heading_error_deg < before_deg);
  CHECK(found.heading_error_deg >= 2.5);
  CHECK(read_settings(settings_text(stage.model().settings)).settings.tablet_points ==
        stage.model().settings.tablet_points);
  // It ages.
  stage.wait(3s);
  CHECK_FALSE(stage.model().findings.facing);
}

TEST_CASE("a tablet beside steel, or where nobody has said, points nowhere") {
  Stage stage;
  stage.set(act::ChoosePointing{PointingMethod::tablet_magnetometer});
  stage.set(act::StandAt{Standing::well_clear});
  learn(stage);
  REQUIRE(stage.model().findings.facing);
  SECTION("steel") {
    test::hold_tablet(stage, 0.0, {0.0, 9.0, -20.0});
    CHECK(stage.model().findings.tablet.state == TabletState::strength_off);
    CHECK(stage.shows_within("Walk away from steel"));
    CHECK_FALSE(stage.model().findings.facing);
  }
  SECTION("beside the rig, whatever the field says") {
    for (const Standing standing : {Standing::beside_rig, Standing::on_roof}) {
      stage.set(act::StandAt{standing});
      CHECK(stage.model().findings.tablet.heading);
      CHECK_FALSE(stage.model().findings.facing);
      stage.settle();
      CHECK(stage.shows_within("Not used there"));
    }
  }
  SECTION("nobody has said where") {
    Stop stop = stage.model().stop;
    stop.standing.reset();
    stage.set(act::SetStop{stop});
    CHECK_FALSE(stage.model().findings.facing);
  }
  SECTION("a heading sensor comes first") {
    stage.receive(test::sentence("HEHDT,200.0,T"));
    REQUIRE(stage.model().findings.facing);
    CHECK_FALSE(stage.model().findings.facing_by_tablet);
  }
}

TEST_CASE("what a tablet has learned can be deleted and brought back") {
  Stage stage;
  learn(stage);
  const auto points = stage.model().settings.tablet_points;
  REQUIRE_FALSE(points.empty());
  stage.tap("forget tablet");
  CHECK(stage.model().settings.tablet_points.empty());
  CHECK(stage.model().findings.tablet.state == TabletState::learning);
  stage.set(act::TakeBack{});
  CHECK(stage.model().settings.tablet_points == points);
}

TEST_CASE("nothing is learned but on its own sheet") {
  Stage stage;
  test::hold_tablet(stage, 1.0, {});
  CHECK(stage.model().settings.tablet_points.empty());
  CHECK(stage.model().tablet_iron.seen.empty());
}

TEST_CASE("the sensors are read only while something needs them") {
  using shell::TabletNeed;
  Stage stage;
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::nothing);
  learn(stage);
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::heading);
  stage.set(act::OpenSheet{Sheet::None});
  stage.set(act::Show{Place::Aim});
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::nothing);
  stage.set(act::ChoosePointing{PointingMethod::tablet_magnetometer});
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::heading);
  stage.set(act::Show{Place::Here});
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::nothing);
  stage.set(act::Show{Place::Aim});
  stage.set(act::ChoosePointing{PointingMethod::baseplate_compass});
  stage.settle();
  stage.tap("raise");
  stage.confirm();
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::motion);
}

TEST_CASE("the kernel's folders lead through the real reader to the number on the dial") {
  Stage stage;
  stage.set(act::StandAt{Standing::well_clear});
  learn(stage);
  stage.set(act::ChoosePointing{PointingMethod::tablet_magnetometer});
  stage.set(act::OpenSheet{Sheet::None});
  stage.set(act::Show{Place::Aim});
  // The same tablet as in hold_tablet, without its noise.
  Dice dice(21);
  test::HeldTablet tablet = test::tablet_of(stage, dice);
  tablet.field_noise_ut = tablet.acceleration_noise_mps2 = 0.0;
  test::SensorTree tree;
  tree.add_accelerometer("iio:device0");
  tree.add_magnetometer("iio:device1");
  write_sensors(tree, tablet.seen({.faces_deg = 210.0, .tilt_deg = 70.0}, dice));
  shell::TabletLine line([] {}, tree.root());
  const auto until = [&](auto done) {
    for (int i = 0; i < 400 && !done(); ++i) {
      std::this_thread::sleep_for(25ms);
      stage.session().act(act::Tick{platform::monotonic_now(), platform::utc_now()});
      line.give_to(stage.session());
    }
    return done();
  };
  REQUIRE(until([&] {
    return stage.model().tablet_link.name == "invented-accel, invented-magn" &&
           stage.model().findings.facing_by_tablet;
  }));
  const Findings& found = stage.model().findings;
  const double magnetic_deg = found.facing->degrees() - found.field->declination.east_deg();
  CHECK(std::fabs(fold_half_circle_deg(magnetic_deg - 210.0)) < 2.5);
  tree.remove("iio:device1");
  CHECK(until([&] { return stage.model().tablet_link.state == Link::State::Lost; }));
  CHECK_FALSE(stage.model().findings.facing);
}
