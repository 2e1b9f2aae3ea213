#include "app/words/records.hpp"
#include "core/stations/networks.hpp"
#include "tests/support/stage.hpp"

#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

// The Logbook's list of what can come in.
using namespace mastwise;
using test::Stage;

namespace {

std::vector<std::string> order_of(const Stage& stage) {
  std::vector<std::string> order;
  for (const TriedRow& row : stage.model().logbook.tried.rows) {
    order.push_back(row.name + " " + row.station.station.id);
  }
  return order;
}

std::string target_of(const TriedRow& row, const char* outcome) {
  return "saw " + row.station.station.call_sign + " " + row.station.station.id + " " + outcome;
}

}  // namespace

TEST_CASE("the Logbook lists each network once, by its likeliest station at this heading") {
  Stage stage;
  stage.tap("place Logbook");
  const auto& rows = stage.model().logbook.tried.rows;
  CHECK(rows.size() == 6);  // the invented networks
  std::set<std::string> names;
  double before = 100.0;
  for (const TriedRow& row : rows) {
    INFO(row.name);
    CHECK(names.insert(row.name).second);
    CHECK(has_network(networks_of(row.station.station), row.name));
    REQUIRE(row.forecast_percent);
    CHECK(*row.forecast_percent <= before);
    before = *row.forecast_percent;
    // No other station of the network is likelier.
    for (const StationRow& other : stage.model().stations->rows) {
      if (!has_network(networks_of(other.station), row.name)) continue;
      const auto forecast = forecast_at(stage.model(), other, *aimed_at(stage.model()),
                                        stage.model().stations->question.learned);
      if (forecast) CHECK(forecast->chance_percent <= *row.forecast_percent);
    }
  }
  stage.tap("tried by stations");
  CHECK(stage.model().logbook.tried.rows.size() == stage.model().stations->rows.size());
}

// What an outcome teaches changes all chances, and so the order of the survey.
TEST_CASE("no row of the Logbook moves while outcomes are touched") {
  Stage stage(test::kLargeTablet);
  stage.tap("place Logbook");
  stage.tap("tried by stations");
  const auto before = order_of(stage);
  const auto chances = [&] {
    std::vector<double> all;
    for (const StationRow& row : stage.model().stations->rows) {
      if (row.outlook && row.outlook->chance_percent) all.push_back(*row.outlook->chance_percent);
    }
    return all;
  };
  const auto first = chances();
  for (std::size_t i = 0; i < 5; ++i) {
    const TriedRow row = stage.model().logbook.tried.rows[i];
    stage.tap(target_of(row, "nothing"));
    CHECK(stage.model().logbook.tried.rows[i].seen == Outcome::nothing);
    CHECK(order_of(stage) == before);
  }
  CHECK(chances() != first);
  // The record has the forecast that the row showed before the first touch.
  const OutcomeRecord& oldest = stage.model().logbook.log.outcomes.back();
  CHECK(oldest.chance_percent);
  stage.tap("place Here");
  stage.tap("place Logbook");
  CHECK(order_of(stage) != before);  // here anew, by what was learned
}

TEST_CASE("a touch is kept while the survey is measured again") {
  Stage stage;
  stage.tap("place Logbook");
  const TriedRow last = stage.model().logbook.tried.rows.back();
  StationsAnswer part = *stage.model().stations;
  part.rows.clear();
  part.measured = 1;
  stage.session().act(act::StationsFound{part});
  CHECK(stage.model().logbook.tried.rows.size() == 6);
  stage.session().act(act::LogOutcome{key_of(last.station.station), Outcome::steady});
  REQUIRE(stage.model().logbook.log.outcomes.size() == 1);
  const OutcomeRecord& record = stage.model().logbook.log.outcomes.front();
  CHECK(record.station_id == last.station.station.id);
  CHECK(*record.chance_percent == Approx(*last.forecast_percent));
}

TEST_CASE("a search among the stations does not shorten the Logbook's list") {
  Stage stage;
  stage.tap("place Stations");
  stage.set(act::OpenKeypad{KeypadPurpose::Search});
  stage.set(act::KeypadType{"QBPA"});
  stage.set(act::KeypadAccept{});
  REQUIRE(stage.model().stations->rows.size() == 1);
  stage.tap("place Logbook");
  CHECK(stage.model().logbook.tried.rows.size() == 6);
}

TEST_CASE("the lesson names its band, decibels and stops, and asks for the inverter at VHF") {
  CHECK(words::lesson({.band = Band::low_vhf, .bias_db = -6.2, .stops = 4}) ==
        "Low VHF came in 6 dB worse than forecast, at 4 stops");
  CHECK(words::lesson({.band = Band::uhf, .bias_db = 3.6, .stops = 1}) ==
        "UHF came in 4 dB better than forecast, at 1 stop");
}
