#include "core/gear/pattern.hpp"

#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;
using gear::Pattern;

namespace {

double at(const Pattern& pattern, double degrees) {
  return pattern.relative_db(Turn::clockwise_deg(degrees));
}

// Rows of a half-wave dipole's field, cos(90 deg sin a) / cos a, whose half power is 39.0
// degrees off the axis [any antenna handbook: 78 degrees].
double dipole_field(double angle_deg) {
  const double angle = angle_deg * std::numbers::pi / 180.0;
  const double along = std::cos(angle);
  if (std::fabs(along) < 1e-9) return 0.0;
  return std::fabs(std::cos(std::numbers::pi / 2.0 * std::sin(angle)) / along);
}

std::string dipole_table(const std::string& form, int last_deg) {
  std::string text;
  for (int angle = 0; angle <= last_deg; angle += 2) {
    text += fmt::format(fmt::runtime(form), angle, dipole_field(angle));
  }
  return text;
}

// A table with a row every 30 degrees and 1 more, for the refusals.
std::string circle_with(const std::string& row) {
  std::string text;
  for (int angle = 0; angle < 360; angle += 30) text += fmt::format("{},-{}\n", angle, angle / 30);
  return text + row;
}

Error refusal(const std::string& text) {
  const auto read = Pattern::from_table(text);
  REQUIRE_FALSE(read);
  CHECK_FALSE(read.error().remedy.empty());
  return read.error();
}

}  // namespace

TEST_CASE("the half-wave dipole's table gives its 78 degrees") {
  const auto whole = Pattern::from_table(dipole_table("{},{:.6f}\n", 360));
  REQUIRE(whole);
  CHECK(*whole->half_power_beamwidth_deg() == Approx(78.0).margin(0.2));
  CHECK(at(*whole, 0.0) == 0.0);
  CHECK(whole->front_to_back_db() == Approx(0.0).margin(1e-6));
  CHECK(at(*whole, 90.0) == Approx(-60.0));
  CHECK(at(*whole, 51.0) == Approx(20.0 * std::log10(dipole_field(51.0))).margin(0.01));

  const auto half = Pattern::from_table(dipole_table("{},{:.6f}\n", 180));
  REQUIRE(half);
  for (double angle = -179.5; angle < 180.0; angle += 3.5) {
    CHECK(at(*half, angle) == Approx(at(*whole, angle)).margin(1e-9));
  }
}

TEST_CASE("the same table in other forms is the same pattern") {
  const auto plain = Pattern::from_table("0,0\n30,-3\n60,-9\n90,-15\n120,-12\n150,-14\n180,-13\n");
  REQUIRE(plain);
  CHECK(at(*plain, 30.0) == Approx(-3.0).margin(1e-9));
  CHECK(at(*plain, -60.0) == Approx(-9.0).margin(1e-9));
  CHECK(plain->front_to_back_db() == Approx(13.0).margin(1e-9));

  for (const char* text : {
           "\xEF\xBB\xBF# measured on a mast\r\nangle;relative "
           "dB\r\n0;0\r\n30;-3,0\r\n60;-9,0\r\n90;"
           "-15,0\r\n120;-12,0\r\n150;-14,0\r\n180;-13,0\r\n",
           "180\t-13\n150\t-14\n120\t-12\n90\t-15\n60\t-9\n30\t-3\n0\t0\n",
           "  0    0.0\n 30   -3.0\n 60   -9.0\n 90  -15.0\n120  -12.0\n150  -14.0\n180  -13.0",
           "0,0,\n30,-3,\n60,-9,\n90,-15,\n,,\n120,-12,\n150,-14,\n180,-13,\n",
       }) {
    INFO(text);
    const auto other = Pattern::from_table(text);
    REQUIRE(other);
    CHECK(*other == *plain);
  }

  const auto gains = Pattern::from_table(
      "deg,gain_dbi\n0,7.5\n30,4.5\n60,-1.5\n90,-7.5\n120,-4.5\n150,-6.5\n180,-5.5\n");
  REQUIRE(gains);
  for (double angle = 0.0; angle <= 180.0; angle += 10.0) {
    CHECK(at(*gains, angle) == Approx(at(*plain, angle)).margin(1e-9));
  }
}

TEST_CASE("a table may be asymmetrical, and its sides keep their order") {
  std::string text = "angle,field\n";
  for (int angle = -180; angle <= 180; angle += 20) {
    const double width = angle > 0 ? 40.0 : 80.0;
    text += fmt::format("{},{}\n", angle, std::exp2(-std::fabs(angle) / width));
  }
  const auto pattern = Pattern::from_table(text);
  REQUIRE_FALSE(pattern);  // -180 and 180 differ
  CHECK(pattern.error().what == "180 degrees has both 0.21022410381342863 and 0.04419417382415922");

  const auto open = Pattern::from_table(text.substr(0, text.rfind("180,")));
  REQUIRE(open);
  CHECK(at(*open, 20.0) < at(*open, -20.0));
  CHECK(*open->half_power_beamwidth_deg() == Approx(20.0 + 40.0).margin(1e-9));
}

TEST_CASE("ripple beside the axis up to a decibel counts as the axis") {
  const auto ripple =
      Pattern::from_table("0,-0.8\n30,0\n60,-6\n90,-20\n120,-15\n150,-15\n180,-15\n");
  REQUIRE(ripple);
  CHECK(at(*ripple, 0.0) == 0.0);
  CHECK(at(*ripple, 30.0) == 0.0);
  CHECK(at(*ripple, 60.0) == Approx(-5.2).margin(1e-9));
}

TEST_CASE("a faulty table reports its line and a remedy") {
  CHECK(refusal("").what == "the table has no rows");
  CHECK(refusal("# nothing\n\n").what == "the table has no rows");
  CHECK(
      refusal("0,1,2\n").message() ==
      "line 1: expected 2 columns, found 3; give the angle in degrees and the response, separated "
      "by a comma");
  CHECK(refusal("0\n10\n").what == "expected 2 columns, found 1");
  CHECK(refusal(circle_with("north,-3\n")).message() ==
        "line 13: \"north\" is not an angle in degrees; angles go from -360 to 360");
  CHECK(refusal(circle_with("400,-3\n")).what == "\"400\" is not an angle in degrees");
  CHECK(refusal(circle_with("5,weak\n")).where == "line 13");
  CHECK(refusal(circle_with("5,nan\n")).what == "\"nan\" is not a number");
  CHECK(refusal(circle_with("5,-900\n")).what == "-900 dB is not a valid antenna response");
  CHECK(refusal("angle,field\n0,1\n30,-0.5\n").message() ==
        "line 3: -0.5 is not a relative field; the field is 1 on the axis and never below 0");
  CHECK(refusal("angle,strength\n0,1\n").what ==
        "the heading \"strength\" does not say what the numbers are");
  CHECK(refusal("0,7.5\n90,2\n180,3\n").what == "the numbers may be decibels or a field");
}

TEST_CASE("a table that leaves the circle or the axis open is refused") {
  const std::string gap = "0,0\n30,-3\n60,-9\n150,-14\n180,-13\n";
  CHECK(refusal(gap).what == "no row between 60 and 150 degrees");
  CHECK(refusal("0,0\n30,-3\n60,-9\n90,-12\n").what == "no row between 90 and 270 degrees");
  CHECK(refusal("10,0\n30,-3\n").what == "no response on the axis, at 0 degrees");
  CHECK(refusal("0,0\n30,0\n60,0\n").what == "no response on the axis, at 0 degrees");
  CHECK(refusal(circle_with("0,-5\n")).message() ==
        "line 13: 0 degrees has both -0 and -5; give each angle once");
  CHECK(refusal("0,-10\n30,-3\n60,-2\n90,0\n120,-3\n150,-9\n180,-14\n").what ==
        "30 degrees is 7.0 dB stronger than the axis, at 0 degrees");
  CHECK(Pattern::from_table("0,\"1\n").error().where == "line 1");
}
