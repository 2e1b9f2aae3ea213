#include "core/geo/geodesic.hpp"
#include "core/logbook/logbook.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/temporary_folder.hpp"

#include <limits>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::at_second;
using test::outcome_record;
using test::stop_record;

namespace {

Logbook open(const std::string& path) {
  auto logbook = Logbook::open(path);
  REQUIRE(logbook);
  return *std::move(logbook);
}

}  // namespace

TEST_CASE("records of a stop are there after reopening the logbook", "[logbook]") {
  test::TemporaryFolder folder;
  const StopRecord stop = test::full_stop("a1");
  const OutcomeRecord outcome = test::full_outcome("a1");
  const SweepRecord sweep = test::sweep_record("s1", "a1");
  {
    Logbook logbook = open(folder.file("logbook"));
    REQUIRE(logbook.put(stop));
    REQUIRE(logbook.put(outcome));
    REQUIRE(logbook.put(sweep));
  }
  Logbook logbook = open(folder.file("logbook"));
  CHECK(*logbook.stop("a1") == stop);
  CHECK(*logbook.stops() == std::vector{stop});
  CHECK(*logbook.outcomes("a1") == std::vector{outcome});
  CHECK(*logbook.outcomes() == std::vector{outcome});
  CHECK(*logbook.sweeps("a1") == std::vector{sweep});
  CHECK_FALSE(*logbook.stop("a2"));
}

TEST_CASE("a second touch replaces the first, and Undo reverts each in turn", "[logbook]") {
  test::TemporaryFolder folder;
  Logbook logbook = open(folder.file("logbook"));
  REQUIRE(logbook.put(stop_record("a1", 44.0, -71.0)));
  OutcomeRecord first = outcome_record("a1", "QAAB", Outcome::steady, 10);
  OutcomeRecord second = outcome_record("a1", "QAAB", Outcome::nothing, 20);
  REQUIRE(logbook.put(first));
  REQUIRE(logbook.put(outcome_record("a1", "QBBC", Outcome::breaks_up, 15)));
  REQUIRE(logbook.put(second));
  REQUIRE(logbook.outcomes("a1")->size() == 2);
  CHECK(logbook.outcomes("a1")->front() == second);

  auto standing = logbook.take_back(second, at_second(30), "dash");
  REQUIRE(standing);
  first.mark.changed = at_second(30);
  CHECK(**standing == first);
  CHECK(logbook.outcomes("a1")->front() == first);

  standing = logbook.take_back(second, at_second(40), "dash");
  REQUIRE(standing);
  CHECK_FALSE(*standing);
  CHECK(logbook.outcomes("a1")->size() == 1);
  CHECK(logbook.outcomes()->front().call_sign == "QBBC");
  CHECK_FALSE(logbook.take_back(second, at_second(50), "dash"));
}

TEST_CASE("a later touch wins even if the clock went back", "[logbook]") {
  test::TemporaryFolder folder;
  Logbook logbook = open(folder.file("logbook"));
  REQUIRE(logbook.put(stop_record("a1", 44.0, -71.0)));
  REQUIRE(logbook.put(outcome_record("a1", "QAAB", Outcome::steady, 1000)));
  REQUIRE(logbook.put(outcome_record("a1", "QAAB", Outcome::nothing, 10)));
  const OutcomeRecord standing = logbook.outcomes("a1")->front();
  CHECK(standing.outcome == Outcome::nothing);
  CHECK(standing.mark.changed == at_second(1000) + milliseconds(1));
}

TEST_CASE("a deleted stop hides its outcomes and sweeps", "[logbook]") {
  test::TemporaryFolder folder;
  Logbook logbook = open(folder.file("logbook"));
  REQUIRE(logbook.put(stop_record("a1", 44.0, -71.0)));
  REQUIRE(logbook.put(outcome_record("a1", "QAAB", Outcome::steady)));
  REQUIRE(logbook.put(test::sweep_record("s1", "a1")));
  REQUIRE(logbook.remove_stop("a1", at_second(5), "dash"));
  CHECK(logbook.stops()->empty());
  CHECK(logbook.outcomes()->empty());
  CHECK(logbook.outcomes("a1")->empty());
  CHECK(logbook.sweeps("a1")->empty());
  CHECK_FALSE(logbook.remove_stop("a1", at_second(6), "dash"));
  CHECK_FALSE(logbook.put(outcome_record("a1", "QAAB", Outcome::steady)));
  CHECK(logbook.content()->outcomes.size() == 1);
  REQUIRE(logbook.put(stop_record("a1", 44.0, -71.0, 7)));
  CHECK(logbook.outcomes("a1")->size() == 1);
  REQUIRE(logbook.remove_sweep("s1", at_second(8), "dash"));
  CHECK(logbook.sweeps("a1")->empty());
}

TEST_CASE("a return within 200 m shows what worked last time", "[logbook]") {
  test::TemporaryFolder folder;
  Logbook logbook = open(folder.file("logbook"));
  const auto here = *Position::at_deg(44.0, 179.9999);
  const auto moved = [&](const std::string& id, double distance_m, long second) {
    StopRecord stop = stop_record(id, 0.0, 0.0, second);
    stop.position = destination(here, Bearing<True>::degrees(90.0), distance_m);
    return stop;
  };
  REQUIRE(logbook.put(moved("far", 201.0, 0)));
  REQUIRE(logbook.put(moved("near", 50.0, 1)));
  REQUIRE(logbook.put(moved("edge", 199.0, 2)));  // beyond the date line
  const auto tried = [&](const std::string& stop, const std::string& call_sign, Outcome outcome,
                         double heading_deg) {
    OutcomeRecord record = outcome_record(stop, call_sign, outcome);
    record.heading = Bearing<True>::degrees(heading_deg);
    REQUIRE(logbook.put(record));
  };
  tried("near", "QAAB", Outcome::steady, 207.6);
  tried("near", "QBBC", Outcome::steady, 208.4);
  tried("near", "QCCD", Outcome::nothing, 208.0);
  tried("near", "QDDE", Outcome::steady, 359.7);
  tried("edge", "QAAB", Outcome::steady, 208.0);
  const auto near = logbook.stops_near(here);
  REQUIRE(near);
  REQUIRE(near->size() == 2);
  CHECK(near->at(0).stop.id == "near");
  CHECK(near->at(0).distance_m == Approx(50.0).margin(0.001));
  CHECK(near->at(1).stop.id == "edge");
  std::vector<OutcomeRecord> all = near->at(0).outcomes;
  all.insert(all.end(), near->at(1).outcomes.begin(), near->at(1).outcomes.end());
  CHECK(headings_that_worked(all) ==
        std::vector<HeadingThatWorked>{{Bearing<True>::degrees(208.0), {"QAAB", "QBBC"}},
                                       {Bearing<True>::degrees(0.0), {"QDDE"}}});
}

TEST_CASE("an impossible record is refused, and nothing changes", "[logbook]") {
  test::TemporaryFolder folder;
  Logbook logbook = open(folder.file("logbook"));
  REQUIRE(logbook.put(stop_record("a1", 44.0, -71.0)));
  REQUIRE(logbook.put(outcome_record("a1", "QAAB", Outcome::steady)));
  const auto before = *logbook.content();

  for (const std::string& id : std::vector<std::string>{"", "a b", "../x", std::string(65, 'a')}) {
    CHECK_FALSE(logbook.put(stop_record(id, 44.0, -71.0)));
  }
  StopRecord stop = stop_record("a2", 44.0, -71.0, 100);
  stop.left = at_second(99);
  CHECK_FALSE(logbook.put(stop));
  stop = stop_record("a2", 44.0, -71.0);
  stop.note = "\xFF";
  CHECK_FALSE(logbook.put(stop));

  const OutcomeRecord good = outcome_record("a1", "QBBC", Outcome::steady);
  OutcomeRecord bad = good;
  bad.stop_id = "a9";
  CHECK_FALSE(logbook.put(bad));
  bad = good;
  bad.chance_percent = 100.5;
  CHECK_FALSE(logbook.put(bad));
  bad = good;
  bad.deviation_db = 0.0;
  CHECK_FALSE(logbook.put(bad));
  bad = good;
  bad.margin_db = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(logbook.put(bad));
  bad = good;
  bad.rf_channel = {};
  CHECK_FALSE(logbook.put(bad));
  CHECK_FALSE(logbook.put(test::sweep_record("s1", "a9")));
  CHECK(*logbook.content() == before);
}
