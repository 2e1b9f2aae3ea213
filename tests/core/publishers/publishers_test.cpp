#include "core/publishers/publishers.hpp"

#include "platform/files.hpp"

#include <array>

#include <catch2/catch.hpp>

using namespace mastwise;
using pack::PartKind;

namespace {

std::vector<publishers::DataSet> shipped_publishers() {
  const auto text = platform::read_file(platform::assets_folder() + "/publishers/publishers.json");
  REQUIRE(text);
  auto sets = publishers::read_publishers(*text);
  INFO((sets ? std::string() : sets.error().message()));
  REQUIRE(sets);
  return std::move(sets).value();
}

std::vector<std::string> addresses(PartKind kind, const std::string& id,
                                   std::vector<terrain::TileCell> cells) {
  const auto set = publishers::choose_set(shipped_publishers(), kind, id);
  REQUIRE(set);
  std::vector<std::string> found;
  for (const auto& file : publishers::files_for(*set, cells)) found.push_back(file.address);
  return found;
}

// A table of one set with one text replaced.
Error fault_of_table(const std::string& before, const std::string& after) {
  std::string text =
      R"({"sets": [{"id": "a", "kind": "terrain", "name": "n", "publisher": "p", "license": "l",
          "notice": "x", "address": "https://h.example/{lat}{lon}.tif", "square_deg": 1,
          "by_hand": "b"}]})";
  REQUIRE(publishers::read_publishers(text));
  const std::size_t at = text.find(before);
  REQUIRE(at != std::string::npos);
  text.replace(at, before.size(), after);
  const auto sets = publishers::read_publishers(text);
  REQUIRE_FALSE(sets);
  return sets.error();
}

}  // namespace

// The publishers' own layouts, as their pages describe them; the host names are those of an open
// bucket in a region.
TEST_CASE("squares have the addresses of the publishers' layouts") {
  CHECK(
      addresses(PartKind::terrain, "", {{44, -72}}) ==
      std::vector<std::string>{
          "https://copernicus-dem-90m.s3.eu-central-1.amazonaws.com/"
          "Copernicus_DSM_COG_30_N44_00_W072_00_DEM/Copernicus_DSM_COG_30_N44_00_W072_00_DEM.tif"});
  CHECK(
      addresses(PartKind::terrain, "glo_30", {{-34, 151}}) ==
      std::vector<std::string>{
          "https://copernicus-dem-30m.s3.eu-central-1.amazonaws.com/"
          "Copernicus_DSM_COG_10_S34_00_E151_00_DEM/Copernicus_DSM_COG_10_S34_00_E151_00_DEM.tif"});
  const std::string cover =
      "https://esa-worldcover.s3.eu-central-1.amazonaws.com/v200/2021/map/"
      "ESA_WorldCover_10m_2021_v200_";
  CHECK(addresses(PartKind::landcover, "", {{45, -76}, {47, -78}, {44, -76}}) ==
        std::vector<std::string>{cover + "N42W078_Map.tif", cover + "N45W078_Map.tif"});
  CHECK(addresses(PartKind::landcover, "", {{-1, -1}, {0, 6}}) ==
        std::vector<std::string>{cover + "S03W003_Map.tif", cover + "N00E006_Map.tif"});
  CHECK(addresses(PartKind::stations, "", {}) ==
        std::vector<std::string>{"https://enterpriseefiling.fcc.gov/dataentry/api/download/dbfile/"
                                 "Current_LMS_Dump.zip"});
}

TEST_CASE("a file of several squares says which of the wanted ones it covers") {
  const auto set = publishers::choose_set(shipped_publishers(), PartKind::landcover, "worldcover");
  REQUIRE(set);
  const std::array<terrain::TileCell, 3> cells{{{44, -76}, {45, -76}, {47, -78}}};
  const auto files = publishers::files_for(*set, cells);
  REQUIRE(files.size() == 2);
  CHECK(files[0].cells == std::vector<terrain::TileCell>{{44, -76}});
  CHECK(files[1].cells == std::vector<terrain::TileCell>{{45, -76}, {47, -78}});
  CHECK(files[1].name == "ESA_WorldCover_10m_2021_v200_N45W078_Map.tif");
}

TEST_CASE(
    "every shipped set tells its license, its notice and the way by hand, and asks only https") {
  for (const auto& set : shipped_publishers()) {
    INFO(set.id);
    CHECK_FALSE(set.license.empty());
    CHECK_FALSE(set.notice.empty());
    CHECK_FALSE(set.by_hand.empty());
    CHECK(set.address.starts_with("https://"));
  }
}

TEST_CASE("an unknown set names those of its kind") {
  const auto none = publishers::choose_set(shipped_publishers(), PartKind::terrain, "worldcover");
  REQUIRE_FALSE(none);
  CHECK(none.error().remedy == "choose one of: glo_90, glo_30");
}

TEST_CASE("another server keeps the layout") {
  CHECK(publishers::at_base("https://h.example/a/b.tif", "http://127.0.0.1:8000/") ==
        "http://127.0.0.1:8000/a/b.tif");
  CHECK(publishers::at_base("https://h.example/a/b.tif", "") == "https://h.example/a/b.tif");
}

TEST_CASE("a faulty table of publishers says where it is wrong") {
  CHECK(fault_of_table("https://", "http://").where == "publishers, set 1, a");
  CHECK(fault_of_table("{lat}", "").what.find("{lat}") != std::string::npos);
  CHECK(fault_of_table("h.example", "{lat}").what.find("https") != std::string::npos);
  CHECK(fault_of_table("h.example", "x@h.example").what.find("https") != std::string::npos);
  CHECK(fault_of_table("{lon}.tif", "{lon}/").what.find("file's name") != std::string::npos);
  CHECK(fault_of_table("{lon}.tif", "{lon}/..").what.find("file's name") != std::string::npos);
  CHECK(fault_of_table("\"terrain\"", "\"music\"").what == "the kind \"music\" is not known");
  CHECK(fault_of_table("\"terrain\"", "\"stations\"").what.find("mapping") != std::string::npos);
  CHECK(fault_of_table("\"square_deg\": 1", "\"square_deg\": -1").what.find("square_deg") !=
        std::string::npos);
  CHECK(fault_of_table("\"license\": \"l\",", "").what == "\"license\" is missing");
  CHECK(fault_of_table("\"license\"", "\"other\"").what == "the key \"other\" is not known");
  CHECK(fault_of_table("[{", "[[{").where.starts_with("publishers, line"));
}
