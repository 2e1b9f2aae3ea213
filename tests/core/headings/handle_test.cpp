#include "core/headings/handle.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

HandlePoint point(double reading_deg, double angle_deg) {
  return {HandleReading::dial_deg(reading_deg), RigAngle::clockwise_deg(angle_deg)};
}

HandleArc arc(double from_deg, double to_deg) {
  return {HandleReading::dial_deg(from_deg), HandleReading::dial_deg(to_deg)};
}

Handle handle(HandlePoint first, HandlePoint second, HandleMechanism mechanism = {}) {
  auto made = Handle::calibrate(first, second, mechanism);
  REQUIRE(made);
  return *made;
}

// A dial marked clockwise as seen from below, with its 0 at the nose.
Handle clockwise_dial(HandleMechanism mechanism = {}) {
  return handle(point(0.0, 0.0), point(90.0, 270.0), mechanism);
}

}  // namespace

// Geometry: clockwise seen from below is counterclockwise in plan. Zero 20, readings 20 and 110
// with the antenna at the nose and square off the left side.
TEST_CASE("two points give the handle's zero and its sense", "[ways]") {
  const Handle below = handle(point(20.0, 0.0), point(110.0, 270.0));
  CHECK(below.sense() == DialSense::clockwise_from_below);
  CHECK(below.angle_at(HandleReading::dial_deg(20.0)).clockwise_deg() == Approx(0.0).margin(1e-9));
  CHECK(below.angle_at(HandleReading::dial_deg(65.0)).clockwise_deg() == Approx(315.0));
  CHECK(below.nearest(RigAngle::clockwise_deg(90.0)).reading.dial_deg() == Approx(290.0));

  const Handle above = handle(point(350.0, 10.0), point(80.0, 100.0));
  CHECK(above.sense() == DialSense::anticlockwise_from_below);
  CHECK(above.nearest(RigAngle::clockwise_deg(0.0)).reading.dial_deg() == Approx(340.0));
  CHECK(above.residual().size_deg() == Approx(0.0).margin(1e-9));
}

TEST_CASE("both points share a misfit, and it is reported", "[ways]") {
  const Handle uneven = handle(point(0.0, 0.0), point(90.0, 276.0));
  CHECK(uneven.residual().size_deg() == Approx(6.0));
  CHECK(uneven.sigma_deg() == Approx(3.0));
  CHECK(uneven.angle_at(HandleReading::dial_deg(0.0)).clockwise_deg() == Approx(3.0));
  CHECK(uneven.angle_at(HandleReading::dial_deg(90.0)).clockwise_deg() == Approx(273.0));
}

TEST_CASE("impossible points, or points without a sense, are refused with a remedy", "[ways]") {
  const auto misfit = Handle::calibrate(point(0.0, 0.0), point(90.0, 320.0));
  REQUIRE_FALSE(misfit);
  CHECK(misfit.error().what.find("40 degrees and the handle by 90 degrees") != std::string::npos);
  CHECK_FALSE(misfit.error().remedy.empty());
  // More play allows more.
  CHECK(Handle::calibrate(point(0.0, 0.0), point(90.0, 284.0), {.play_deg = 10.0}));
  CHECK_FALSE(Handle::calibrate(point(0.0, 0.0), point(90.0, 284.0), {.play_deg = 5.0}));

  CHECK_FALSE(Handle::calibrate(point(0.0, 0.0), point(180.0, 180.0)));
  CHECK_FALSE(Handle::calibrate(point(0.0, 0.0), point(10.0, 10.0)));
  CHECK_FALSE(Handle::calibrate(point(0.0, 0.0), point(20.0, 40.0)));
  CHECK_FALSE(Handle::calibrate(point(0.0, 0.0), point(90.0, 90.0), {.play_deg = -1.0}));
}

TEST_CASE("the turn never crosses a stop", "[ways]") {
  // A whole turn with its stop at the tail.
  const Handle stopped = clockwise_dial({.reach = arc(180.0, 180.0), .play_deg = 0.0});
  // From right rear (reading 200, rig angle 160) to left rear (reading 160, rig angle 200): the
  // short way of 40 degrees is barred.
  const auto turn = stopped.turn_to(RigAngle::clockwise_deg(200.0), HandleReading::dial_deg(200.0));
  REQUIRE(turn);
  CHECK(turn->reading.dial_deg() == Approx(160.0));
  CHECK(turn->clockwise_from_below_deg == Approx(320.0));
  const auto back = stopped.turn_to(RigAngle::clockwise_deg(160.0), HandleReading::dial_deg(160.0));
  REQUIRE(back);
  CHECK(back->clockwise_from_below_deg == Approx(-320.0));
  // Without a stop the short way is free.
  const auto free = clockwise_dial({.play_deg = 0.0})
                        .turn_to(RigAngle::clockwise_deg(200.0), HandleReading::dial_deg(200.0));
  REQUIRE(free);
  CHECK(free->clockwise_from_below_deg == Approx(-40.0));
  // The same on a dial of the other sense: from rig angle 200 to 160 the antenna must go round by
  // the nose, 320 degrees clockwise in plan, which is anticlockwise from below.
  const Handle other =
      handle(point(0.0, 0.0), point(90.0, 90.0), {.reach = arc(180.0, 180.0), .play_deg = 0.0});
  const auto round = other.turn_to(RigAngle::clockwise_deg(160.0), HandleReading::dial_deg(200.0));
  REQUIRE(round);
  CHECK(round->clockwise_from_below_deg == Approx(-320.0));
}

TEST_CASE("a direction in the dead arc is refused with the nearest one and its distance",
          "[ways]") {
  // Readings 30 up to 330: 60 degrees about the nose are dead.
  const Handle dead_nose = clockwise_dial({.reach = arc(30.0, 330.0)});
  const RigAngle wanted = RigAngle::clockwise_deg(350.0);  // reading 10
  const NearestAim nearest = dead_nose.nearest(wanted);
  CHECK(nearest.reading.dial_deg() == Approx(30.0));
  CHECK(nearest.angle.clockwise_deg() == Approx(330.0));
  CHECK(nearest.off.clockwise_deg() == Approx(-20.0));
  const auto refused = dead_nose.turn_to(wanted, HandleReading::dial_deg(100.0));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().remedy.find(
            "set the handle to 30, the nearest it can reach, 20 degrees left") !=
        std::string::npos);
  CHECK(dead_nose.nearest(RigAngle::clockwise_deg(10.0)).reading.dial_deg() == Approx(330.0));
  // The stop itself can be reached; a present reading in the dead arc cannot be.
  CHECK(dead_nose.turn_to(RigAngle::clockwise_deg(330.0), HandleReading::dial_deg(100.0)));
  CHECK_FALSE(dead_nose.turn_to(RigAngle::clockwise_deg(180.0), HandleReading::dial_deg(0.0)));
}

TEST_CASE("the handle always arrives from the same side to take up the play", "[ways]") {
  const Handle loose = clockwise_dial({.reach = arc(180.0, 180.0), .play_deg = 8.0});
  const auto clockwise =
      loose.turn_to(RigAngle::clockwise_deg(320.0), HandleReading::dial_deg(0.0));
  REQUIRE(clockwise);
  CHECK(clockwise->past_deg == 0.0);
  CHECK(clockwise->reading.dial_deg() == Approx(40.0));
  CHECK(clockwise->clockwise_from_below_deg == Approx(40.0));
  CHECK(clockwise->swings_toward == RigSide::left);
  const auto anti = loose.turn_to(RigAngle::clockwise_deg(40.0), HandleReading::dial_deg(0.0));
  REQUIRE(anti);
  CHECK(anti->past_deg == Approx(8.0));
  CHECK(anti->reading.dial_deg() == Approx(320.0));
  CHECK(anti->clockwise_from_below_deg == Approx(-40.0));
  CHECK(anti->swings_toward == RigSide::right);
  // Three degrees before the stop there is room for three only.
  const auto close = loose.turn_to(RigAngle::clockwise_deg(177.0), HandleReading::dial_deg(0.0));
  REQUIRE(close);
  CHECK(close->past_deg == Approx(3.0));
}

TEST_CASE("the stow turn leads to the stow reading, if known", "[ways]") {
  CHECK_FALSE(clockwise_dial().turn_to_stow(HandleReading::dial_deg(10.0)));
  const Handle stowing = clockwise_dial({.stow_reading = HandleReading::dial_deg(90.0)});
  const auto turn = stowing.turn_to_stow(HandleReading::dial_deg(10.0));
  REQUIRE(turn);
  CHECK(turn->clockwise_from_below_deg == Approx(80.0));
  const auto there = stowing.turn_to_stow(HandleReading::dial_deg(90.0));
  REQUIRE(there);
  CHECK(there->reading.dial_deg() == Approx(90.0));
  CHECK(there->clockwise_from_below_deg == 0.0);
}

TEST_CASE("the turn names the side that the antenna swings toward", "[ways]") {
  CHECK(swing_side(RigAngle::clockwise_deg(0.0), true) == RigSide::right);
  CHECK(swing_side(RigAngle::clockwise_deg(180.0), true) == RigSide::left);
  CHECK(swing_side(RigAngle::clockwise_deg(90.0), true) == RigSide::tail);
  CHECK(swing_side(RigAngle::clockwise_deg(90.0), false) == RigSide::nose);
}
