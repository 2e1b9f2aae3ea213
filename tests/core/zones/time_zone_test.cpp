#include "core/zones/time_zone.hpp"

#include "tests/support/utc_text.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using std::chrono::hours;
using std::chrono::local_days;
using std::chrono::minutes;
using std::chrono::seconds;
using std::chrono::year;
using test::utc;

namespace {

// US Pacific time in 2026: 15 U.S.C. 260a: from the second Sunday of March to the first Sunday of
// November, at 2 in the morning.
TimeZone pacific_2026() {
  return {.name = "America/Los_Angeles",
          .periods = {{utc("2025-11-02T09:00:00Z"), hours(-8), "PST"},
                      {utc("2026-03-08T10:00:00Z"), hours(-7), "PDT"},
                      {utc("2026-11-01T09:00:00Z"), hours(-8), "PST"}}};
}

local_days on(int y, unsigned m, unsigned d) {
  return local_days(year(y) / static_cast<int>(m) / static_cast<int>(d));
}

}  // namespace

TEST_CASE("clocks jump from 2 to 3 in March and from 2 back to 1 in November") {
  const TimeZone zone = pacific_2026();
  const auto shown = [&](const char* text) { return local_time(utc(text), zone); };
  CHECK(shown("2026-03-08T09:59:59Z") == on(2026, 3, 8) + hours(1) + minutes(59) + seconds(59));
  CHECK(shown("2026-03-08T10:00:00Z") == on(2026, 3, 8) + hours(3));
  CHECK(shown("2026-11-01T08:59:59Z") == on(2026, 11, 1) + hours(1) + minutes(59) + seconds(59));
  CHECK(shown("2026-11-01T09:00:00Z") == on(2026, 11, 1) + hours(1));
  CHECK(period_at(zone, utc("2026-03-08T09:59:59Z")).short_name == "PST");
  CHECK(period_at(zone, utc("2026-03-08T10:00:00Z")).short_name == "PDT");
  // What is before the first period has its offset.
  CHECK(period_at(zone, utc("1999-07-02T00:00:00Z")).short_name == "PST");
}

TEST_CASE("after 5 in the afternoon in California it is not tomorrow yet") {
  const TimeZone zone = pacific_2026();
  CHECK(local_day(utc("2026-07-03T00:30:00Z"), zone) == on(2026, 7, 2));
  CHECK(local_day(utc("2026-07-03T06:59:59Z"), zone) == on(2026, 7, 2));
  CHECK(local_day(utc("2026-07-03T07:00:00Z"), zone) == on(2026, 7, 3));
  CHECK(local_day(utc("2026-12-03T07:59:59Z"), zone) == on(2026, 12, 2));
  CHECK(local_day(utc("2026-07-03T00:30:00Z"), utc_zone()) == on(2026, 7, 3));
  CHECK(period_at(utc_zone(), utc("2026-07-03T00:30:00Z")).short_name == "UTC");
}

TEST_CASE("noon of a day is within that day, also when the clocks change") {
  const TimeZone zone = pacific_2026();
  CHECK(noon_of(on(2026, 7, 2), zone) == utc("2026-07-02T19:00:00Z"));
  CHECK(noon_of(on(2026, 3, 8), zone) == utc("2026-03-08T19:00:00Z"));
  CHECK(noon_of(on(2026, 11, 1), zone) == utc("2026-11-01T20:00:00Z"));
  // The earliest clocks of the earth, Kiribati's.
  const TimeZone line{.name = "Pacific/Kiritimati", .periods = {{{}, hours(14), "+14"}}};
  CHECK(noon_of(on(2026, 7, 2), line) == utc("2026-07-01T22:00:00Z"));
  CHECK(local_day(noon_of(on(2026, 7, 2), line), line) == on(2026, 7, 2));
}
