#include "core/nmea/dates.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using namespace std::chrono;

namespace {

const sys_days kFloor = sys_days(year(2026) / 11 / 25);

Date said(int y, unsigned m, unsigned d) {
  return Date{year(y), month(m), day(d)};
}

}  // namespace

// The receiver of gp-320fw-2019-04-07-coldboot.log, restarted on 2019-04-07, the day of the second
// rollover, sent 1999-08-22, the day of the first: 7168 days earlier.
TEST_CASE("a receiver one era behind is corrected and reported") {
  const auto repaired = repair_date(said(1999, 8, 22), sys_days(year(2019) / 4 / 7));
  REQUIRE(repaired);
  CHECK(repaired->date == sys_days(year(2019) / 4 / 7));
  CHECK(repaired->said == sys_days(year(1999) / 8 / 22));
  CHECK(repaired->weeks_shifted == 1024);
}

TEST_CASE("dates are moved into the era that begins a day before the floor") {
  for (int era = -4; era <= 4; ++era) {
    for (const int days_past : {-1, 0, 1, 3584, 7166}) {
      const sys_days truth = kFloor + days(days_past);
      const auto repaired = repair_date(Date(truth - era * kEra), kFloor);
      REQUIRE(repaired);
      CHECK(repaired->date == truth);
      CHECK(repaired->weeks_shifted == 1024 * era);
    }
  }
  CHECK(repair_date(Date(kFloor - days(2)), kFloor)->date == kFloor + days(7166));
  CHECK(repair_date(Date(kFloor + days(7167)), kFloor)->date == kFloor - days(1));
  CHECK_FALSE(repair_date(said(2026, 2, 30), kFloor));
}

TEST_CASE("a date far beyond the floor is not corrected") {
  const auto saved = [](int days_past) {
    return date_worth_saving(RepairedDate{kFloor + days(days_past), {}, 0}, kFloor);
  };
  CHECK_FALSE(saved(-1));
  CHECK_FALSE(saved(0));
  CHECK(saved(1) == kFloor + days(1));
  CHECK(saved(3584) == kFloor + days(3584));
  CHECK_FALSE(saved(3585));
}

TEST_CASE("a date is trusted when several epochs agree") {
  DateKeeper keeper(kFloor);
  const Date today = said(2026, 12, 1);
  for (int second = 0; second < DateKeeper::kAgreeingEpochs; ++second) {
    CHECK_FALSE(keeper.trusted());
    keeper.take(today, hours(12) + seconds(second));
    keeper.take(today, hours(12) + seconds(second));  // RMC and ZDA of one epoch count once
  }
  REQUIRE(keeper.trusted());
  CHECK(keeper.trusted()->date == sys_days(today));
  CHECK(keeper.trusted()->weeks_shifted == 0);

  // One that disagrees replaces it only once it is agreed on too.
  const Date other = said(2027, 3, 1);
  keeper.take(other, hours(12));
  CHECK(keeper.trusted()->date == sys_days(today));
  for (int second = 1; second < DateKeeper::kAgreeingEpochs; ++second) {
    keeper.take(other, hours(12) + seconds(second));
  }
  CHECK(keeper.trusted()->date == sys_days(other));
}

TEST_CASE("jumping dates are never trusted") {
  DateKeeper keeper(kFloor);
  for (int i = 0; i < 40; ++i)
    keeper.take(said(2026, 12, i % 2 == 0 ? 1 : 2), hours(12) + seconds(i));
  CHECK_FALSE(keeper.trusted());
  for (int i = 0; i < 40; ++i) keeper.take(said(2026, 12, 1), hours(12) - seconds(i));
  CHECK_FALSE(keeper.trusted());
}

TEST_CASE("a time of day is dated across midnight") {
  DateKeeper keeper(kFloor);
  CHECK_FALSE(keeper.moment(hours(1)));
  for (int second = 55; second < 60; ++second) {
    keeper.take(said(2026, 12, 31), hours(23) + minutes(59) + seconds(second));
  }
  CHECK(keeper.moment(seconds(1)) == sys_days(year(2027) / 1 / 1) + seconds(1));
  CHECK(keeper.moment(hours(23)) == sys_days(year(2026) / 12 / 31) + hours(23));
  keeper.take(said(2027, 1, 1), seconds(0));
  CHECK(keeper.trusted()->date == sys_days(year(2027) / 1 / 1));
  CHECK(keeper.moment(hours(23)) == sys_days(year(2026) / 12 / 31) + hours(23));
}
