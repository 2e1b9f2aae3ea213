#include "platform/time_zones.hpp"

#include "tests/support/utc_text.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;
using test::utc;

namespace {

struct Clock {
  std::chrono::seconds ahead;
  std::string short_name;
  bool operator==(const Clock&) const = default;
};

Clock clock_in(const char* zone, const char* time) {
  const auto data = platform::time_zone(zone);
  REQUIRE(data);
  const ZonePeriod& period = period_at(*data, utc(time));
  return {period.ahead, period.short_name};
}

}  // namespace

// 15 U.S.C. 260a: daylight time from the second Sunday of March to the first Sunday of November, at
// 2 in the morning of the old time: 10:00 and 9:00 UTC on the Pacific coast.
TEST_CASE("a zone has its daylight time to the second, also beyond the year 2037") {
  const char* pacific = "America/Los_Angeles";
  CHECK(clock_in(pacific, "2026-03-08T09:59:59Z") == Clock{hours(-8), "PST"});
  CHECK(clock_in(pacific, "2026-03-08T10:00:00Z") == Clock{hours(-7), "PDT"});
  CHECK(clock_in(pacific, "2026-11-01T08:59:59Z") == Clock{hours(-7), "PDT"});
  CHECK(clock_in(pacific, "2026-11-01T09:00:00Z") == Clock{hours(-8), "PST"});
  // The tz database's tables end in 2037; from then on its rule counts. In 2050 March 13 is the
  // second Sunday.
  CHECK(clock_in(pacific, "2050-03-13T09:59:59Z") == Clock{hours(-8), "PST"});
  CHECK(clock_in(pacific, "2050-03-13T10:00:00Z") == Clock{hours(-7), "PDT"});
  // From memory: in 2005 it began on the first Sunday of April.
  CHECK(clock_in(pacific, "2005-04-03T09:59:59Z") == Clock{hours(-8), "PST"});
  CHECK(clock_in(pacific, "2005-04-03T10:00:00Z") == Clock{hours(-7), "PDT"});
}

// From memory: Nepal 5:45, Eucla 8:45 and Newfoundland 3:30 behind with daylight time; Lord Howe
// Island shifts by half an hour; Arizona has no daylight time.
TEST_CASE("odd offsets are right") {
  CHECK(clock_in("Asia/Kathmandu", "2026-07-02T00:00:00Z") ==
        Clock{hours(5) + minutes(45), "+0545"});
  CHECK(clock_in("Australia/Eucla", "2026-07-02T00:00:00Z").ahead == hours(8) + minutes(45));
  CHECK(clock_in("America/St_Johns", "2026-01-02T00:00:00Z") ==
        Clock{-(hours(3) + minutes(30)), "NST"});
  CHECK(clock_in("America/St_Johns", "2026-07-02T00:00:00Z") ==
        Clock{-(hours(2) + minutes(30)), "NDT"});
  CHECK(clock_in("Australia/Lord_Howe", "2026-01-02T00:00:00Z").ahead == hours(11));
  CHECK(clock_in("Australia/Lord_Howe", "2026-07-02T00:00:00Z").ahead == hours(10) + minutes(30));
  CHECK(clock_in("America/Phoenix", "2026-07-02T00:00:00Z") == Clock{hours(-7), "MST"});
  CHECK(clock_in("America/Phoenix", "2026-01-02T00:00:00Z") == Clock{hours(-7), "MST"});
}

TEST_CASE("a zone's periods rise, begin with 1970 and end with 2100") {
  for (const char* name : {"America/New_York", "Africa/Casablanca", "Europe/Dublin", "UTC"}) {
    const auto zone = platform::time_zone(name);
    REQUIRE(zone);
    INFO(name);
    CHECK(zone->name == name);
    CHECK(zone->periods.front().begin == UtcTime{});
    CHECK(zone->periods.size() < 400);
    for (std::size_t i = 1; i < zone->periods.size(); ++i) {
      CHECK(zone->periods[i - 1].begin < zone->periods[i].begin);
    }
    CHECK(zone->periods.back().begin < utc("2101-01-01T00:00:00Z"));
  }
}

TEST_CASE("an unknown zone has no clocks") {
  CHECK_FALSE(platform::time_zone("Mars/Olympus"));
  CHECK_FALSE(platform::time_zone(""));
}
