#include "core/sky/sun_marks.hpp"

#include "tests/support/utc_text.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using sky::ShadowLies;
using sky::SunMark;
using test::utc;

namespace {

std::vector<SunMark> marks_at(double latitude_deg, double longitude_deg, const char* from,
                              double heading_deg) {
  return sky::sun_marks(Position::at_deg(latitude_deg, longitude_deg).value(), utc(from),
                        Bearing<True>::degrees(heading_deg));
}

double seconds_apart(UtcTime one, UtcTime other) {
  return std::fabs(std::chrono::duration<double>(one - other).count());
}

struct Expected {
  const char* time;  // whole seconds
  ShadowLies lies;
  double turn_deg_per_min;
};

// Half a second of rounding, one of bisection, and 0.001 degree of the sun.
void check_marks(const std::vector<SunMark>& marks, const std::vector<Expected>& expected) {
  REQUIRE(marks.size() == expected.size());
  for (std::size_t i = 0; i < marks.size(); ++i) {
    INFO(expected[i].time);
    const double turn = expected[i].turn_deg_per_min;
    CHECK(marks[i].lies == expected[i].lies);
    CHECK(seconds_apart(marks[i].time, utc(expected[i].time)) <=
          1.5 + 0.001 / std::fabs(turn) * 60.0);
    CHECK(marks[i].turn_deg_per_min == Approx(turn).margin(0.0015));
  }
}

}  // namespace

// Source: PyEphem 4.1.4 (libastro), no air, in steps of a minute and by bisection; altitudes by the
// same with Saemundsson's refraction.
TEST_CASE("the shadow marks the heading when an independent ephemeris says so", "[sky]") {
  using enum ShadowLies;
  check_marks(marks_at(44.27056, -71.30327, "2026-07-02T14:00:00Z", 37.0),
              {{"2026-07-02T15:06:56Z", Left, 0.362}, {"2026-07-02T17:53:33Z", Along, 0.481}});
  check_marks(marks_at(40.0, -105.0, "2026-11-29T15:00:00Z", 222.0),
              {{"2026-11-29T15:22:46Z", Right, 0.188}, {"2026-11-29T21:43:20Z", Against, 0.202}});
  // South of the equator the sun goes through the north and the shadow turns counterclockwise.
  check_marks(marks_at(-33.9, 18.4, "2026-12-10T05:00:00Z", 300.0),
              {{"2026-12-10T10:12:14Z", Left, -0.953}, {"2026-12-10T11:51:26Z", Against, -0.436}});
  // So it does in June at 10 N, where the noon sun stands in the north.
  check_marks(marks_at(10.0, -67.0, "2026-06-10T10:00:00Z", 60.0),
              {{"2026-06-10T14:38:24Z", Against, -0.178}, {"2026-06-10T17:00:19Z", Right, -0.740}});
}

// Of the same source.
TEST_CASE("the shadow marks nothing while the sun is too low or overhead", "[sky]") {
  using enum ShadowLies;
  // The shadow of 05:05:40Z lies along the heading, but the sun is 0.7 degree up.
  check_marks(marks_at(-36.84, 174.74, "2026-06-20T20:00:00Z", 120.0),
              {{"2026-06-20T22:22:43Z", Right, -0.225}});
  // That of 05:11:45Z is square to it, but the sun is 89 degrees up.
  check_marks(marks_at(1.2833, 103.8333, "2026-03-20T23:30:00Z", 88.0),
              {{"2026-03-21T06:56:48Z", Along, 0.024}});
}

// Of the same source: the sun of 2 December is too low after 20:00Z.
TEST_CASE("a day without a mark gives those of the next day", "[sky]") {
  check_marks(marks_at(44.27056, -71.30327, "2026-12-02T20:00:00Z", 10.0),
              {{"2026-12-03T17:14:51Z", ShadowLies::Along, 0.249}});
  CHECK(marks_at(78.2167, 15.6333, "2026-12-15T12:00:00Z", 10.0).empty());
}

// Of the same source: Tromso, where the sun does not set.
TEST_CASE("a sun that does not set marks the heading all around the day", "[sky]") {
  using enum ShadowLies;
  check_marks(marks_at(69.65, 18.96, "2026-06-20T23:00:00Z", 200.0),
              {{"2026-06-21T00:13:09Z", Along, 0.228},
               {"2026-06-21T06:45:17Z", Right, 0.253},
               {"2026-06-21T11:49:26Z", Against, 0.310},
               {"2026-06-21T17:36:25Z", Left, 0.225}});
}

// Source: NREL's reference implementation of its Solar Position Algorithm (NREL/TP-560-34302), the
// rows of sun_test.cpp by day: at the time of the row the shadow lies away from the row's azimuth.
TEST_CASE("the shadow marks the heading when the Solar Position Algorithm says so", "[sky]") {
  const struct {
    const char* time;
    double latitude_deg, longitude_deg, azimuth_deg;
  } rows[] = {{"2010-06-15T00:30:00Z", -36.840556, 174.74, 357.723597},
              {"2010-12-15T12:30:00Z", -15.793889, -47.882778, 107.808808},
              {"2010-06-15T09:30:00Z", 78.22, 15.65, 155.483089},
              {"2210-09-15T15:30:00Z", 78.22, 15.65, 250.259145},
              {"1910-12-15T06:30:00Z", 1.283333, 103.833333, 220.529913}};
  for (const auto& row : rows) {
    for (const ShadowLies lies :
         {ShadowLies::Along, ShadowLies::Right, ShadowLies::Against, ShadowLies::Left}) {
      INFO(row.time << ' ' << static_cast<int>(lies));
      const UtcTime time = utc(row.time);
      // The shadow is `lies` quarter turns clockwise of the heading.
      const double heading_deg = row.azimuth_deg + 180.0 - 90.0 * static_cast<int>(lies);
      const auto marks =
          sky::sun_marks(Position::at_deg(row.latitude_deg, row.longitude_deg).value(),
                         time - std::chrono::minutes(47), Bearing<True>::degrees(heading_deg));
      const auto mark = std::find_if(marks.begin(), marks.end(),
                                     [&](const SunMark& each) { return each.lies == lies; });
      REQUIRE(mark != marks.end());
      CHECK(seconds_apart(mark->time, time) <=
            1.0 + 0.01 / std::fabs(mark->turn_deg_per_min) * 60.0);
    }
  }
}
