#include "app/service/known_tables.hpp"

#include "app/service/browsing.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

void write(const std::string& path, const std::string& text) {
  std::filesystem::create_directories(std::filesystem::path(path).parent_path());
  std::ofstream(path, std::ios::binary) << text;
}

std::vector<std::string> names(const std::vector<sources::Offer>& offers) {
  std::vector<std::string> all;
  for (const sources::Offer& offer : offers) all.push_back(offer.name);
  return all;
}

// PRACTICE: invented.
const std::string kForeign = "Call,Chan,Lat,Lon\nQAAB,23,44.5,100.25\n";

}  // namespace

TEST_CASE("a folder shows its subfolders, tables and parent") {
  const test::TemporaryFolder folder;
  write(folder.file("stick/b.csv"), kForeign);
  write(folder.file("stick/a.TXT"), kForeign);
  write(folder.file("stick/picture.png"), "x");
  write(folder.file("stick/.hidden.csv"), kForeign);
  write(folder.file("stick/broken.zip"), "no archive");
  write(folder.file("stick/deep/er/c.csv"), kForeign);
  write(folder.file("stick/.hidden/c.csv"), kForeign);
  const auto shown = sources::show_folder(folder.file("stick"));
  REQUIRE(shown);
  CHECK(names(shown->folders) == std::vector<std::string>{"deep"});
  CHECK(names(shown->tables) == std::vector<std::string>{"a.TXT", "b.csv"});
  CHECK(shown->tables.back().bytes == kForeign.size());
  CHECK(shown->parent == folder.path());
  CHECK(shown->set_known_as.empty());
  const auto root = sources::show_folder("/");
  REQUIRE(root);
  CHECK(root->parent.empty());
  const auto none = sources::show_folder(folder.file("gone"));
  REQUIRE_FALSE(none);
  CHECK(none.error().message().find("gone") != std::string::npos);
}

TEST_CASE("joined tables are recognized by their file names, plain or zipped") {
  const test::TemporaryFolder folder;
  const auto way = sources::load_mapping("us_lms");
  REQUIRE(way);
  const auto& joined = std::get<JoinedMapping>(*way);
  for (const JoinedTable& table : joined.tables) {
    if (table.optional) continue;
    CHECK_FALSE(sources::ready_for_set(folder.path()));
    write(folder.file(table.file.file), "x|^|\n");
  }
  const auto ready = sources::ready_for_set(folder.path());
  REQUIRE(ready);
  CHECK(ready->name == "us_lms");
  CHECK(sources::show_folder(folder.path())->set_known_as == "us_lms");
}

TEST_CASE("the regulator's table is recognized by its columns, but not if one is missing") {
  const auto path = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!path) return;
  const auto head = sources::head_of(path->string());
  REQUIRE(head);
  const auto ready = sources::ready_for_table(*head);
  REQUIRE(ready);
  CHECK(ready->name == "us_post_auction");
  std::string other = *head;
  other.replace(other.find("RCAMSL"), 6, "HEIGHT");
  CHECK_FALSE(sources::ready_for_table(other));
}

TEST_CASE("a corrected mapping is reused for the same columns only") {
  const test::TemporaryFolder folder;
  const sources::MappingMemory memory(folder.file("mappings"));
  CHECK_FALSE(memory.recall(kForeign));
  auto guess = guess_mapping(kForeign, {"mine", "2026-01-02"});
  REQUIRE(guess);
  guess->mapping.longitude.positive_is_south_or_west = true;
  REQUIRE(memory.remember(kForeign, guess->mapping));
  const auto known = memory.recall("call,chan,LAT,lon\nQZZZ,7,1,2\n");
  REQUIRE(known);
  CHECK(*known == guess->mapping);
  CHECK_FALSE(memory.recall("Call,Chan,Lat,Lon,More\nQZZZ,7,1,2,3\n"));
  CHECK_FALSE(memory.recall("Chan,Call,Lat,Lon\n7,QZZZ,1,2\n"));
  // Other files in the folder are ignored.
  for (const auto& file : std::filesystem::directory_iterator(folder.file("mappings"))) {
    write(file.path().string(), "{");
  }
  CHECK_FALSE(memory.recall(kForeign));
}

TEST_CASE("a table of programs is distinguished from one of stations") {
  CHECK(sources::is_program_table("call_sign,virtual_channel,network\nQAAB,6.1,N\n"));
  CHECK(sources::is_program_table("# note\nFacility_ID;Virtual_Channel\n17;6.1\n"));
  CHECK_FALSE(sources::is_program_table("call_sign,network\nQAAB,N\n"));
  CHECK_FALSE(sources::is_program_table(kForeign));
  CHECK_FALSE(sources::is_program_table(""));
}

TEST_CASE("each column shows its first value") {
  const auto shown = sources::columns_shown("a,b\n,2\n1,3\n");
  CHECK(shown == std::vector<sources::ColumnShown>{{"a", "1"}, {"b", "2"}});
}
