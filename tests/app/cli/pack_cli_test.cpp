#include "tests/support/child_program.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace mastwise;
using nlohmann::json;
using test::Arguments;
using test::contains;

namespace {

// A data folder with one tile and the invented stations.
void fill_data(const std::string& folder) {
  std::filesystem::create_directories(folder + "/terrain");
  const auto bytes = test::made_tile_bytes({42, -119}, 1201, [](double, double) { return 1300.0; });
  std::ofstream(folder + "/terrain/N42W119.hgt", std::ios::binary)
      .write(reinterpret_cast<const char*>(bytes.data()),
             static_cast<std::streamsize>(bytes.size()));
  test::fill_catalog(folder + "/catalog");
}

}  // namespace

TEST_CASE("pack make, show, check and take carry a region from one data folder to another") {
  test::TemporaryFolder folder;
  const std::string maker = folder.file("maker"), other = folder.file("other");
  const std::string file = folder.file("lakes.mwpack");
  fill_data(maker);
  const auto made =
      test::run_program({"pack", "make", file, "--around", "42.5,-118.5", "--radius-km", "80",
                         "--name", "Lakes", "--origin", "terrain=made heights;2026;free", "--json"},
                        maker);
  INFO(made.errors << made.output);
  REQUIRE(made.status == 0);
  const json manifest = json::parse(made.output);
  CHECK(manifest.at("name") == "Lakes");
  REQUIRE(manifest.at("parts").size() == 2);
  CHECK(manifest["parts"][0].at("license") == "free");

  const auto shown = test::run_program({"pack", "show", file}, other);
  CHECK(contains(shown.output, "terrain: 1 files, 2.9 MB; made heights, 2026; free"));
  CHECK(contains(shown.output, "INVENTED, 2026-06-01; license not told"));
  CHECK(test::run_program({"pack", "check", file}, other).status == 0);

  const auto taken = test::run_program({"pack", "take", file, "--json"}, other);
  INFO(taken.errors);
  REQUIRE(taken.status == 0);
  CHECK(json::parse(taken.output).at("tiles_new") == 1);
  CHECK(json::parse(taken.output).at("stations_added").get<int>() > 3);
  CHECK(std::filesystem::exists(other + "/terrain/N42W119.hgt"));
}

TEST_CASE("pack says what is wrong: no region, no folder, no pack") {
  test::TemporaryFolder folder;
  const auto run = [&](const Arguments& arguments) {
    return test::run_program(arguments, folder.file("data"));
  };
  const auto nowhere = run({"pack", "make", folder.file("x.mwpack")});
  CHECK(nowhere.status == 1);
  CHECK(contains(nowhere.errors, "no region is given; add --around"));
  const auto box = run({"pack", "make", folder.file("x.mwpack"), "--bbox", "1,2,3"});
  CHECK(contains(box.errors, "--bbox: \"1,2,3\" is not four numbers"));
  const auto lost = run({"pack", "make", folder.file("x.mwpack"), "--bbox", "1,2,3,4", "--from",
                         folder.file("lost")});
  CHECK(contains(lost.errors, "lost: this is not a folder"));
  const auto kind =
      run({"pack", "make", folder.file("x.mwpack"), "--bbox", "1,2,3,4", "--origin", "music=a"});
  CHECK(contains(kind.errors, "--origin: \"music=a\" does not begin with a kind of data"));
  std::ofstream(folder.file("x.mwpack")) << "text";
  const auto foreign = run({"pack", "show", folder.file("x.mwpack")});
  CHECK(foreign.status == 1);
  CHECK(contains(foreign.errors, "this pack cannot be read"));
}
