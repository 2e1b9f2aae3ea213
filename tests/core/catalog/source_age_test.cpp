#include "core/catalog/source_age.hpp"

#include <chrono>

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("the age of a table counts whole calendar months") {
  using namespace std::chrono;
  const auto at = [](int y, unsigned m, unsigned d) {
    return local_days(year(y) / month(m) / day(d));
  };
  const auto age = source_age("2017-04-13", at(2026, 11, 25));
  REQUIRE(age);
  CHECK(age->years == 9);
  CHECK(age->months == 7);
  CHECK(age->freshness == SourceFreshness::stale);
  // 31 January to 1 March is a month and a day, not two months.
  CHECK(source_age("2026-01-31", at(2026, 3, 1))->months == 1);
  CHECK(source_age("2026-01-31", at(2026, 3, 1))->days == 29);
  CHECK(source_age("2025-03-02", at(2026, 3, 1))->freshness == SourceFreshness::fresh);
  CHECK(source_age("2025-03-01", at(2026, 3, 1))->freshness == SourceFreshness::ageing);
  CHECK(source_age("2023-03-02", at(2026, 3, 1))->freshness == SourceFreshness::ageing);
  CHECK(source_age("2023-03-01", at(2026, 3, 1))->freshness == SourceFreshness::stale);
  CHECK(source_age("2026-03-01", at(2026, 3, 1))->days == 0);
  CHECK_FALSE(source_age("2026-03-02", at(2026, 3, 1)));
  CHECK_FALSE(source_age("", at(2026, 3, 1)));
  CHECK_FALSE(source_age("last year", at(2026, 3, 1)));
}
