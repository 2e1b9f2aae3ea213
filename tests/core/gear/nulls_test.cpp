#include "core/gear/nulls.hpp"

#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/core.h>

namespace mastwise::gear {
namespace {

// A half-wave dipole's field, cos(90 deg sin a) / cos a off its axis [any handbook of antennas];
// its ends hear nothing.
Pattern dipole() {
  std::string table = "angle,relative_field\n";
  for (int degrees = 0; degrees < 360; degrees += 2) {
    const double a = degrees * std::numbers::pi / 180.0;
    const double along = std::fabs(std::cos(a));
    const double field =
        along < 1e-9 ? 0.0 : std::fabs(std::cos(std::numbers::pi / 2.0 * std::sin(a))) / along;
    table += fmt::format("{},{:.6f}\n", degrees, field);
  }
  return *Pattern::from_table(table);
}

}  // namespace

TEST_CASE("nulls: those of a dipole are at its ends, as deep as the place lets them be") {
  const Pattern measured = dipole();
  const auto free = nulls(measured);
  REQUIRE(free.size() == 2);
  CHECK(free[0].middle.clockwise_deg() == Approx(90.0).margin(0.5));
  CHECK(free[1].middle.clockwise_deg() == Approx(-90.0).margin(0.5));
  CHECK(free[0].depth_db == Approx(60.0));
  // By hand: near the end the field is pi / 4 times the angle. 20 dB down is 0.1, 17 dB is 0.141:
  // 7.3 and 10.3 degrees to either side.
  Antenna antenna;
  antenna.uhf.pattern = antenna.high_vhf.pattern = antenna.low_vhf.pattern = measured;
  antenna = in_place(antenna);
  const auto uhf = nulls(antenna.uhf.pattern);
  REQUIRE(uhf.size() == 2);
  CHECK(uhf[0].middle.clockwise_deg() == Approx(90.0).margin(0.5));
  CHECK(uhf[0].depth_db == Approx(20.0));
  CHECK(uhf[0].width_deg == Approx(2 * 10.3).margin(1.0));
  CHECK(nulls(antenna.high_vhf.pattern)[0].depth_db == Approx(16.0));
  CHECK(nulls(antenna.low_vhf.pattern)[0].depth_db == Approx(10.0));
  // The beam itself is as it was.
  CHECK(antenna.uhf.pattern.relative_db(Turn::clockwise_deg(40.0)) ==
        Approx(measured.relative_db(Turn::clockwise_deg(40.0))));
}

TEST_CASE("nulls: a typical pattern has none, and keeps its floor") {
  for (const Pattern& pattern : {Pattern::omnidirectional(), Pattern::directional(60.0, 30.0),
                                 Pattern::bidirectional(70.0, 25.0)}) {
    CHECK(nulls(pattern).empty());
    CHECK(pattern.no_deeper_than(10.0) == pattern);
  }
}

TEST_CASE("nulls: a dip that is shallow, or that does not rise again, is none") {
  // 8 dB below the axis; then a fall to one side only, with 4 dB of ripple.
  CHECK(nulls(*Pattern::from_table("0,0\n30,-8\n60,-1\n90,-8\n120,-1\n150,-1\n180,-1\n")).empty());
  const auto one =
      nulls(*Pattern::from_table("0,0\n30,-4\n60,-12\n90,-16\n120,-12\n150,-16\n180,-20\n"));
  REQUIRE(one.size() == 1);
  CHECK(one[0].middle.size_deg() == Approx(180.0).margin(0.5));
}

TEST_CASE("nulls: each side of an uneven pattern has its own") {
  const auto found = nulls(*Pattern::from_table(
      "0,0\n20,-3\n40,-15\n60,-6\n80,-9\n110,-9\n140,-8\n170,-7\n200,-8\n230,-9\n260,-22\n"
      "290,-9\n320,-6\n340,-3\n"));
  REQUIRE(found.size() == 2);
  CHECK(found[0].middle.clockwise_deg() == Approx(40.0).margin(3.0));
  CHECK(found[0].depth_db == Approx(15.0));
  CHECK(found[1].middle.clockwise_deg() == Approx(-100.0).margin(3.0));
  CHECK(found[1].depth_db == Approx(22.0));
  // The field is straight between rows: it rises by 3 dB, to 0.112 from 0.079, after 3.6 of the 30
  // degrees to 0.355 on either side.
  CHECK(found[1].width_deg == Approx(2 * 3.6).margin(1.0));
}

}  // namespace mastwise::gear
