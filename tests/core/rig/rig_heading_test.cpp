#include "core/rig/rig_heading.hpp"

#include "core/geo/geodesic.hpp"
#include "core/nmea/sentences.hpp"

#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const Position kStop = Position::at_deg(45.0, -110.0).value();

Bearing<True> bearing(double degrees) {
  return Bearing<True>::degrees(degrees);
}

double nose_deg(const Result<RigHeadingReading>& reading) {
  REQUIRE(reading);
  return reading->heading.nose().degrees();
}

MagneticField field(double declination_deg,
                    MagneticField::Zone zone = MagneticField::Zone::Normal) {
  MagneticField made{};
  made.declination = Declination::east_deg(declination_deg);
  made.declination_sigma_deg = 0.4;
  made.zone = zone;
  return made;
}

// The sensor's state after one sentence.
nmea::HeadingSensor sensor_of(std::string_view sentence) {
  const auto report = nmea::read_sentence(sentence);
  REQUIRE(report);
  return {report->true_heading, report->magnetic_heading, report->declination};
}

nmea::ParkedPosition parked(double away_m, std::optional<double> scatter_m) {
  return {destination(kStop, bearing(70.0), away_m), scatter_m, 60, milliseconds(60'000)};
}

}  // namespace

TEST_CASE("the last course gives the heading forward, backed in, and with a trailer", "[ways]") {
  const nmea::StraightCourse straight{bearing(30.0), 25.0, 1.0};
  using enum Carrier;
  CHECK(nose_deg(rig_heading_from_course(straight, Drove::forward, driven, kStop)) == 30.0);
  CHECK(nose_deg(rig_heading_from_course(straight, Drove::backed_in, driven, kStop)) == 210.0);
  const auto hitched = rig_heading_from_course(straight, Drove::forward, trailer_straight, kStop);
  REQUIRE(hitched);
  CHECK(hitched->sigma_deg == Approx(3.162).margin(0.001));  // 1 (+) 3
  REQUIRE(hitched->caution);
  CHECK(hitched->caution->kind == RigHeadingCaution::Kind::trailer_in_line);
  const auto loose = rig_heading_from_course(straight, Drove::forward, trailer, kStop);
  REQUIRE_FALSE(loose);
  CHECK_FALSE(loose.error().remedy.empty());
}

// True = magnetic + D (east positive); HDG fields: heading, deviation, E/W, variation, E/W
// [NMEA 0183 4.11]; the sensor's mark 90 degrees right of the nose reads 90 too much.
TEST_CASE("every kind of heading sensor gives the heading", "[ways]") {
  const Turn straight_on;
  const auto here = field(13.0);
  const auto hdt = sensor_of("$HEHDT,120.5,T");
  CHECK(nose_deg(rig_heading_from_sensor(hdt, straight_on, std::nullopt, kStop)) == Approx(120.5));
  CHECK(nose_deg(rig_heading_from_sensor(hdt, Turn::clockwise_deg(90.0), here, kStop)) ==
        Approx(30.5));
  CHECK(nose_deg(rig_heading_from_sensor(sensor_of("$HEHDM,350.0,M"), straight_on, here, kStop)) ==
        Approx(3.0));
  // 100 with a deviation of 4 west is 96 magnetic.
  const auto hdg =
      rig_heading_from_sensor(sensor_of("$HCHDG,100.0,4.0,W,5.0,W"), straight_on, here, kStop);
  CHECK(nose_deg(hdg) == Approx(109.0));
  REQUIRE(hdg->caution);
  CHECK(hdg->caution->kind == RigHeadingCaution::Kind::sensor_declination);
  CHECK(hdg->caution->set == Declination::east_deg(-5.0));
  CHECK(hdg->caution->here == Declination::east_deg(13.0));
  CHECK(hdg->sigma_deg == Approx(2.857).margin(0.001));  // 2 (+) 2 (+) 0.4
  const auto right =
      rig_heading_from_sensor(sensor_of("$HCHDG,100.0,,,13.4,E"), straight_on, here, kStop);
  REQUIRE(right);
  CHECK_FALSE(right->caution);
}

TEST_CASE("an unusable heading sensor reports why", "[ways]") {
  const auto hdm = sensor_of("$HEHDM,350.0,M");
  CHECK_FALSE(rig_heading_from_sensor({}, Turn(), field(0.0), kStop));
  CHECK_FALSE(rig_heading_from_sensor(hdm, Turn(), std::nullopt, kStop));
  CHECK_FALSE(
      rig_heading_from_sensor(hdm, Turn(), field(0.0, MagneticField::Zone::Blackout), kStop));
}

// With the sun at azimuth 240 abeam to the right, the nose is a quarter turn left of it.
TEST_CASE("the sun along the rig or square to it gives the heading", "[ways]") {
  const auto nose = [](SunFrom side) {
    return nose_deg(rig_heading_from_sun(bearing(240.0), 0.25, side, kStop));
  };
  CHECK(nose(SunFrom::nose) == 240.0);
  CHECK(nose(SunFrom::right) == 150.0);
  CHECK(nose(SunFrom::tail) == 60.0);
  CHECK(nose(SunFrom::left) == 330.0);
  // And back: the sun is then at rig angle 90.
  const auto right = rig_heading_from_sun(bearing(240.0), 0.25, SunFrom::right, kStop);
  REQUIRE(right);
  CHECK(to_rig_angle(bearing(240.0), right->heading).clockwise_deg() == Approx(90.0));
  CHECK_FALSE(rig_heading_from_sun(bearing(240.0), -1.0, SunFrom::right, kStop));
}

// atan(sqrt(2) s / L): 3 m at 100 m is 2.4 degrees; at 5 m it is 40.
TEST_CASE("two points along the rig's side give the heading", "[ways]") {
  const Position nose_end = destination(kStop, bearing(75.0), 100.0);
  const auto walked = rig_heading_from_two_points(kStop, nose_end, 3.0);
  CHECK(nose_deg(walked) == Approx(75.0).margin(0.001));
  CHECK(walked->sigma_deg == Approx(2.43).margin(0.01));
  CHECK(walked->taken_at == nose_end);
  const auto near = rig_heading_from_two_points(kStop, destination(kStop, bearing(75.0), 5.0), 3.0);
  REQUIRE_FALSE(near);
  CHECK(near.error().what == "the two points are only 5 m apart, and each may be off by 3 m");
  CHECK_FALSE(rig_heading_from_two_points(kStop, kStop, 3.0));
  CHECK_FALSE(rig_heading_from_two_points(kStop, nose_end, 0.0));
}

TEST_CASE("the heading with the smallest error is chosen", "[ways]") {
  std::vector<RigHeadingReading> readings;
  CHECK(best_rig_heading(readings) == nullptr);
  for (const double sigma_deg : {5.0, 1.5, 3.0}) {
    const auto typed = rig_heading_by_hand(bearing(sigma_deg * 10.0), sigma_deg, kStop);
    REQUIRE(typed);
    readings.push_back(*typed);
  }
  CHECK(best_rig_heading(readings) == &readings[1]);
  CHECK_FALSE(rig_heading_by_hand(bearing(0.0), 0.0, kStop));
}

TEST_CASE("a rig that moved loses its heading and reports it", "[ways]") {
  CHECK_FALSE(rig_moved_m(kStop, parked(9.9, 1.0)));
  REQUIRE(rig_moved_m(kStop, parked(10.1, 1.0)));
  CHECK(*rig_moved_m(kStop, parked(10.1, 1.0)) == Approx(10.1).margin(0.001));
  CHECK_FALSE(rig_moved_m(kStop, parked(19.9, 5.0)));
  CHECK(rig_moved_m(kStop, parked(20.1, 5.0)));
  CHECK_FALSE(rig_moved_m(kStop, parked(29.0, std::nullopt)));
  CHECK(rig_moved_m(kStop, parked(31.0, std::nullopt)));
}
