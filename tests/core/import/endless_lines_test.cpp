#include "core/geo/gpx.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/program_table.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/nmea/log_replay.hpp"
#include "core/text/delimited.hpp"
#include "tests/support/memory_need.hpp"

#include <string>

#include <catch2/catch.hpp>

// Text without a line end, 200 MB of it: what reads it needs little memory besides the text.
using namespace mastwise;

namespace {

constexpr std::size_t kLong = 200'000'000;
constexpr long kLittleMb = 64;
constexpr std::chrono::sys_days kFloor{std::chrono::year(2026) / 11 / 25};

bool refuses_row(const std::string& text) {
  const auto stations = read_station_csv(text, {"made", ""});
  const auto programs = read_program_csv(text, {"made", ""});
  const auto logbook = read_logbook_csv(text);
  const std::string told = "longer than 1 MB";
  return !stations && stations.error().what.find(told) != std::string::npos && !programs &&
         programs.error().what.find(told) != std::string::npos && !logbook;
}

}  // namespace

TEST_CASE("2026-11-29: a table's line without an end is refused without the memory") {
  const std::string letters(kLong, 'x');
  CHECK(test::memory_need_mb([&] { return refuses_row(letters); }) < kLittleMb);
  const std::string quoted = '"' + letters.substr(0, kLong / 10);
  CHECK(test::memory_need_mb([&] { return refuses_row(quoted); }) < kLittleMb);
}

// Every cell costs more than its comma.
TEST_CASE("2026-11-29: a table's line of endless cells is refused without the memory") {
  const std::string commas(kLong / 10, ',');
  constexpr long kCellsMb = 150;  // those of 1 MB of commas, and as many while the list grows
  CHECK(test::memory_need_mb([&] { return refuses_row(commas); }) < kCellsMb);
}

TEST_CASE("2026-11-29: rows after one that is too long are read") {
  const std::string text = "a,b\n" + std::string(3 * DelimitedReader::kLongestRow, 'x') + "\nc,d\n";
  DelimitedReader reader(text, ',');
  CHECK(reader.next()->fault.empty());
  const auto faulty = reader.next();
  CHECK(faulty->line == 2);
  CHECK(faulty->fault.find("longer than 1 MB") != std::string::npos);
  const auto last = reader.next();
  CHECK(last->cells == std::vector<std::string>{"c", "d"});
  CHECK(last->line == 3);
  CHECK_FALSE(reader.next());
}

TEST_CASE("2026-11-29: a receiver's line without an end gives no fix and needs no memory") {
  const std::string log = "$GPGGA," + std::string(kLong, '1');
  const long need_mb = test::memory_need_mb([&] {
    const auto replay = nmea::replay_log(log, kFloor);
    return replay.receiver.counts().sentences_too_long == 1 && !replay.last_good.good() &&
           replay.receiver.counts().bytes > kLong;
  });
  CHECK(need_mb < kLittleMb);
}

TEST_CASE("2026-11-29: a GPX file without a line end needs little memory") {
  const std::string begin = "<gpx><wpt lat=\"1\" lon=\"2\"><name>";
  const std::string letters(kLong, 'x');
  SECTION("a name is cut") {
    const std::string text = begin + letters + "</name></wpt></gpx>";
    const long need_mb = test::memory_need_mb([&] {
      const auto read = read_gpx(text);
      return read && read->waypoints.at(0).name.size() == 10'000;
    });
    CHECK(need_mb < kLittleMb);
  }
  SECTION("an attribute, a comment and a tag are refused") {
    for (const char* open : {"<x a=\"", "<!--", "<x", "<![CDATA[x]]><?x "}) {
      const std::string text = begin + open + letters;
      INFO(open);
      const long need_mb = test::memory_need_mb([&] {
        const auto read = read_gpx(text);
        return !read && read.error().what == "line 1: a tag or comment is longer than 1 MB";
      });
      CHECK(need_mb < kLittleMb);
    }
  }
}

TEST_CASE("2026-11-29: a GPX file of elements within elements is refused without the memory") {
  std::string text = "<gpx>";
  for (int i = 0; i < 3'000'000; ++i) text += i % 2 == 0 ? "<trk>" : "<a>";
  const long need_mb = test::memory_need_mb([&] {
    const auto read = read_gpx(text);
    return !read && read.error().what == "line 1: the elements nest too deep";
  });
  CHECK(need_mb < kLittleMb);
}

TEST_CASE("2026-11-29: a GPX file of too many places keeps the first million") {
  std::string text = "<gpx><rte>";
  for (int i = 0; i < 1'000'100; ++i) text += "<rtept lat=\"1\" lon=\"2\"/>";
  const auto read = read_gpx(text + "</rte></gpx>");
  REQUIRE(read);
  CHECK(read->routes.at(0).places.size() == 1'000'000);
  REQUIRE(read->remarks.size() == 1);
  CHECK(read->remarks[0] == "line 1: the places after the first 1000000 are left out");
}
