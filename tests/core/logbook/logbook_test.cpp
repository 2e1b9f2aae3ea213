#include "core/logbook/logbook.hpp"

#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("a new logbook is empty and has the antenna down") {
  test::TemporaryFolder folder;
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  CHECK(*logbook->antenna() == safety::Antenna::Down);
  CHECK_FALSE(*logbook->settings());
  CHECK_FALSE(*logbook->trusted_date());
}

TEST_CASE("a reopened logbook returns its records") {
  test::TemporaryFolder folder;
  const std::chrono::sys_days day{std::chrono::year(2026) / 11 / 25};
  {
    auto logbook = Logbook::open(folder.file("logbook"));
    REQUIRE(logbook->keep_antenna({.antenna = safety::Antenna::Raised}));
    REQUIRE(logbook->keep_settings("{\"it's\":\"ours\"}"));
    REQUIRE(logbook->keep_trusted_date(day));
  }
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  CHECK(*logbook->antenna() == safety::Antenna::Raised);
  CHECK(*logbook->settings() == "{\"it's\":\"ours\"}");
  CHECK(*logbook->trusted_date() == day);
  REQUIRE(logbook->keep_antenna({.antenna = safety::Antenna::Down}));
  CHECK(*logbook->antenna() == safety::Antenna::Down);
}

TEST_CASE("an unreadable antenna state counts as raised") {
  test::TemporaryFolder folder;
  REQUIRE(Logbook::open(folder.file("logbook"))->keep_antenna({.antenna = safety::Antenna::Down}));
  auto database = store::Database::open(folder.file("logbook"));
  REQUIRE(database->run("UPDATE kept SET value = 'd0wn' WHERE name = 'antenna'"));
  CHECK(*Logbook::open(folder.file("logbook"))->antenna() == safety::Antenna::Raised);
}

TEST_CASE("every antenna change is stored with time, place and confirmed statement") {
  test::TemporaryFolder folder;
  const AntennaChange up{.antenna = safety::Antenna::Raised,
                         .when = UtcTime(std::chrono::sys_days(std::chrono::year(2026) / 7 / 2)),
                         .place = *Position::at_deg(44.435217, -71.675993),
                         .confirmed = "I looked up. Raise"};
  const AntennaChange undone{.antenna = safety::Antenna::Down,
                             .when = up.when + std::chrono::seconds(40),
                             .confirmed = "Undo: I saw it down"};
  {
    auto logbook = Logbook::open(folder.file("logbook"));
    REQUIRE(logbook->keep_antenna(up));
    REQUIRE(logbook->keep_antenna(undone));
  }
  const auto changes = Logbook::open(folder.file("logbook"))->antenna_changes();
  REQUIRE(changes);
  CHECK(*changes == std::vector{undone, up});
}

TEST_CASE("an unreadable trusted date is an error, not a date") {
  test::TemporaryFolder folder;
  const std::chrono::sys_days day{std::chrono::year(2026) / 11 / 25};
  REQUIRE(Logbook::open(folder.file("logbook"))->keep_trusted_date(day));
  auto database = store::Database::open(folder.file("logbook"));
  REQUIRE(database->run("UPDATE kept SET value = '20782x' WHERE name LIKE 'trusted date%'"));
  const auto date = Logbook::open(folder.file("logbook"))->trusted_date();
  REQUIRE_FALSE(date);
  CHECK(date.error().message().find("20782x") != std::string::npos);
}

TEST_CASE("a logbook of a newer version is refused") {
  test::TemporaryFolder folder;
  REQUIRE(Logbook::open(folder.file("logbook")));
  REQUIRE(store::Database::open(folder.file("logbook"))->run("PRAGMA user_version = 900"));
  const auto refused = Logbook::open(folder.file("logbook"));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message().find("newer version") != std::string::npos);
}

TEST_CASE("a damaged logbook is refused with its name and a remedy, and kept") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  SECTION("not a database") {
    std::ofstream(path) << std::string(8192, 'x');
  }
  SECTION("its first page overwritten") {
    REQUIRE(Logbook::open(path)->keep_antenna({.antenna = safety::Antenna::Raised}));
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(16);
    file << std::string(400, '\xEE');
  }
  SECTION("cut in the middle") {
    REQUIRE(Logbook::open(path)->keep_antenna({.antenna = safety::Antenna::Raised}));
    std::filesystem::resize_file(path, 5000);
  }
  const std::string before = test::read_file(path);
  auto opened = Logbook::open(path);
  const auto error = !opened ? opened.error() : opened->antenna().error();
  INFO(error.message());
  CHECK(error.message().find(path) != std::string::npos);
  CHECK_FALSE(error.remedy.empty());
  CHECK(test::read_file(path) == before);
}

TEST_CASE("a logbook at an impossible path is refused") {
  test::TemporaryFolder folder;
  const auto refused = Logbook::open(folder.file("no_folder/logbook"));
  REQUIRE_FALSE(refused);
  CHECK_FALSE(refused.error().remedy.empty());
}
