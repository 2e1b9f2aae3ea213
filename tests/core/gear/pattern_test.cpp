#include "core/gear/pattern.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using gear::Pattern;

namespace {

double relative_at(const Pattern& pattern, double degrees) {
  return pattern.relative_db(Turn::clockwise_deg(degrees));
}

const double kHalfPowerDb = 10.0 * std::log10(0.5);

}  // namespace

TEST_CASE("an omnidirectional antenna receives equally from every direction") {
  const auto pattern = Pattern::omnidirectional();
  for (const double angle : {0.0, 45.0, 90.0, 135.0, 180.0, -90.0})
    CHECK(relative_at(pattern, angle) == 0.0);
  CHECK_FALSE(pattern.half_power_beamwidth_deg());
  CHECK(pattern.front_to_back_db() == 0.0);
}

// The definition of the half-power beamwidth and of the front-to-back ratio [IEEE 145].
TEST_CASE("a beam has half power at half its width and its front-to-back ratio behind") {
  for (const double width : {1.0, 25.0, 40.0, 60.0, 90.0, 150.0, 170.0}) {
    INFO(width);
    const auto beam = Pattern::directional(width, 15.0);
    CHECK(relative_at(beam, 0.0) == 0.0);
    CHECK(relative_at(beam, width / 2.0) == Approx(kHalfPowerDb).margin(1e-9));
    CHECK(relative_at(beam, -width / 2.0) == Approx(kHalfPowerDb).margin(1e-9));
    CHECK(*beam.half_power_beamwidth_deg() == Approx(width).margin(1e-9));
    CHECK(beam.front_to_back_db() == 15.0);
    CHECK(relative_at(beam, 90.0) == -15.0);
    CHECK(relative_at(beam, 120.0) == -15.0);
  }
}

// n of the trade's table for four widths, from the slope: 10 n log cos(1 degree). Common practice,
// no source.
TEST_CASE("the exponent of the beam matches the trade's table") {
  const double slope_db = 10.0 * std::log10(std::cos(std::acos(-1.0) / 180.0));
  const auto exponent = [&](double width) {
    return relative_at(Pattern::directional(width, 20.0), 1.0) / slope_db;
  };
  CHECK(exponent(40.0) == Approx(11.1).margin(0.05));
  CHECK(exponent(60.0) == Approx(4.82).margin(0.005));
  CHECK(exponent(80.0) == Approx(2.60).margin(0.005));
  CHECK(exponent(90.0) == Approx(2.0).margin(1e-6));
}

// Common practice, no source: a beam loses 12 (theta / HPBW)^2 dB near its axis; a 60-degree beam
// 0.33 dB at 10 degrees, 0.75 at 15, 1.33 at 20, 3.0 at 30.
TEST_CASE("near the axis the loss follows the parabola") {
  const auto sixty = Pattern::directional(60.0, 20.0);
  CHECK(relative_at(sixty, 10.0) == Approx(-0.33).margin(0.02));
  CHECK(relative_at(sixty, 15.0) == Approx(-0.75).margin(0.03));
  CHECK(relative_at(sixty, 20.0) == Approx(-1.33).margin(0.04));
  CHECK(relative_at(sixty, 30.0) == Approx(-3.0).margin(0.02));

  double largest_db = 0.0;
  for (const double width : {30.0, 40.0, 60.0, 80.0}) {
    for (double part = 0.0; part <= 0.5; part += 0.05) {
      const double parabola_db = -12.0 * part * part;
      const double off_db =
          relative_at(Pattern::directional(width, 20.0), part * width) - parabola_db;
      largest_db = std::max(largest_db, std::fabs(off_db));
    }
  }
  CHECK(largest_db < 0.1);
}

// The parabola from 3 dB down to 10 dB, its usual limit. Common practice, no source.
TEST_CASE("a narrow beam follows the parabola to ten decibels down") {
  for (const double width : {30.0, 40.0}) {
    for (double part = 0.5; part <= 0.9; part += 0.05) {
      INFO(width << " " << part);
      const double parabola_db = -12.0 * part * part;
      CHECK(relative_at(Pattern::directional(width, 40.0), part * width) ==
            Approx(parabola_db).margin(1.0));
    }
  }
}

TEST_CASE("a bidirectional antenna has two faces and ends") {
  const auto pattern = Pattern::bidirectional(80.0, 17.0);
  CHECK(relative_at(pattern, 180.0) == Approx(0.0).margin(1e-9));
  CHECK(pattern.front_to_back_db() == Approx(0.0).margin(1e-9));
  CHECK(relative_at(pattern, 40.0) == Approx(kHalfPowerDb).margin(1e-9));
  CHECK(relative_at(pattern, 140.0) == Approx(kHalfPowerDb).margin(1e-9));
  CHECK(relative_at(pattern, 90.0) == -17.0);
  CHECK(relative_at(pattern, -90.0) == -17.0);
  CHECK(relative_at(pattern, 20.0) == Approx(relative_at(pattern, -160.0)).margin(1e-9));
}

TEST_CASE("a pattern never rises with the angle in front, nor above the axis anywhere") {
  for (const double width : {25.0, 55.0, 90.0}) {
    const auto beam = Pattern::directional(width, 14.0);
    for (double angle = 1.0; angle <= 180.0; angle += 1.0) {
      CHECK(relative_at(beam, angle) <= relative_at(beam, angle - 1.0));
      CHECK(relative_at(beam, angle) >= -14.0);
    }
  }
}

TEST_CASE("impossible widths and depths are clamped to the nearest possible") {
  CHECK(Pattern::directional(0.0, 99.0) == Pattern::directional(1.0, 60.0));
  CHECK(Pattern::directional(400.0, -3.0) == Pattern::directional(170.0, 0.0));
  CHECK_FALSE(Pattern::directional(60.0, 2.0).half_power_beamwidth_deg());
}
