#include "core/logbook/logbook_csv.hpp"

#include "core/logbook/logbook.hpp"
#include "tests/support/logbook_records.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::outcome_record;
using test::stop_record;

namespace {

LogbookContent example() {
  LogbookContent content{
      .stops = {test::full_stop("a1"), stop_record("b2", -33.5, 150.0, 900)},
      .outcomes = {test::full_outcome("a1"), outcome_record("a1", "QBBC", Outcome::steady, 70)}};
  return content;
}

LogbookTable read(const std::string& text) {
  const auto table = read_logbook_csv(text);
  REQUIRE(table);
  return *table;
}

// The figures as the table has them.
LogbookContent rounded(LogbookContent content) {
  for (StopRecord& stop : content.stops) {
    const auto sixth = [](double degrees) { return std::round(degrees * 1e6) / 1e6; };
    stop.position = *Position::at_deg(sixth(stop.position.latitude_deg()),
                                      sixth(stop.position.longitude_deg()));
  }
  for (OutcomeRecord& outcome : content.outcomes) {
    const auto tenth = [](double value) { return std::round(value * 10.0) / 10.0; };
    if (outcome.heading)
      outcome.heading = Bearing<True>::degrees(tenth(outcome.heading->degrees()));
    for (auto* value : {&outcome.chance_percent, &outcome.margin_db, &outcome.deviation_db}) {
      if (*value) **value = tenth(**value);
    }
  }
  return content;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t place = text.find(from);
  REQUIRE(place != std::string::npos);
  return text.replace(place, from.size(), to);
}

}  // namespace

TEST_CASE("a logbook's table reads back its stops and outcomes", "[logbook]") {
  const std::string text = logbook_csv(example());
  INFO(text);
  const LogbookTable table = read(text);
  CHECK(table.rejected.empty());
  CHECK(table.rows_read == 3);
  CHECK(table.content == rounded(example()));

  auto logbook = Logbook::open(":memory:");
  REQUIRE(logbook->merge(table.content));
  CHECK(*logbook->content() == rounded(example()));
  CHECK(logbook->merge(table.content)->outcomes == MergeCounts{.same = 2});
}

TEST_CASE("the table has no more decimals than a figure means", "[logbook]") {
  LogbookContent content{.stops = {test::full_stop("a1")}, .outcomes = {test::full_outcome("a1")}};
  content.outcomes[0].chance_percent = 99.71338157197793;
  content.outcomes[0].heading = Bearing<True>::degrees(359.97);
  content.outcomes[0].margin_db = -0.04;
  const std::string text = logbook_csv(content);
  INFO(text);
  CHECK(text.find(",44.435217,-71.675993,") != std::string::npos);
  CHECK(text.find(",99.7,0,2.3,") != std::string::npos);
  const LogbookTable table = read(text);
  REQUIRE(table.content.outcomes.size() == 1);
  CHECK(table.content.outcomes[0].heading == Bearing<True>::degrees(0.0));
  // Read into the logbook that it came from, it leaves the figures as they were.
  auto logbook = Logbook::open(":memory:");
  REQUIRE(logbook->merge(content));
  REQUIRE(logbook->merge(table.content));
  CHECK(*logbook->content() == content);
}

// RFC 4180, section 2: 1 and 2 lines end with CR LF, 3 a header line, 4 the same number of fields
// throughout, 6 fields with line breaks, quotes or commas are quoted, 7 quotes are doubled.
TEST_CASE("the table follows RFC 4180", "[logbook]") {
  const std::string text = logbook_csv(example());
  CHECK(text.substr(0, 23) == "stop_id,stop_changed,st");
  CHECK(text.substr(text.size() - 2) == "\r\n");
  CHECK(text.find("\"Höhe \"\"am See\"\", 2nd loop\"") != std::string::npos);
  CHECK(text.find("\"=1+1\r\nsecond line; it's <wet> & cold \"") != std::string::npos);
  // In a stop without a comma or line break in its texts, cells can be counted plainly.
  const std::string line = text.substr(text.find("b2,"));
  const std::string header = text.substr(0, text.find("\r\n") + 2);
  CHECK(std::count(line.begin(), line.end(), ',') == std::count(header.begin(), header.end(), ','));
}

TEST_CASE("the table leaves out deleted records", "[logbook]") {
  LogbookContent content = rounded(example());
  content.outcomes[1].mark.deleted = true;
  content.stops[1].mark.deleted = true;
  const LogbookTable table = read(logbook_csv(content));
  CHECK(table.content.stops == std::vector{content.stops[0]});
  CHECK(table.content.outcomes == std::vector{content.outcomes[0]});
}

TEST_CASE("an unreadable row is reported with its line, and the rest is read", "[logbook]") {
  const std::string text = logbook_csv(example());
  struct Case {
    std::string from, to, reason;
  };
  // The second stop's row is on line 5: the first has a line break in its note, twice.
  const std::vector<Case> cases{
      {"-33.5", "-93.5", "\"-93.5\" is not a valid latitude_deg"},
      {"b2,2026-07-01T", "b2,2026-07-32T", "is not a valid changed"},
      {"b2,", "b 2,", "the id is not 1 to 64 letters"},
      {"b2,", "b2,,", "the row has 32 cells, but the header has 31"},
      {"b2,", "\"b2\"x,", "text follows the closing quote"},
  };
  for (const Case& one : cases) {
    const std::string row = text.substr(text.find("b2,"));
    const LogbookTable table =
        read(text.substr(0, text.find("b2,")) + replaced(row, one.from, one.to));
    INFO(one.reason);
    REQUIRE(table.rejected.size() == 1);
    INFO(table.rejected[0].reason);
    CHECK(table.rejected[0].line == 6);
    CHECK(table.rejected[0].reason.find(one.reason) != std::string::npos);
    CHECK(table.content.stops.size() == 1);
    CHECK(table.content.outcomes.size() == 2);
  }
  const LogbookTable table = read(replaced(text, ",steady,", ",splendid,"));
  REQUIRE(table.rejected.size() == 1);
  CHECK(table.rejected[0].reason == "\"splendid\" is not a valid outcome");
}

TEST_CASE("columns may have any order, but none may be missing", "[logbook]") {
  const auto refused = read_logbook_csv("stop_id,tablet,owner\r\na1,dash,me\r\n");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message().find("stop_changed, stop_tablet") != std::string::npos);
  CHECK_FALSE(read_logbook_csv(""));

  const std::string text = logbook_csv({.stops = {stop_record("b2", -33.5, 150.0, 900)}});
  std::string turned;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find("\r\n", at);
    const std::string line = text.substr(at, end - at);
    turned += line.substr(line.find(',') + 1) + "," + line.substr(0, line.find(',')) + ",more\n";
    at = end + 2;
  }
  CHECK(read(turned).content.stops == std::vector{stop_record("b2", -33.5, 150.0, 900)});
}

TEST_CASE("a table without the amplifier, as older versions exported it, is read", "[logbook]") {
  LogbookContent content{.stops = {stop_record("a1", 44.0, -71.0)},
                         .outcomes = {test::full_outcome("a1")}};
  std::string text = logbook_csv(content);
  text = replaced(text, ",temperature_c,amplifier\r\n", ",temperature_c\r\n");
  text = replaced(text, ",-4.5,no\r\n", ",-4.5\r\n");
  content.outcomes.front().amplifier.reset();
  CHECK(read(text).content == rounded(content));
}

TEST_CASE("if rows disagree on a stop, the later entry wins", "[logbook]") {
  StopRecord earlier = stop_record("a1", 44.0, -71.0, 10), later = stop_record("a1", 45.0, -71, 20);
  const std::string one = logbook_csv({.stops = {earlier}}),
                    other = logbook_csv({.stops = {later}});
  const std::string row = other.substr(other.find("\r\n") + 2);
  CHECK(read(one + row).content.stops == std::vector{later});
  const std::string header = one.substr(0, one.find("\r\n") + 2);
  CHECK(read(header + row + one.substr(header.size())).content.stops == std::vector{later});
}

TEST_CASE("a stop just east of the date line is rounded onto it, and stays the same from then on") {
  LogbookContent content = example();
  content.stops.front().position = *Position::at_deg(-17.0, 179.99999999);
  const std::string once = logbook_csv(content);
  CHECK(once.find(",-180,") != std::string::npos);
  CHECK(logbook_csv(read(once).content) == once);
}
