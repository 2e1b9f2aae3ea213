#include "core/logbook/nights.hpp"

#include "tests/support/logbook_records.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

OutcomeRecord tried(const char* stop, const char* call_sign, Outcome outcome, double heading_deg) {
  OutcomeRecord record = test::outcome_record(stop, call_sign, outcome);
  record.heading = Bearing<True>::degrees(heading_deg);
  return record;
}

Night night(double heading_deg, bool worked = true) {
  return {.position = *Position::at_deg(44.0, -71.0),
          .heading = Bearing<True>::degrees(heading_deg),
          .worked = worked};
}

}  // namespace

TEST_CASE("a night has the heading of most steady pictures and all outcomes, steady first",
          "[logbook]") {
  const std::vector<StopRecord> stops{test::stop_record("b", 44.0, -71.0, 200'000),
                                      test::stop_record("a", 44.0, -71.0, 100'000),
                                      test::stop_record("untried", 44.0, -71.0)};
  OutcomeRecord deleted = tried("a", "QDDE", Outcome::steady, 90.0);
  deleted.mark.deleted = true;
  const std::vector<OutcomeRecord> outcomes{tried("a", "QAAB", Outcome::nothing, 208.0),
                                            tried("a", "QBBC", Outcome::steady, 37.4),
                                            tried("a", "QCCD", Outcome::breaks_up, 208.0), deleted,
                                            tried("b", "QAAB", Outcome::nothing, 359.6)};
  const auto found = nights(stops, outcomes);
  REQUIRE(found.size() == 2);
  CHECK(found[0].stop_id == "b");
  CHECK(found[0].heading == Bearing<True>::degrees(0.0));
  CHECK_FALSE(found[0].worked);
  CHECK(found[1].heading == Bearing<True>::degrees(37.0));
  CHECK(found[1].worked);
  CHECK(found[1].outcomes == std::vector{Outcome::steady, Outcome::breaks_up, Outcome::nothing});
}

// By hand: 358, 0 and 5 degrees have the mean 1 and the standard deviation
// sqrt((9 + 1 + 16) / 2) = 3.606.
TEST_CASE("the heading that worked is the mean of its nights across north, with their spread",
          "[logbook]") {
  const auto worked = heading_that_worked(
      std::vector{night(358.0), night(0.0), night(5.0), night(180.0), night(3.0, false)});
  REQUIRE(worked);
  CHECK(worked->nights == 3);
  CHECK(worked->heading.degrees() == Approx(1.0).margin(1e-9));
  CHECK(*worked->spread_deg == Approx(3.6056).margin(0.0001));
  CHECK_FALSE(heading_that_worked(std::vector{night(10.0)})->spread_deg);
  CHECK_FALSE(heading_that_worked(std::vector{night(10.0, false)}));
  CHECK_FALSE(heading_that_worked({}));
}

TEST_CASE("of two headings with equally many nights the later night's counts", "[logbook]") {
  const auto worked = heading_that_worked(std::vector{night(200.0), night(24.0)});
  REQUIRE(worked);
  CHECK(worked->heading.degrees() == Approx(200.0));
}
