#include "core/logbook/logbook.hpp"
#include "core/logbook/salvage.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::outcome_record;
using test::stop_record;

namespace {

void fill(const std::string& path, int stops) {
  auto logbook = Logbook::open(path);
  REQUIRE(logbook);
  LogbookContent content;
  for (int i = 0; i < stops; ++i) {
    const std::string id = "stop-" + std::to_string(i);
    content.stops.push_back(stop_record(id, 44.0, -71.0, i));
    content.stops.back().note = std::string(200, 'n');
    content.outcomes.push_back(outcome_record(id, "QAAB", Outcome::steady, i));
  }
  REQUIRE(logbook->merge(content));
}

LogbookContent content_of(const std::string& path) {
  const auto content = read_logbook(path);
  REQUIRE(content);
  return *content;
}

}  // namespace

TEST_CASE("power loss during a write leaves the logbook unchanged", "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  fill(path, 100);
  const LogbookContent before = content_of(path);
  const std::string bytes_before = test::read_file(path);

  // The state of the disk during a transaction with some pages written: copies of the file and its
  // journal.
  auto writer = store::Database::open(path);
  REQUIRE(writer);
  REQUIRE(
      writer->run("PRAGMA journal_mode = TRUNCATE; PRAGMA synchronous = EXTRA;"
                  "PRAGMA cache_size = 1; BEGIN IMMEDIATE;"
                  "UPDATE stops SET note = note || note || note; DELETE FROM outcomes;"));
  const std::string torn = folder.file("torn");
  std::filesystem::copy_file(path, torn);
  std::filesystem::copy_file(path + "-journal", torn + "-journal");
  REQUIRE(test::read_file(torn) != bytes_before);
  REQUIRE(std::filesystem::file_size(torn + "-journal") > 512);

  auto logbook = Logbook::open(torn);
  REQUIRE(logbook);
  CHECK(*logbook->content() == before);
  CHECK(*logbook->antenna() == safety::Antenna::Down);
}

TEST_CASE("a failed write changes nothing and reports it", "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  fill(path, 2);
  const LogbookContent before = content_of(path);
  {
    auto logbook = Logbook::open(path);
    REQUIRE(logbook);
    // As on a read-only medium, no journal can be made. Permissions would not stop a test that runs
    // as root.
    std::filesystem::remove(path + "-journal");
    std::filesystem::create_directory(path + "-journal");
    const auto refused = logbook->put(stop_record("new", 44.0, -71.0));
    REQUIRE_FALSE(refused);
    INFO(refused.error().message());
    CHECK_FALSE(refused.error().remedy.empty());
    CHECK(refused.error().message().find(path) != std::string::npos);
    CHECK_FALSE(logbook->put(outcome_record("stop-0", "QBBC", Outcome::steady)));
    CHECK_FALSE(logbook->merge({.stops = {stop_record("new", 44.0, -71.0)}}));
    CHECK_FALSE(logbook->remove_stop("stop-0", test::at_second(5), "dash"));
  }
  std::filesystem::remove(path + "-journal");
  CHECK(content_of(path) == before);
}

TEST_CASE("a logbook of the first version is backed up and gets its tables", "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  {
    auto first = store::Database::open(path);
    REQUIRE(
        first->run("CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT "
                   "ROWID; INSERT INTO kept VALUES ('antenna', 'raised');"
                   "PRAGMA user_version = 1;"));
  }
  CHECK(content_of(path) == LogbookContent{});
  auto logbook = Logbook::open(path);
  REQUIRE(logbook);
  CHECK(*logbook->antenna() == safety::Antenna::Raised);
  REQUIRE(logbook->put(stop_record("a1", 44.0, -71.0)));
  auto backup = store::Database::open_reading(path + ".version-1");
  REQUIRE(backup);
  CHECK(*backup->integer("SELECT count(*) FROM kept WHERE value = 'raised'") == 1);
}

TEST_CASE("a logbook of the third version keeps its outcomes, with the amplifier unknown",
          "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  fill(path, 2);
  {
    auto third = store::Database::open(path);
    REQUIRE(
        third->run("ALTER TABLE outcomes DROP COLUMN amplifier;"
                   "ALTER TABLE outcomes_before DROP COLUMN amplifier;"
                   "PRAGMA user_version = 3;"));
  }
  const LogbookContent before = content_of(path);
  REQUIRE(before.outcomes.size() == 2);
  CHECK_FALSE(before.outcomes.front().amplifier);
  // Also where damage leaves only single pages to read.
  const SalvagedLogbook salvaged = salvage_logbook(path);
  CHECK(salvaged.content == before);
  CHECK(salvaged.unreadable == 0);
  auto logbook = Logbook::open(path);
  REQUIRE(logbook);
  CHECK(*logbook->content() == before);
  CHECK(content_of(path + ".version-3") == before);
  OutcomeRecord outcome = before.outcomes.front();
  outcome.amplifier = false;
  REQUIRE(logbook->put(outcome));
  CHECK(content_of(path).outcomes.front().amplifier == false);
}

TEST_CASE("an unreadable record is reported, not skipped", "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  fill(path, 2);
  auto database = store::Database::open(path);
  REQUIRE(database->run("UPDATE stops SET latitude_deg = '95' WHERE id = 'stop-1'"));
  const auto stops = Logbook::open(path)->stops();
  REQUIRE_FALSE(stops);
  CHECK(stops.error().message().find("\"95\" is not a valid latitude_deg") != std::string::npos);
}

TEST_CASE("a backup has everything and is verified by reading it back", "[logbook]") {
  test::TemporaryFolder folder;
  fill(folder.file("logbook"), 30);
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook->remove_stop("stop-3", test::at_second(100), "dash"));
  std::ofstream(folder.file("backup")) << "an older file of that name";
  REQUIRE(logbook->back_up(folder.file("backup")));
  CHECK(content_of(folder.file("backup")) == *logbook->content());
  CHECK_FALSE(std::filesystem::exists(folder.file("backup.new")));

  // Restored into a new logbook by merging.
  auto restored = Logbook::open(folder.file("restored"));
  REQUIRE(restored->merge(content_of(folder.file("backup"))));
  CHECK(*restored->content() == *logbook->content());

  CHECK_FALSE(logbook->back_up(folder.file("no_folder/backup")));
}

TEST_CASE("a file that is not a logbook is refused and stays unchanged", "[logbook]") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("other");
  std::string reason;
  SECTION("not a database") {
    std::ofstream(path) << std::string(5000, 'x');
    reason = "not a database";
  }
  SECTION("cut short") {
    fill(path, 50);
    std::filesystem::resize_file(path, std::filesystem::file_size(path) / 2);
    reason = "malformed";
  }
  SECTION("another app's database") {
    REQUIRE(store::Database::open(path)->run("CREATE TABLE t (x); PRAGMA user_version = 2;"));
    reason = "not a logbook";
  }
  SECTION("of a newer version") {
    fill(path, 1);
    REQUIRE(store::Database::open(path)->run("PRAGMA user_version = 900"));
    reason = "newer version";
  }
  const std::string before = test::read_file(path);
  const auto refused = read_logbook(path);
  REQUIRE_FALSE(refused);
  INFO(refused.error().message());
  CHECK(refused.error().what.find(reason) != std::string::npos);
  CHECK(refused.error().where == path);
  CHECK(test::read_file(path) == before);
  CHECK_FALSE(read_logbook(folder.file("not_there")));
  CHECK_FALSE(std::filesystem::exists(folder.file("not_there")));
}
