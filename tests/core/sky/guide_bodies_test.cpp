#include "core/sky/guide_bodies.hpp"

#include "core/sky/sun.hpp"
#include "tests/support/utc_text.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;
using sky::Guide;
using sky::GuideBody;
using test::utc;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Position place_at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

struct Row {
  GuideBody body;
  const char* time;
  double latitude_deg, longitude_deg, azimuth_deg, altitude_deg, magnitude;
};

// Azimuth and altitude from the ground, without air. Source: PyEphem 4.1.4 (libastro), whose stars
// have the Hipparcos Catalog's places.
constexpr Row kRows[] = {
    {GuideBody::moon, "2034-09-21T03:00:00Z", 61.2181, -149.9003, 163.6261, 8.5338, -11.9},
    {GuideBody::venus, "2024-11-12T19:00:00Z", -33.9, 18.4, 250.9353, 18.2742, -3.9},
    {GuideBody::mars, "2031-06-13T07:00:00Z", -54.8, -68.3, 264.7679, 13.5323, -1.2},
    {GuideBody::jupiter, "2027-05-21T12:00:00Z", 64.1466, -21.9426, 69.7281, 8.0430, -1.9},
    {GuideBody::saturn, "2035-02-12T23:00:00Z", 44.27056, -71.30327, 91.0315, 31.1840, -0.2},
    {GuideBody::polaris, "2038-01-10T11:00:00Z", 61.2181, -149.9003, 358.8356, 61.3781, 2.0},
    {GuideBody::sirius, "2031-05-17T05:00:00Z", -36.84, 174.74, 308.7777, 61.5553, -1.4},
    {GuideBody::canopus, "2035-05-21T21:00:00Z", -33.9, 18.4, 213.7281, 12.6519, -0.6},
    {GuideBody::rigil_kentaurus, "2031-06-16T08:00:00Z", -54.8, -68.3, 221.6502, 43.3892, -0.0},
    {GuideBody::arcturus, "2024-05-23T05:00:00Z", 25.7617, -80.1918, 256.1312, 68.6934, -0.1},
    {GuideBody::vega, "2036-03-16T02:00:00Z", 64.1466, -21.9426, 64.9284, 31.4203, 0.0},
    {GuideBody::capella, "2032-05-10T16:00:00Z", 44.27056, -71.30327, 71.5174, 60.6286, 0.1},
    {GuideBody::rigel, "2035-08-24T16:00:00Z", -36.84, 174.74, 71.7662, 35.2898, 0.2},
    {GuideBody::procyon, "2028-10-09T07:00:00Z", -33.9, 18.4, 321.9943, 43.5467, 0.4},
    {GuideBody::achernar, "2026-02-24T16:00:00Z", 10.0, -67.0, 152.5527, 8.3077, 0.5},
    {GuideBody::betelgeuse, "2037-04-20T19:00:00Z", 25.7617, -80.1918, 112.3713, 51.7311, 0.5},
    {GuideBody::hadar, "2030-04-06T19:00:00Z", -36.84, 174.74, 216.4232, 34.5853, 0.6},
    {GuideBody::altair, "2028-12-16T14:00:00Z", 10.0, -67.0, 84.2801, 21.7611, 0.8},
    {GuideBody::acrux, "2029-11-20T10:00:00Z", -36.84, 174.74, 172.1292, 11.0598, 0.8},
    {GuideBody::aldebaran, "2024-08-23T14:00:00Z", -54.8, -68.3, 316.9023, 9.1890, 0.9},
    {GuideBody::antares, "2036-05-28T21:00:00Z", 1.2833, 103.8333, 238.9240, 27.7383, 1.1},
    {GuideBody::spica, "2033-01-04T15:00:00Z", 10.0, -67.0, 252.0926, 25.9099, 1.0},
    {GuideBody::pollux, "2033-04-08T13:00:00Z", 64.1466, -21.9426, 62.9313, 18.1263, 1.2},
    {GuideBody::fomalhaut, "2038-05-18T00:00:00Z", -36.84, 174.74, 257.4030, 35.6342, 1.2},
    {GuideBody::deneb, "2029-07-11T05:00:00Z", 10.0, -67.0, 15.4207, 52.8373, 1.2},
    {GuideBody::mimosa, "2038-05-23T04:00:00Z", -54.8, -68.3, 240.1723, 68.1513, 1.2},
    {GuideBody::regulus, "2038-02-17T09:00:00Z", 25.7617, -80.1918, 262.9983, 41.2636, 1.4},
    {GuideBody::gacrux, "2029-04-07T16:00:00Z", 1.2833, 103.8333, 174.8559, 31.0688, 1.6},
    {GuideBody::moon, "2025-09-14T14:00:00Z", 64.1466, -21.9426, 290.7700, 20.8984, -11.9},
    {GuideBody::venus, "2034-12-13T17:00:00Z", 25.7617, -80.1918, 233.5236, 34.7761, -4.4},
    {GuideBody::mars, "2035-04-03T21:00:00Z", 1.2833, 103.8333, 120.6364, 39.9588, 0.6},
    {GuideBody::jupiter, "2029-11-16T12:00:00Z", -33.9, 18.4, 293.1861, 52.8902, -1.5},
    {GuideBody::saturn, "2037-10-27T12:00:00Z", 25.7617, -80.1918, 117.2932, 57.1637, 0.9},
    {GuideBody::moon, "2039-04-29T19:00:00Z", 64.1466, -21.9426, 193.8139, 49.1083, -11.3},
    {GuideBody::venus, "2026-09-22T22:00:00Z", 44.27056, -71.30327, 226.1954, 12.3640, -4.5},
    {GuideBody::mars, "2030-03-27T04:00:00Z", 61.2181, -149.9003, 260.7900, 13.9413, 1.3},
    {GuideBody::jupiter, "2034-03-10T19:00:00Z", -36.84, 174.74, 89.7469, 8.3954, -1.9},
    {GuideBody::saturn, "2039-05-04T00:00:00Z", -33.9, 18.4, 288.3325, 16.8855, 0.9},
};

Guide guide_of(const Row& row) {
  return sky::guide_at(row.body, place_at(row.latitude_deg, row.longitude_deg), utc(row.time));
}

bool planet(GuideBody body) {
  return body >= GuideBody::venus && body <= GuideBody::saturn;
}

std::set<GuideBody> offered(Position position, const char* time) {
  std::set<GuideBody> bodies;
  for (const Guide& guide : sky::guides_now(position, utc(time))) bodies.insert(guide.body);
  return bodies;
}

}  // namespace

TEST_CASE("moon, planets and stars are where an independent ephemeris puts them", "[sky]") {
  std::set<GuideBody> checked;
  for (const Row& row : kRows) {
    INFO(static_cast<int>(row.body) << ' ' << row.time);
    const Guide guide = guide_of(row);
    const double margin_deg = row.body == GuideBody::moon ? 0.004 : 0.001;
    const double aside_deg = (guide.azimuth - Bearing<True>::degrees(row.azimuth_deg)).size_deg();
    CHECK(aside_deg * std::cos(row.altitude_deg * kDegree) <= margin_deg);
    CHECK(guide.altitude_deg == Approx(row.altitude_deg).margin(margin_deg));
    CHECK(guide.apparent_altitude_deg > guide.altitude_deg);
    checked.insert(row.body);
  }
  CHECK(checked.size() == sky::kGuideBodies);
}

// Of the same source. Saturn's figure leaves out the light of its rings; Canopus and the twin Rigil
// Kentaurus differ between catalogs. The moon's is checked by its phase below.
TEST_CASE("planets and stars are as bright as an independent ephemeris says", "[sky]") {
  for (const Row& row : kRows) {
    if (row.body == GuideBody::moon) continue;
    INFO(static_cast<int>(row.body) << ' ' << row.time);
    const double margin = row.body == GuideBody::saturn ? 1.0 : planet(row.body) ? 0.5 : 0.3;
    CHECK(guide_of(row).magnitude == Approx(row.magnitude).margin(margin));
  }
}

// The azimuth a minute earlier and later, by the ephemeris itself.
TEST_CASE("a guide turns as fast as its azimuth changes", "[sky]") {
  for (const Row& row : kRows) {
    INFO(static_cast<int>(row.body) << ' ' << row.time);
    const Position position = place_at(row.latitude_deg, row.longitude_deg);
    const auto half = std::chrono::seconds(30);
    const Guide before = sky::guide_at(row.body, position, utc(row.time) - half);
    const Guide after = sky::guide_at(row.body, position, utc(row.time) + half);
    // The moon itself moves by a thirtieth of the sky's turn.
    CHECK(guide_of(row).turn_deg_per_min ==
          Approx((after.azimuth - before.azimuth).clockwise_deg()).epsilon(0.01).margin(0.015));
  }
}

// Source: PyEphem 4.1.4: the bodies of the list between 10 and 60 degrees over the horizon, lifted
// by air, and Polaris between 5 and 90; the sun is 57, 37 and 28 degrees down.
TEST_CASE("the bodies that guide are those in reach, north and south", "[sky]") {
  using enum GuideBody;
  CHECK(offered(place_at(44.27056, -71.30327), "2027-01-15T03:00:00Z") ==
        std::set{moon, mars, jupiter, polaris, sirius, rigel, procyon, betelgeuse, aldebaran,
                 regulus});
  CHECK(offered(place_at(-33.9, 18.4), "2026-07-20T19:00:00Z") ==
        std::set{moon, rigil_kentaurus, arcturus, hadar, altair, acrux, spica, mimosa, gacrux});
  CHECK(offered(place_at(1.2833, 103.8333), "2026-04-10T13:00:00Z") ==
        std::set{jupiter, sirius, canopus, arcturus, capella, rigel, betelgeuse, acrux, aldebaran,
                 spica, pollux, mimosa, gacrux});
  // Polaris guides at any height: here 61.6 degrees.
  CHECK(offered(place_at(61.2181, -149.9003), "2026-10-20T08:00:00Z") ==
        std::set{saturn, polaris, vega, capella, altair, aldebaran, pollux, deneb});
}

// Source: PyEphem 4.1.4: at Tromso the sun of 20 June is 3.1 degrees up at 23:00Z; on the plains on
// 25 May 2026 at 22:30Z it is 37 degrees up, and 75 percent of the moon are lit, 17.7 degrees up.
TEST_CASE("by day only a moon at least half lit guides", "[sky]") {
  CHECK(offered(place_at(69.65, 18.96), "2026-06-20T23:00:00Z").empty());
  const Position plains = place_at(40.0, -100.0);
  CHECK(offered(plains, "2026-05-25T22:30:00Z") == std::set{GuideBody::moon});
  const Guide sirius = sky::guide_at(GuideBody::sirius, plains, utc("2026-05-25T22:30:00Z"));
  CHECK(sirius.why_none == sky::NoGuide::Daylight);
}

// Source: PyEphem 4.1.4, Moon.phase: 2026-12-24T11:00Z full (99.7 percent), 2027-01-15T03:00Z just
// before the first quarter (42 percent). Full moons have -12.7 (any almanac); by the phase law of
// Allen a quarter has -10.1 (from memory).
TEST_CASE("the moon is bright when it is full", "[sky]") {
  const Guide full =
      sky::guide_at(GuideBody::moon, place_at(-36.84, 174.74), utc("2026-12-24T11:00:00Z"));
  CHECK(full.magnitude == Approx(-12.7).margin(0.3));
  const Guide quarter =
      sky::guide_at(GuideBody::moon, place_at(44.27056, -71.30327), utc("2027-01-15T03:00:00Z"));
  CHECK(quarter.magnitude == Approx(-9.8).margin(0.4));
}

TEST_CASE("the best guide is the moon, then Polaris, then what is bright and low", "[sky]") {
  const auto north = sky::guides_now(place_at(44.27056, -71.30327), utc("2027-01-15T03:00:00Z"));
  REQUIRE(north.size() >= 4);
  CHECK(north[0].body == GuideBody::moon);
  CHECK(north[1].body == GuideBody::polaris);
  CHECK(north[2].body == GuideBody::jupiter);
  CHECK(north[3].body == GuideBody::sirius);
  // On a moonless evening near the equator Jupiter (-2.0) is 54 degrees up, Canopus (-0.7) 26,
  // Sirius (-1.5) 50: a magnitude for 30 degrees makes these -0.2, 0.2 and 0.2.
  const auto south = sky::guides_now(place_at(1.2833, 103.8333), utc("2026-04-10T13:00:00Z"));
  REQUIRE(south.size() >= 3);
  CHECK(south[0].body == GuideBody::jupiter);
  const std::set next{south[1].body, south[2].body};
  CHECK(next == std::set{GuideBody::canopus, GuideBody::sirius});
}

TEST_CASE("a guide does not depend on earlier questions", "[sky]") {
  const Position position = place_at(-33.9, 18.4);
  const UtcTime time = utc("2026-07-20T19:00:00Z");
  for (int body = 0; body < sky::kGuideBodies; ++body) {
    INFO(body);
    const auto which = static_cast<GuideBody>(body);
    sky::guide_at(which, position, time - std::chrono::seconds(1));
    const Guide after_near = sky::guide_at(which, position, time);
    sky::guide_at(which, position, time - std::chrono::days(300));
    CHECK(after_near == sky::guide_at(which, position, time));
  }
}
