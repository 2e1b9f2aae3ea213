#include "core/angles/bearing.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/notation.hpp"

#include <cmath>
#include <random>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Position format_at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

Position read(const std::string& text) {
  const auto position = parse_position(text);
  INFO(text << (position ? "" : ": " + position.error().message()));
  REQUIRE(position);
  return *position;
}

// Half a step, and room for the rounding of numbers up to 360.
void check_degrees(Position position, Notation notation, double step_deg) {
  constexpr double kRoundingDeg = 1e-12;
  const std::string text = format_position(position, notation);
  const Position back = read(text);
  INFO(text);
  CHECK(std::fabs(back.latitude_deg() - position.latitude_deg()) <= step_deg / 2 + kRoundingDeg);
  CHECK(std::fabs(fold_half_circle_deg(back.longitude_deg() - position.longitude_deg())) <=
        step_deg / 2 + kRoundingDeg);
  CHECK(format_position(back, notation) == text);
}

// Half a meter on each axis, over the smallest scale: 0.9996 in UTM, 0.994 in UPS.
void check_meters(Position position, Notation notation) {
  const std::string text = format_position(position, notation);
  INFO(text);
  CHECK(path_between(position, read(text)).distance_m <= 0.7072 / 0.994);
}

void check_every_notation(Position position) {
  CAPTURE(position.latitude_deg(), position.longitude_deg());
  check_degrees(position, Notation::Decimal, 1e-6);
  check_degrees(position, Notation::DegreesMinutes, 1e-4 / 60.0);
  check_degrees(position, Notation::DegreesMinutesSeconds, 0.1 / 3600.0);
  check_meters(position, Notation::UtmUps);
  check_meters(position, Notation::Mgrs);
}

}  // namespace

// Source of UTM and MGRS: the first rows of utm_mgrs_geoconvert.csv; degrees worked by hand.
TEST_CASE("a position in each notation") {
  const Position stop = format_at(44.435217, -71.675993);
  CHECK(format_position(stop, Notation::Decimal) == "44.435217, -71.675993");
  CHECK(format_position(stop, Notation::DegreesMinutes) ==
        "44\u00B026.1130\u2032N 71\u00B040.5596\u2032W");
  CHECK(format_position(stop, Notation::DegreesMinutesSeconds) ==
        "44\u00B026\u203206.8\u2033N 71\u00B040\u203233.6\u2033W");
  const Position published = format_at(44.435216667, -71.675993333);
  CHECK(format_position(published, Notation::UtmUps) == "19N 287027 4923696");
  CHECK(format_position(published, Notation::Mgrs) == "19TBK 87027 23696");
  // At 54 S the letter S could be taken for band S.
  CHECK(format_position(format_at(-54, -69), Notation::UtmUps).rfind("19 south 500000 40", 0) == 0);
  CHECK(format_position(format_at(-33.8688, 151.2093), Notation::UtmUps) == "56S 334369 6250948");
  CHECK(format_position(format_at(84.5, 10), Notation::UtmUps) == "UPS N 2106113 1398202");
  CHECK(format_position(format_at(84.5, 10), Notation::Mgrs) == "ZBA 06113 98202");
}

TEST_CASE("rounding carries into minutes and degrees") {
  const Position nearly = format_at(44.9999999, -71.99999999);
  CHECK(format_position(nearly, Notation::Decimal) == "45.000000, -72.000000");
  CHECK(format_position(nearly, Notation::DegreesMinutes) ==
        "45\u00B000.0000\u2032N 72\u00B000.0000\u2032W");
  CHECK(format_position(nearly, Notation::DegreesMinutesSeconds) ==
        "45\u00B000\u203200.0\u2033N 72\u00B000\u203200.0\u2033W");
  // 59.96 seconds: over to the next minute, which is not the next degree.
  const Position minute =
      format_at(10.0 + 4.0 / 60.0 + 59.96 / 3600.0, 20.0 + 59.0 / 60.0 + 59.94 / 3600.0);
  CHECK(format_position(minute, Notation::DegreesMinutesSeconds) ==
        "10\u00B005\u203200.0\u2033N 20\u00B059\u203259.9\u2033E");
}

TEST_CASE("what rounds to zero has no minus sign") {
  const Position tiny = format_at(-0.0000001, -0.0000001);
  CHECK(format_position(tiny, Notation::Decimal) == "0.000000, 0.000000");
  CHECK(format_position(tiny, Notation::DegreesMinutes) ==
        "0\u00B000.0000\u2032N 0\u00B000.0000\u2032E");
  CHECK(format_position(format_at(-0.0, -0.0), Notation::Decimal) == "0.000000, 0.000000");
  CHECK(format_position(format_at(0, 180), Notation::Decimal) == "0.000000, -180.000000");
  CHECK(format_position(format_at(0, 179.9999999), Notation::DegreesMinutes) ==
        "0\u00B000.0000\u2032N 180\u00B000.0000\u2032W");
}

TEST_CASE("printed positions read back at the poles, the antimeridian and the zones' edges") {
  for (const double latitude_deg :
       {-90.0,      -89.9999999, -80.0000001, -80.0,      -79.9999999, -58.0,      -54.0,
        -50.0,      -45.0,       -0.0000001,  -0.0,       0.0,         0.0000001,  32.0,
        40.0,       55.9999999,  56.0,        63.9999999, 64.0,        71.9999999, 72.0,
        83.9999999, 84.0,        89.9999999,  90.0}) {
    for (const double longitude_deg :
         {-180.0, -179.9999999, -174.0, -72.0, -71.9999999, -0.0000001, -0.0,
          0.0,    0.0000001,    3.0,    6.0,   8.9999999,   9.0,        12.0,
          21.0,   33.0,         42.0,   90.0,  179.9999999, 180.0}) {
      check_every_notation(format_at(latitude_deg, longitude_deg));
    }
  }
}

TEST_CASE("printed positions read back anywhere") {
  std::mt19937_64 generator(2025);
  const auto within = [&generator](double limit) {
    return (static_cast<double>(generator() >> 11) * 0x1p-52 - 1.0) * limit;
  };
  for (int i = 0; i < 3000; ++i) check_every_notation(format_at(within(90.0), within(180.0)));
}
