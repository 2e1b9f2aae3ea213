#include "core/logbook/logbook.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::at_second;
using test::Dice;
using test::outcome_record;
using test::stop_record;

namespace {

Logbook in_memory() {
  auto logbook = Logbook::open(":memory:");
  REQUIRE(logbook);
  return *std::move(logbook);
}

MergeReport merge(Logbook& into, Logbook& from) {
  const auto report = into.merge(*from.content());
  REQUIRE(report);
  return *report;
}

// A person's action on a tablet whose clock may be wrong.
void do_anything(Logbook& logbook, Dice& dice, const std::string& tablet) {
  const auto second = static_cast<long>(dice.below(40));
  const std::string stop = "stop-" + std::to_string(dice.below(4));
  const std::string station = "Q" + std::string(3, static_cast<char>('A' + dice.below(3)));
  const std::string sweep = "sweep-" + std::to_string(dice.below(3));
  const auto outcome =
      outcome_record(stop, station, static_cast<Outcome>(dice.below(3)), second, tablet);
  // Many of these are refused, as they should be: the stop is unknown, or nothing was tried.
  switch (dice.below(7)) {
    case 0:
    case 1: {
      StopRecord record = stop_record(stop, 44.0, -71.0, second, tablet);
      record.note = "note " + std::to_string(dice.below(100));
      static_cast<void>(logbook.put(record));
      break;
    }
    case 2:
    case 3:
      static_cast<void>(logbook.put(outcome));
      break;
    case 4:
      static_cast<void>(logbook.take_back(outcome, at_second(second), tablet));
      break;
    case 5:
      static_cast<void>(logbook.put(test::sweep_record(sweep, stop, second, tablet)));
      break;
    default:
      static_cast<void>(logbook.remove_stop(stop, at_second(second), tablet));
  }
}

}  // namespace

TEST_CASE("two tablets merged both ways have equal logbooks after any actions", "[logbook]") {
  std::size_t records = 0, contested = 0;
  const std::uint64_t kSeeds = test::kSanitized ? 10 : 40;
  for (std::uint64_t seed = 0; seed < kSeeds; ++seed) {
    Dice dice(seed);
    Logbook dash = in_memory(), hand = in_memory();
    // Every third pair shares one name: a copied tablet, whose entries can tie to the millisecond.
    const std::string other = seed % 3 == 0 ? "dash" : "hand";
    for (int round = 0; round < 3; ++round) {
      for (int i = 0; i < 15; ++i) {
        do_anything(dash, dice, "dash");
        do_anything(hand, dice, other);
      }
      const auto dash_before = *dash.content();
      const auto hand_before = *hand.content();
      const MergeReport there = merge(hand, dash);
      REQUIRE(dash.merge(hand_before));
      INFO("seed " << seed << ", round " << round);
      REQUIRE(*dash.content() == *hand.content());
      contested += there.stops.renewed + there.stops.kept + there.outcomes.renewed;
      // Another order and a second merge give the same.
      Logbook third = in_memory();
      REQUIRE(third.merge(hand_before));
      REQUIRE(third.merge(dash_before));
      REQUIRE(third.merge(hand_before));
      REQUIRE(*third.content() == *dash.content());
      const MergeReport again = merge(dash, hand);
      const auto content = *dash.content();
      REQUIRE(again == MergeReport{.stops = {.same = content.stops.size()},
                                   .outcomes = {.same = content.outcomes.size()},
                                   .sweeps = {.same = content.sweeps.size()}});
      records += content.stops.size() + content.outcomes.size() + content.sweeps.size();
    }
  }
  // The rounds made records, including ones that both sides wrote.
  CHECK(records > 15 * kSeeds);
  CHECK(contested > 2 * kSeeds);
}

TEST_CASE("a merge counts new, newer, same and kept records", "[logbook]") {
  Logbook dash = in_memory(), hand = in_memory();
  REQUIRE(dash.put(stop_record("a", 44.0, -71.0, 10)));
  REQUIRE(dash.put(stop_record("b", 44.0, -71.0, 10)));
  REQUIRE(merge(hand, dash).stops.added == 2);
  REQUIRE(dash.put(stop_record("a", 45.0, -71.0, 20)));
  REQUIRE(hand.put(stop_record("b", 46.0, -71.0, 30, "hand")));
  REQUIRE(hand.put(stop_record("c", 44.0, -71.0, 10, "hand")));
  REQUIRE(dash.put(outcome_record("a", "QAAB", Outcome::steady)));
  const MergeReport report = merge(hand, dash);
  CHECK(report.stops == MergeCounts{.added = 0, .renewed = 1, .same = 0, .kept = 1});
  CHECK(report.outcomes == MergeCounts{.added = 1});
  CHECK(hand.stop("a").value()->position.latitude_deg() == 45.0);
  CHECK(hand.stop("b").value()->position.latitude_deg() == 46.0);
}

TEST_CASE("a record deleted on one tablet does not return from another", "[logbook]") {
  Logbook dash = in_memory(), hand = in_memory();
  REQUIRE(dash.put(stop_record("a", 44.0, -71.0)));
  const OutcomeRecord touched = outcome_record("a", "QAAB", Outcome::steady, 10);
  REQUIRE(dash.put(touched));
  merge(hand, dash);
  REQUIRE(dash.take_back(touched, at_second(20), "dash"));
  CHECK(merge(dash, hand).outcomes.kept == 1);
  CHECK(dash.outcomes()->empty());
  CHECK(merge(hand, dash).outcomes.renewed == 1);
  CHECK(hand.outcomes()->empty());
}

TEST_CASE("a merge with one impossible record imports none", "[logbook]") {
  Logbook logbook = in_memory();
  LogbookContent other{.stops = {stop_record("a", 44.0, -71.0)}};
  SECTION("an outcome of an unknown stop") {
    other.outcomes = {outcome_record("b", "QAAB", Outcome::steady)};
  }
  SECTION("an impossible number") {
    other.outcomes = {outcome_record("a", "QAAB", Outcome::steady)};
    other.outcomes[0].deviation_db = -1.0;
  }
  const auto refused = logbook.merge(other);
  REQUIRE_FALSE(refused);
  INFO(refused.error().message());
  CHECK_FALSE(refused.error().what.empty());
  CHECK(logbook.content()->stops.empty());
}

TEST_CASE("a merge keeps each tablet's antenna state and settings", "[logbook]") {
  Logbook dash = in_memory(), hand = in_memory();
  REQUIRE(dash.keep_antenna({.antenna = safety::Antenna::Raised}));
  REQUIRE(hand.keep_settings("hand's"));
  merge(hand, dash);
  merge(dash, hand);
  CHECK(*dash.antenna() == safety::Antenna::Raised);
  CHECK(*hand.antenna() == safety::Antenna::Down);
  CHECK_FALSE(*dash.settings());
}

// A view could compute rows without end; this one has an end, so that a reader of views shows it.
TEST_CASE("2026-11-29: a file with computed stops is not a logbook", "[logbook]") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("another");
  {
    Logbook logbook = *Logbook::open(path);
    REQUIRE(logbook.put(stop_record("a", 44.0, -71.0)));
  }
  REQUIRE(read_logbook(path));
  {
    auto database = store::Database::open(path);
    REQUIRE(database);
    REQUIRE(
        database->run("PRAGMA foreign_keys = OFF; ALTER TABLE stops RENAME TO held;"
                      "CREATE VIEW stops AS WITH RECURSIVE again(i) AS"
                      " (SELECT 1 UNION ALL SELECT i + 1 FROM again LIMIT 3)"
                      " SELECT held.* FROM held, again"));
  }
  const auto refused = read_logbook(path);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().what == "not a logbook");
}
