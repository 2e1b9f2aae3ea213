#include "core/nmea/straight_course.hpp"

#include "core/nmea/receiver.hpp"
#include "tests/support/reference.hpp"

#include <string>

#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using namespace std::chrono_literals;
using Catch::Matchers::WithinAbs;

namespace {

// A rig that drives, with a receiver that sends each second.
struct Drive {
  StraightCourseFinder finder;
  Position position = *Position::at_deg(44.435, -71.676);
  Monotonic now{};
  bool gives_course = true;

  void go(double course_deg, double speed_kmh, int seconds) {
    for (int i = 0; i < seconds; ++i) {
      double latitude_deg = 0.0;
      double longitude_deg = 0.0;
      GeographicLib::Geodesic::WGS84().Direct(position.latitude_deg(), position.longitude_deg(),
                                              course_deg, speed_kmh / 3.6, latitude_deg,
                                              longitude_deg);
      position = *Position::at_deg(latitude_deg, longitude_deg);
      now += 1s;
      const auto course = Bearing<True>::degrees(course_deg);
      finder.add(position, gives_course ? std::optional(course) : std::nullopt, speed_kmh / 3.6,
                 now);
    }
  }
  bool has_straight() const { return finder.last().has_value(); }
};

}  // namespace

TEST_CASE("a straight drive of 20 m above 5 km/h gives the course") {
  Drive drive;
  drive.go(359.5, 9.0, 4);
  drive.go(0.5, 9.0, 4);  // 2.5 m each: 17.5 m from the first to the eighth position
  CHECK_FALSE(drive.has_straight());
  drive.go(0.0, 9.0, 2);
  REQUIRE(drive.has_straight());
  CHECK_THAT((drive.finder.last()->course - Bearing<True>::degrees(0.0)).clockwise_deg(),
             WithinAbs(0.0, 1e-9));
  CHECK_THAT(drive.finder.last()->length_m, WithinAbs(22.5, 0.01));
  // 10 degrees at 1 km/h are 10/9 at 9 km/h.
  CHECK_THAT(drive.finder.last()->sigma_deg, WithinAbs(10.0 / 9.0, 1e-9));
  drive.go(0.0, 9.0, 100);
  CHECK(drive.finder.last()->length_m < 35.0);
}

TEST_CASE("a drive too slow, too short or without a course gives no course") {
  Drive slow;
  slow.go(90.0, 4.9, 60);
  CHECK_FALSE(slow.has_straight());
  Drive winding;
  for (int i = 0; i < 60; ++i) winding.go(i % 2 == 0 ? 80.0 : 100.0, 10.0, 3);
  CHECK_FALSE(winding.has_straight());
  Drive mute;
  mute.gives_course = false;
  mute.go(90.0, 20.0, 60);
  CHECK_FALSE(mute.has_straight());
}

TEST_CASE("the course stays while the rig stops, creeps along it or backs up") {
  Drive drive;
  drive.go(200.0, 10.0, 12);
  const auto straight = drive.finder.last();
  REQUIRE(straight);
  drive.go(202.0, 3.0, 10);
  drive.go(20.0, 3.0, 5);
  drive.go(200.0, 0.0, 600);
  CHECK(drive.finder.last() == straight);
  // The course of a parked receiver is noise: bu353s4.log goes up to 2.1 km/h.
  for (int i = 0; i < 100; ++i) {
    drive.finder.add(drive.position, Bearing<True>::degrees(i * 77.0), 0.3, drive.now += 1s);
  }
  CHECK(drive.finder.last() == straight);
}

TEST_CASE("a later turn drops the course") {
  Drive fast;
  fast.go(200.0, 10.0, 12);
  fast.go(210.0, 10.0, 1);
  CHECK_FALSE(fast.has_straight());
  fast.go(290.0, 10.0, 12);
  CHECK_THAT(fast.finder.last()->course.degrees(), WithinAbs(290.0, 1e-9));

  Drive slow;
  slow.go(200.0, 10.0, 12);
  for (int degrees = 200; degrees < 290; degrees += 10) slow.go(degrees, 3.0, 1);
  CHECK_FALSE(slow.has_straight());

  Drive slow_and_mute;
  slow_and_mute.go(200.0, 10.0, 12);
  slow_and_mute.gives_course = false;
  slow_and_mute.go(290.0, 3.0, 14);
  CHECK_FALSE(slow_and_mute.has_straight());

  Drive carried;  // silence, and then somewhere else
  carried.go(200.0, 10.0, 12);
  carried.now += 60s;
  carried.position = *Position::at_deg(44.44, -71.676);
  carried.go(200.0, 0.0, 1);
  CHECK_FALSE(carried.has_straight());
}

TEST_CASE("backing in on a new line gives the course of the way back") {
  Drive drive;
  drive.go(90.0, 10.0, 12);
  drive.go(120.0, 6.0, 2);
  drive.go(10.0, 6.0, 16);
  REQUIRE(drive.has_straight());
  CHECK_THAT(drive.finder.last()->course.degrees(), WithinAbs(10.0, 1e-9));
  CHECK_THAT(drive.finder.last()->course.reciprocal().degrees(), WithinAbs(190.0, 1e-9));
}

// humminbird-M37.log: a boat going east at 5.2 knots. Its positions from 19:41:14 to 19:41:24, by
// hand: east (40.5337 - 40.5143)/60 degrees of 79.6 km = 25.7 m, north (26.1200 - 26.1173)/60
// degrees of 111.1 km = 5.0 m: the course is 79.0 degrees. After that its clock is set back, and it
// is silent for longer than a turn takes.
TEST_CASE("a real log gives its straight course") {
  const auto path = test::reference("nmea/humminbird-M37.log");
  if (!path) return;
  Receiver receiver{sys_days(std::chrono::year(2000) / 1 / 1)};
  StraightCourseFinder finder;
  std::uint64_t taken = 0;
  Monotonic now{};
  std::optional<StraightCourse> at_clock_change;
  for (const std::string& line : test::read_lines(*path)) {
    receiver.feed(line + "\n", now += 330ms);
    if (line.starts_with("$INGGA,194124")) at_clock_change = finder.last();
    const Fix fix = receiver.fix(now);
    if (!fix.good() || fix.positions_taken == taken) continue;
    taken = fix.positions_taken;
    finder.add(*fix.position, fix.course, fix.speed_mps, now);
  }
  REQUIRE(at_clock_change);
  CHECK_THAT(at_clock_change->course.degrees(), WithinAbs(79.0, 2.0 * at_clock_change->sigma_deg));
  CHECK(at_clock_change->sigma_deg < 2.0);
  CHECK(at_clock_change->length_m >= 20.0);
  CHECK_FALSE(finder.last());
}
