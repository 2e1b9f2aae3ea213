#include "core/text/iso_time.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

UtcTime utc(int year, unsigned month, unsigned day, milliseconds time) {
  return UtcTime(std::chrono::sys_days(std::chrono::year(year) / month / day)) + time;
}

}  // namespace

// The examples of RFC 3339, section 5.8; the leap second becomes the next minute's first.
TEST_CASE("times of RFC 3339 are read", "[iso_time]") {
  using std::chrono::hours;
  using std::chrono::minutes;
  CHECK(parse_iso_utc("1985-04-12T23:20:50.52Z") ==
        utc(1985, 4, 12, hours(23) + minutes(20) + milliseconds(50'520)));
  CHECK(parse_iso_utc("1996-12-19T16:39:57-08:00") ==
        utc(1996, 12, 20, hours(0) + minutes(39) + milliseconds(57'000)));
  CHECK(parse_iso_utc("1990-12-31T23:59:60Z") == utc(1991, 1, 1, milliseconds(0)));
  CHECK(parse_iso_utc("1937-01-01T12:00:27.87+00:20") ==
        utc(1937, 1, 1, hours(11) + minutes(40) + milliseconds(27'870)));
  CHECK(parse_iso_utc("2026-07-02T18:00:00") == utc(2026, 7, 2, hours(18)));
  CHECK(parse_iso_utc("2026-07-02T18:00:00.1234567Z") ==
        utc(2026, 7, 2, hours(18)) + milliseconds(123));
}

TEST_CASE("an invalid time is rejected", "[iso_time]") {
  for (const char* text :
       {"", "2026-07-02", "2026-02-30T00:00:00Z", "2026-07-02T24:00:00Z", "2026-07-02T18:00Z",
        "2026-07-02T18:00:00.Z", "2026-07-02T18:00:00Z ", "2026-07-02T18:00:00+2", "-026-07-02T",
        "2026-07-02 18:00:00Z", "2026-7-2T18:00:00Z", "2026-07-02T18:00:61Z"}) {
    INFO(text);
    CHECK_FALSE(parse_iso_utc(text));
  }
}

TEST_CASE("a written time reads back unchanged", "[iso_time]") {
  for (const UtcTime time :
       {utc(2026, 7, 2, milliseconds(1)), utc(1969, 12, 31, milliseconds(86'399'999)),
        utc(0, 1, 1, milliseconds(0)), utc(9999, 12, 31, milliseconds(500))}) {
    INFO(iso_utc(time));
    CHECK(parse_iso_utc(iso_utc(time)) == time);
  }
  CHECK(iso_utc(utc(2026, 7, 2, milliseconds(65'250))) == "2026-07-02T00:01:05.250Z");
  CHECK(iso_utc(utc(2026, 7, 2, milliseconds(65'000))) == "2026-07-02T00:01:05Z");
}

TEST_CASE("days and whole seconds print, and days read back", "[iso_time]") {
  const UtcTime time = utc(2026, 7, 2, milliseconds(65'999));
  CHECK(iso_utc_seconds(time) == "2026-07-02T00:01:05Z");
  CHECK(iso_day(time) == "2026-07-02");
  CHECK(iso_day(utc(1969, 12, 31, milliseconds(1))) == "1969-12-31");
  CHECK(parse_iso_day("2028-02-29") == std::chrono::sys_days(std::chrono::year(2028) / 2 / 29));
  for (const char* text : {"", "2026-02-30", "2026-7-02", "2026-07-02T", "20260702"}) {
    INFO(text);
    CHECK_FALSE(parse_iso_day(text));
  }
}
