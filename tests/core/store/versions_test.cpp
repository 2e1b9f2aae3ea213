#include "core/store/versions.hpp"

#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>

#include <catch2/catch.hpp>

using namespace mastwise;
using store::Database;

namespace {

constexpr std::array kSteps{
    "CREATE TABLE first (value TEXT NOT NULL);",
    "ALTER TABLE first RENAME TO second; ALTER TABLE second ADD COLUMN size INTEGER;",
    "CREATE INDEX by_size ON second (size);",
};
constexpr std::span<const char* const> kFirst{kSteps.data(), 1};

// A file of the first version with one value in it.
void make_first(const std::string& path) {
  auto database = Database::open(path);
  REQUIRE(database);
  REQUIRE(store::bring_up_to_date(*database, kFirst, "book"));
  REQUIRE(database->run("INSERT INTO first VALUES ('kept')"));
}

}  // namespace

TEST_CASE("a new file gets every step and no backup") {
  test::TemporaryFolder folder;
  auto database = Database::open(folder.file("book"));
  REQUIRE(database);
  REQUIRE(store::bring_up_to_date(*database, kSteps, "book"));
  CHECK(*database->integer("PRAGMA user_version") == 3);
  CHECK(*database->integer("SELECT count(*) FROM second") == 0);
  CHECK_FALSE(std::filesystem::exists(folder.file("book.version-0")));
  REQUIRE(store::bring_up_to_date(*database, kSteps, "book"));
  CHECK(*database->integer("PRAGMA user_version") == 3);
}

TEST_CASE("an older file is backed up unchanged, then upgraded with its content") {
  test::TemporaryFolder folder;
  make_first(folder.file("book"));
  auto database = Database::open(folder.file("book"));
  REQUIRE(store::bring_up_to_date(*database, kSteps, "book"));
  CHECK(*database->integer("SELECT count(*) FROM second WHERE value = 'kept'") == 1);

  auto backup = Database::open(folder.file("book.version-1"));
  REQUIRE(backup);
  CHECK(*backup->integer("PRAGMA user_version") == 1);
  CHECK(*backup->integer("SELECT count(*) FROM first WHERE value = 'kept'") == 1);
  CHECK_FALSE(std::filesystem::exists(folder.file("book.version-1.new")));
}

TEST_CASE("a power cut between the backup and the step does not lock the file out") {
  test::TemporaryFolder folder;
  make_first(folder.file("book"));
  // Such a cut leaves a whole backup, and perhaps a partial one.
  std::filesystem::copy(folder.file("book"), folder.file("book.version-1"));
  std::filesystem::copy(folder.file("book"), folder.file("book.version-1.new"));
  auto database = Database::open(folder.file("book"));
  const auto done = store::bring_up_to_date(*database, kSteps, "book");
  INFO((done ? "" : done.error().message()));
  REQUIRE(done);
  CHECK(*database->integer("PRAGMA user_version") == 3);
}

TEST_CASE("a failed step leaves the file unchanged, with its backup") {
  test::TemporaryFolder folder;
  make_first(folder.file("book"));
  constexpr std::array kBroken{kSteps[0], kSteps[1], "THIS IS NO SQL;"};
  {
    auto database = Database::open(folder.file("book"));
    CHECK_FALSE(store::bring_up_to_date(*database, kBroken, "book"));
  }
  auto database = Database::open(folder.file("book"));
  CHECK(*database->integer("PRAGMA user_version") == 1);
  CHECK(*database->integer("SELECT count(*) FROM first") == 1);
  CHECK(std::filesystem::exists(folder.file("book.version-1")));
}

TEST_CASE("a file of a newer version is refused and stays unchanged") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("book");
  {
    auto database = Database::open(path);
    REQUIRE(store::bring_up_to_date(*database, kSteps, "book"));
  }
  const std::string before = test::read_file(path);
  auto database = Database::open(path);
  const auto refused = store::bring_up_to_date(*database, kFirst, "book");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message().find("newer version") != std::string::npos);
  CHECK(refused.error().message().find(path) != std::string::npos);
  CHECK(test::read_file(path) == before);
}
