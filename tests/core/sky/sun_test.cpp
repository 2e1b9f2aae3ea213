#include "core/sky/sun.hpp"

#include "core/sky/apparent_place.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/utc_text.hpp"

#include <cmath>
#include <filesystem>
#include <numbers>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::utc;

namespace {

constexpr double kRadian = std::numbers::pi / 180.0;

Position sky_at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

// The lines of a table that begin with a date, as fields.
std::vector<std::vector<std::string>> dated_rows(const std::filesystem::path& path) {
  std::vector<std::vector<std::string>> rows;
  for (const std::string& line : test::read_lines(path)) {
    if (!line.empty() && line[0] >= '0' && line[0] <= '9') rows.push_back(test::split(line, ','));
  }
  return rows;
}

Position place_of(const std::vector<std::string>& row) {
  return sky_at(std::stod(row[1]), std::stod(row[2]));
}

double minutes_apart(UtcTime time, const std::string& hour_and_minute) {
  const double of_day = std::chrono::duration<double, std::ratio<60>>(
                            time - std::chrono::floor<std::chrono::days>(time))
                            .count();
  const double wanted =
      std::stod(hour_and_minute.substr(0, 2)) * 60.0 + std::stod(hour_and_minute.substr(3, 2));
  return std::fabs(std::remainder(of_day - wanted, 1440.0));
}

// The sun's azimuth, and its zenith distance through air of 1000 hPa.
void check_place(const Position& place, const std::string& time, double azimuth_deg,
                 double zenith_deg) {
  const sky::SunPlace sun = sky::sun_at(place, utc(time));
  CHECK((sun.azimuth - Bearing<True>::degrees(azimuth_deg)).size_deg() <= 0.01);
  const double lifted_at_1000_hpa =
      sun.elevation_deg + (sun.apparent_elevation_deg - sun.elevation_deg) * (1000.0 / 1010.0);
  CHECK(lifted_at_1000_hpa == Approx(90.0 - zenith_deg).margin(0.002));
}

// The table's days are those of UTC.
UtcTime midnight(const std::vector<std::string>& row) {
  return utc(row[0].substr(0, 10) + "T00:00:00Z");
}

// Both events match the US Naval Observatory, which rounds to whole minutes.
void check_day(const std::vector<std::string>& row) {
  INFO(row[0] << ' ' << row[1] << ' ' << row[2] << ' ' << row[3]);
  const sky::SunTimes times = sky::sun_times(place_of(row), midnight(row));
  if (row[3] == "NORMAL") {
    constexpr double kRounding_min = 1.0;
    REQUIRE(times.sunrise);
    REQUIRE(times.sunset);
    if (!row[4].empty()) CHECK(minutes_apart(*times.sunrise, row[4]) <= kRounding_min);
    if (!row[5].empty()) CHECK(minutes_apart(*times.sunset, row[5]) <= kRounding_min);
    return;
  }
  const UtcTime day_end = midnight(row) + std::chrono::hours(24);
  CHECK(times.up_now == (row[3] == "ALL_DAY"));
  CHECK((!times.sunrise || *times.sunrise > day_end));
  CHECK((!times.sunset || *times.sunset > day_end));
}

}  // namespace

// Source: NREL's reference implementation of its Solar Position Algorithm (NREL/TP-560-34302). It
// was run with delta T 0, which moves the sun by up to 0.0008 degree, at 1000 hPa, and lifts the
// sun by air from -0.8333 degree up as we do. License of this table and of the Naval Observatory's
// below: test data of the library solarpositioning, MIT.
TEST_CASE("the sun is where the Solar Position Algorithm puts it, in any clone", "[sky]") {
  const struct {
    const char* time;
    double latitude_deg, longitude_deg, azimuth_deg, zenith_deg;
  } rows[] = {{"1910-03-15T09:30:00Z", -36.840556, 174.74, 237.156205, 122.642657},
              {"2010-06-15T00:30:00Z", -36.840556, 174.74, 357.723597, 60.142480},
              {"2110-06-15T15:30:00Z", -36.840556, 174.74, 94.972053, 137.541022},
              {"1910-09-15T21:30:00Z", -15.793889, -47.882778, 271.437440, 96.419654},
              {"2010-12-15T12:30:00Z", -15.793889, -47.882778, 107.808808, 37.525486},
              {"2210-03-15T03:30:00Z", -15.793889, -47.882778, 172.442915, 161.655871},
              {"1910-03-15T18:30:00Z", 78.22, 15.65, 290.017862, 96.393391},
              {"2010-06-15T09:30:00Z", 78.22, 15.65, 155.483089, 55.833654},
              {"2110-09-15T00:30:00Z", 78.22, 15.65, 24.440547, 97.523546},
              {"2210-09-15T15:30:00Z", 78.22, 15.65, 250.259145, 82.745940},
              {"1910-12-15T06:30:00Z", 1.283333, 103.833333, 220.529913, 32.940660},
              {"2010-12-15T21:30:00Z", 1.283333, 103.833333, 114.539274, 111.106866},
              {"2210-03-15T12:30:00Z", 1.283333, 103.833333, 268.061389, 109.151338}};
  for (const auto& row : rows) {
    INFO(row.time << ' ' << row.latitude_deg);
    check_place(sky_at(row.latitude_deg, row.longitude_deg), row.time, row.azimuth_deg,
                row.zenith_deg);
  }
}

// Source: US Naval Observatory, tables of sunrise and sunset in UTC, to whole minutes.
TEST_CASE("the sun rises and sets at the Naval Observatory's times, in any clone", "[sky]") {
  for (const char* row : {"2020-01-05T12:00:00Z,61.216667,-149.866667,NORMAL,19:11,00:57",
                          "2020-03-25T12:00:00Z,61.216667,-149.866667,NORMAL,15:43,04:27",
                          "2020-06-25T12:00:00Z,61.216667,-149.866667,NORMAL,12:22,07:42",
                          "2020-10-05T12:00:00Z,61.216667,-149.866667,NORMAL,16:18,03:19",
                          "2020-01-05T12:00:00Z,-36.833333,174.800000,NORMAL,17:09,07:44",
                          "2020-03-25T12:00:00Z,-36.833333,174.800000,NORMAL,18:29,06:25",
                          "2020-06-25T12:00:00Z,-36.833333,174.800000,NORMAL,19:34,05:13",
                          "2020-10-05T12:00:00Z,-36.833333,174.800000,NORMAL,17:49,06:28",
                          "2020-01-05T12:00:00Z,-15.800000,-47.850000,NORMAL,08:46,21:48",
                          "2020-03-25T12:00:00Z,-15.800000,-47.850000,NORMAL,09:16,21:18",
                          "2020-06-25T12:00:00Z,-15.800000,-47.850000,NORMAL,09:38,20:50",
                          "2020-10-05T12:00:00Z,-15.800000,-47.850000,NORMAL,08:51,21:09",
                          "2020-01-05T12:00:00Z,1.283333,103.833333,NORMAL,23:09,11:11",
                          "2020-03-25T12:00:00Z,1.283333,103.833333,NORMAL,23:07,11:14",
                          "2020-06-25T12:00:00Z,1.283333,103.833333,NORMAL,23:02,11:13",
                          "2020-10-05T12:00:00Z,1.283333,103.833333,NORMAL,22:50,10:56"}) {
    check_day(test::split(row, ','));
  }
}

// Source: the same, beyond the polar circles.
TEST_CASE("polar days and nights match the Naval Observatory, in any clone", "[sky]") {
  for (const char* row : {"2020-01-15T12:00:00Z,78.216667,15.633333,ALL_NIGHT,,",
                          "2020-02-25T12:00:00Z,78.216667,15.633333,NORMAL,08:11,14:13",
                          "2020-03-15T12:00:00Z,78.216667,15.633333,NORMAL,05:27,16:49",
                          "2020-06-15T12:00:00Z,78.216667,15.633333,ALL_DAY,,",
                          "2020-10-05T12:00:00Z,78.216667,15.633333,NORMAL,06:06,15:23",
                          "2020-01-15T12:00:00Z,-77.850000,166.666667,ALL_DAY,,",
                          "2020-02-25T12:00:00Z,-77.850000,166.666667,NORMAL,15:27,10:48",
                          "2020-03-15T12:00:00Z,-77.850000,166.666667,NORMAL,18:13,07:54",
                          "2020-06-15T12:00:00Z,-77.850000,166.666667,ALL_NIGHT,,",
                          "2020-10-05T12:00:00Z,-77.850000,166.666667,NORMAL,16:46,08:34"}) {
    check_day(test::split(row, ','));
  }
}

// Source: the whole table, 512 rows from 1910 to 2210 at four places.
TEST_CASE("the sun is where the Solar Position Algorithm puts it, all rows", "[sky]") {
  const auto path = test::reference("checks/spa_azimuth_zenith.csv");
  if (!path) return;
  const auto rows = dated_rows(*path);
  REQUIRE(rows.size() == 512);
  for (const auto& row : rows) {
    INFO(row[0] << ' ' << row[1] << ' ' << row[2]);
    check_place(place_of(row), row[0], std::stod(row[3]), std::stod(row[4]));
  }
}

// Source: PyEphem 4.1.4 (libastro), no air, 64 rows of 2025 to 2029 at eight places.
TEST_CASE("the sun is where an independent ephemeris puts it", "[sky]") {
  const auto path = test::reference("checks/sun_ephem_check.csv");
  if (!path) return;
  const auto rows = dated_rows(*path);
  REQUIRE(rows.size() == 64);
  for (const auto& row : rows) {
    INFO(row[0] << ' ' << row[1] << ' ' << row[2]);
    const sky::SunPlace sun = sky::sun_at(place_of(row), utc(row[0]));
    const auto azimuth = Bearing<True>::degrees(std::stod(row[3]));
    CHECK((sun.azimuth - azimuth).size_deg() <= 0.001);
    CHECK(sun.elevation_deg == Approx(std::stod(row[4])).margin(0.001));
  }
}

// Source: US Naval Observatory, tables of sunrise and sunset; the second table is from beyond the
// polar circle.
TEST_CASE("the sun rises and sets at the Naval Observatory's times, all rows", "[sky]") {
  const auto path = test::reference("checks/usno_reference_testdata.csv");
  if (!path) return;
  const auto rows = dated_rows(*path);
  REQUIRE(rows.size() >= 140);
  for (const auto& row : rows) check_day(row);
}

TEST_CASE("polar days and nights have neither sunrise nor sunset", "[sky]") {
  const auto path = test::reference("checks/usno_reference_testdata_extreme.csv");
  if (!path) return;
  const auto rows = dated_rows(*path);
  REQUIRE(rows.size() >= 70);
  for (const auto& row : rows) check_day(row);
}

TEST_CASE("air lifts the sun by the almanac's figures", "[sky]") {
  // Meeus, Astronomical Algorithms, 2nd ed., example 16.a: true 33.2 arc minutes are lifted by
  // 24.6 arc minutes (from memory).
  CHECK(sky::refraction_deg(33.2 / 60.0) * 60.0 == Approx(24.6).margin(0.2));
  // Bennett 1982 (Meeus eq. 16.3) asks with the lifted elevation: cot(h + 7.31 / (h + 4.4)) arc
  // minutes. The two agree within 4 arc seconds (Meeus).
  for (const double lifted_deg : {1.0, 5.0, 10.0, 45.0}) {
    const double bennett_deg =
        1.0 / std::tan((lifted_deg + 7.31 / (lifted_deg + 4.4)) * kRadian) / 60.0;
    CHECK(sky::refraction_deg(lifted_deg - bennett_deg) ==
          Approx(bennett_deg).margin(4.0 / 3600.0));
  }
  CHECK(sky::refraction_deg(90.0) == Approx(0.0).margin(1e-4));
  CHECK(sky::refraction_deg(-1.0) == 0.0);
}

TEST_CASE("the shadow points away from the sun", "[sky]") {
  // The row 2025-03-20T12:00Z of PyEphem 4.1.4 at 44.27056 N 71.30327 W: sun 101.9074, 12.0165.
  const sky::Shadow shadow =
      sky::plumb_shadow(sky_at(44.27056, -71.30327), utc("2025-03-20T12:00:00Z"));
  CHECK(!shadow.why_none);
  REQUIRE(shadow.direction);
  CHECK(shadow.direction->degrees() == Approx(281.9074).margin(0.001));
  REQUIRE(shadow.direction_in_5_minutes);
  // The sun goes right in the northern middle latitudes, and the shadow with it.
  const double turned_deg = (*shadow.direction_in_5_minutes - *shadow.direction).clockwise_deg();
  CHECK(turned_deg == Approx(5.0 * shadow.error_per_clock_minute_deg).margin(0.02));
}

// Source: the hour angle grows by 15 degrees an hour; dA/dH = (sin lat cos h - cos lat sin h cos A)
// / cos h with the azimuth A from the north (any text of spherical astronomy).
TEST_CASE("a clock error turns the azimuth at the sun's speed", "[sky]") {
  for (const char* time :
       {"2026-06-21T15:00:00Z", "2026-06-21T19:00:00Z", "2026-12-21T21:00:00Z"}) {
    for (const double latitude_deg : {20.0, 45.0, 60.0}) {
      INFO(time << ' ' << latitude_deg);
      const sky::Shadow shadow = sky::plumb_shadow(sky_at(latitude_deg, -100.0), utc(time));
      const double h = shadow.sun.elevation_deg * kRadian;
      const double azimuth = shadow.sun.azimuth.degrees() * kRadian;
      const double latitude = latitude_deg * kRadian;
      const double rate = (std::sin(latitude) * std::cos(h) -
                           std::cos(latitude) * std::sin(h) * std::cos(azimuth)) /
                          std::cos(h);
      CHECK(shadow.error_per_clock_minute_deg ==
            Approx(std::fabs(rate) * 0.25).epsilon(0.01).margin(0.001));
    }
  }
}

TEST_CASE("a missing shadow has its reason", "[sky]") {
  // Singapore at the March equinox of 2025, local noon (PyEphem: 05:00Z is about noon there).
  const Position singapore = sky_at(1.2833, 103.8333);
  const sky::Shadow noon = sky::plumb_shadow(singapore, utc("2025-03-20T05:12:00Z"));
  CHECK(noon.why_none == sky::NoShadow::Overhead);
  CHECK(!noon.direction);
  // Hours later the sun is down.
  const sky::Shadow night = sky::plumb_shadow(singapore, utc("2025-03-20T16:00:00Z"));
  CHECK(night.why_none == sky::NoShadow::Night);
  CHECK(!night.direction_in_5_minutes);
  // Two minutes after the Naval Observatory's sunrise at Anchorage of 2020-01-05.
  const sky::Shadow dawn =
      sky::plumb_shadow(sky_at(61.216667, -149.866667), utc("2020-01-05T19:13:00Z"));
  CHECK(dawn.why_none == sky::NoShadow::TooLow);
}

TEST_CASE("the shadow's change time is where its state changes", "[sky]") {
  for (const char* time :
       {"2025-03-20T05:12:00Z", "2025-03-20T16:00:00Z", "2025-03-20T02:00:00Z"}) {
    INFO(time);
    const Position singapore = sky_at(1.2833, 103.8333);
    const auto usable = [&](UtcTime when) {
      return !sky::why_no_shadow(sky::sun_at(singapore, when));
    };
    const sky::SunTimes times = sky::sun_times(singapore, utc(time));
    REQUIRE(times.shadow_changes);
    const bool now = usable(utc(time));
    CHECK(usable(*times.shadow_changes - std::chrono::seconds(2)) == now);
    CHECK(usable(*times.shadow_changes + std::chrono::seconds(2)) != now);
  }
  const sky::SunTimes polar_night =
      sky::sun_times(sky_at(78.2167, 15.6333), utc("2020-12-15T12:00:00Z"));
  CHECK(!polar_night.shadow_changes);
}

TEST_CASE("the answer does not depend on earlier questions", "[sky]") {
  const Position place = sky_at(44.27056, -71.30327);
  const UtcTime time = utc("2026-07-02T18:00:00Z");
  sky::sun_at(place, time - std::chrono::seconds(1));
  const sky::SunPlace after_near = sky::sun_at(place, time);
  sky::sun_at(place, time - std::chrono::days(300));
  const sky::SunPlace after_far = sky::sun_at(place, time);
  CHECK(after_near.azimuth == after_far.azimuth);
  CHECK(after_near.elevation_deg == after_far.elevation_deg);
}
