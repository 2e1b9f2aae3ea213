#include "app/here/actions.hpp"
#include "app/logbook/actions.hpp"
#include "app/session/action_json.hpp"
#include "app/session/working_state.hpp"
#include "app/shared/json.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/tablet.hpp"
#include "tests/support/utc_text.hpp"

#include <string>

#include <catch2/catch.hpp>

// Dates and seasons follow the clocks of the place where the rig is.
using namespace mastwise;
using test::Stage;
using test::utc;

namespace {

void log_first(Stage& stage) {
  REQUIRE(stage.model().stations);
  REQUIRE_FALSE(stage.model().stations->rows.empty());
  stage.set(act::LogOutcome{key_of(stage.model().stations->rows.front().station), Outcome::steady});
}

}  // namespace

TEST_CASE("after 5 in the afternoon on the Pacific coast, today is not tomorrow") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path());
  test::stand_at(stage, 42.51, -118.53);
  // 2 July 2036, 18:30 by Pacific daylight time; the build is of the year 2026 at the earliest.
  stage.set_clock(utc("2036-07-03T01:30:00Z"));
  stage.set(act::Show{Place::Here});
  stage.tap("position");
  CHECK(stage.shows_within("2 July 2036 (PDT)"));
  stage.tap("close sheet");
  stage.tap("place Logbook");
  stage.settle();
  log_first(stage);
  stage.settle();
  CHECK_FALSE(stage.shows("2 July"));
  stage.tap("stops");
  CHECK(stage.shows_within("2 July 2036"));
  CHECK_FALSE(stage.shows_within("3 July 2036"));
  stage.tap("close sheet");
  // Past midnight there, the touch is of yesterday.
  stage.set_clock(utc("2036-07-03T07:30:00Z"));
  stage.wait(milliseconds(1'000));
  CHECK(stage.shows("2 July"));
  // What is stored stays UTC.
  CHECK(stage.model().logbook.log.stops.front().arrived >= utc("2036-07-03T01:30:00Z"));
  CHECK(stage.model().logbook.log.stops.front().arrived < utc("2036-07-03T02:30:00Z"));
  // Newfoundland's clocks are 4.5 hours ahead of these.
  test::stand_at(stage, 47.5615, -52.7126);
  stage.set(act::Show{Place::Here});
  stage.tap("position");
  CHECK(stage.shows_within("3 July 2036 (NDT)"));
}

TEST_CASE("a stop keeps the day that it had where it was") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path());
  test::stand_at(stage, 42.51, -118.53);
  // 22:30 on 2 July there, past midnight in New York.
  stage.set_clock(utc("2036-07-03T05:30:00Z"));
  stage.tap("place Logbook");
  stage.settle();
  log_first(stage);
  test::stand_at(stage, 40.7, -74.0);
  stage.set(act::Show{Place::Logbook});
  stage.settle();
  CHECK(stage.model().findings.today == std::chrono::local_days(std::chrono::year(2036) / 7 / 3));
  stage.tap("stops");
  CHECK(stage.shows_within("2 July 2036"));
  CHECK_FALSE(stage.shows_within("3 July 2036"));
}

TEST_CASE(
    "without a position the tablet's own clock counts, and the page of the position says so") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  stage.set(act::Show{Place::Here});
  stage.tap("position");
  CHECK(stage.model().findings.zone.origin != LocalZone::Origin::Place);
  CHECK(stage.shows_within("No time zone known"));
}

TEST_CASE("leaves follow the season at the stop, and a touch overrules it") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path());
  test::stand_at(stage, 42.51, -118.53);
  stage.set(act::ChooseSurroundings{reception::Surroundings::forest});
  stage.set_clock(utc("2036-07-02T18:00:00Z"));
  stage.set(act::Show{Place::Here});
  stage.settle();
  CHECK(stage.shows("Forest, in leaf"));
  const auto margin_db = [&] { return *stage.model().stations->rows.front().outlook->margin_db; };
  const double summer_db = margin_db();
  stage.set_clock(utc("2037-01-02T18:00:00Z"));
  stage.wait(milliseconds(1'000));
  stage.settle();
  CHECK(stage.shows("Forest, bare"));
  CHECK(margin_db() > summer_db);
  stage.tap("gear");
  stage.tap("surroundings");
  CHECK(stage.shows_within("Counted as bare."));
  stage.tap("leaves In leaf");
  stage.settle();
  CHECK(stage.shows_within("Counted as in leaf."));
  CHECK(margin_db() == Approx(summer_db));
  stage.set(act::TakeBack{});
  stage.settle();
  CHECK(stage.model().stop.leaves == reception::LeafChoice::by_season);
  CHECK(margin_db() > summer_db);
}

TEST_CASE("2026-11-29: a stop of a version without leaves is read, with leaves by the season") {
  nlohmann::json stop =
      Stop{.surroundings = reception::Surroundings::forest, .leaves = reception::LeafChoice::bare};
  CHECK(stop.get<Stop>().leaves == reception::LeafChoice::bare);
  stop.erase("leaves");
  const Stop read = stop.get<Stop>();
  CHECK(read.leaves == reception::LeafChoice::by_season);
  CHECK(read.surroundings == reception::Surroundings::forest);
  CHECK_THROWS(nlohmann::json::parse(R"({"leaves":"autumn"})").get<Stop>());
}
