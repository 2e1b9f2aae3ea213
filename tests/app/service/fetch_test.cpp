#include "app/service/fetch.hpp"

#include "platform/cover_folder.hpp"
#include "platform/tile_folder.hpp"
#include "tests/support/file_server.hpp"
#include "tests/support/licensing_dump.hpp"
#include "tests/support/made_raster.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/publisher_files.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <filesystem>
#include <map>

#include <catch2/catch.hpp>

using namespace mastwise;
using pack::PartKind;
using terrain::TileCell;
using test::contains;
namespace fs = std::filesystem;

namespace {

// A publisher on this machine, and a tablet.
struct Publisher {
  std::map<std::string, std::string> files = {};
  std::map<std::string, int> statuses = {};
  test::FileServer server{[this](const test::HttpRequest& request) {
    if (const auto status = statuses.find(request.path); status != statuses.end()) {
      return test::HttpAnswer{.status = status->second, .body = "<html>"};
    }
    const auto file = files.find(request.path);
    if (file == files.end()) return test::HttpAnswer{.status = 404, .body = "<Error>NoSuchKey"};
    return test::file_answer(request, file->second,
                             "\"" + std::to_string(std::hash<std::string>()(file->second)) + "\"");
  }};
  test::TemporaryFolder folder;

  fetch::Wish wish(PartKind kind, std::vector<TileCell> cells = {}) {
    const auto sets = fetch::load_publishers();
    REQUIRE(sets);
    const auto set = publishers::choose_set(*sets, kind, "");
    REQUIRE(set);
    return {.set = *set,
            .cells = std::move(cells),
            .home = {.terrain = folder / "terrain",
                     .cover = folder / "landcover",
                     .catalog = folder.file("catalog")},
            .downloads = folder / "downloads",
            .base = server.base()};
  }
  fetch::Fetched run(const fetch::Wish& wish) {
    auto done = fetch::run(wish, fetch::plan(wish));
    INFO((done ? std::string() : done.error().message()));
    REQUIRE(done);
    return std::move(done).value();
  }
  // Files in the folder for downloads.
  std::size_t downloads() const {
    std::size_t count = 0;
    for (const auto& file : fs::directory_iterator(folder / "downloads")) {
      count += file.path().filename() != fetch::kOutcomes ? 1 : 0;
    }
    return count;
  }
};

const std::string kDumpPath = "/dataentry/api/download/dbfile/Current_LMS_Dump.zip";

std::string invented_dump() {
  const test::TemporaryFolder folder;
  test::LicensingDump dump(5'000);
  dump.write_nested_zip(folder.path(), folder / "dump.zip");
  return test::read_file(folder / "dump.zip");
}

}  // namespace

TEST_CASE("a plan connects to nobody, and run fetches the squares into tiles") {
  Publisher publisher;
  publisher.files[test::glo_90_path("N44", "W072")] = test::glo_90_bytes({44, -72});
  publisher.files[test::glo_90_path("N44", "W071")] = test::glo_90_bytes({44, -71});
  const auto wish = publisher.wish(PartKind::terrain, {{44, -72}, {44, -71}, {45, -72}, {45, -71}});
  const fetch::Plan plan = fetch::plan(wish);
  CHECK(plan.files.size() == 4);
  CHECK(plan.cells_on_board == 0);
  CHECK(plan.usual_bytes == 4 * wish.set.usual_bytes);
  CHECK(publisher.server.requests().empty());

  const auto done = publisher.run(wish);
  CHECK(done.files == 2);
  CHECK(done.tiles == std::vector<TileCell>{{44, -72}, {44, -71}});
  CHECK(done.no_file == std::vector<std::string>{"Copernicus_DSM_COG_30_N45_00_W072_00_DEM.tif",
                                                 "Copernicus_DSM_COG_30_N45_00_W071_00_DEM.tif"});
  CHECK(done.fetched_bytes == publisher.files.begin()->second.size() * 2);
  CHECK(publisher.downloads() == 0);
  const platform::TileFolder tiles(wish.home.terrain);
  const auto tile = tiles.tile({44, -72});
  REQUIRE(tile);
  CHECK(tile->arc_seconds() == 3);
  for (const auto& [row, column] : {std::pair(0, 0), std::pair(300, 700), std::pair(1199, 1199)}) {
    CHECK(tile->sample(row, column) == (column / 10 + row / 20) % 200 + 20);
  }
  // The file lacks its east edge, which the eastern neighbor's has.
  const auto neighbor = tiles.tile({44, -71});
  REQUIRE(neighbor);
  for (const int row : {0, 600, 1199}) {
    CHECK(tile->sample(row, 1200) == neighbor->sample(row, 0));
    CHECK(tile->sample(row, 1200) == row / 20 % 200 + 20);
  }
  CHECK(tile->sample(1200, 600) == terrain::kVoidSample);

  // Squares without data are not asked for again.
  const fetch::Plan again = fetch::plan(wish);
  CHECK(again.cells_on_board == 2);
  CHECK(again.cells_empty == 2);
  CHECK(again.files.empty());
  fs::remove(wish.downloads / fetch::kOutcomes);
  CHECK(fetch::plan(wish).files.size() == 2);
}

TEST_CASE("a tile that knows less than half of its ground does not count as on board") {
  Publisher publisher;
  const auto wish = publisher.wish(PartKind::terrain, {{44, -72}, {45, -72}});
  fs::create_directories(wish.home.terrain);
  const auto write_known = [&](TileCell cell, double known_deg) {
    test::write_bytes(wish.home.terrain / (terrain::cell_name(cell) + ".hgt"),
                      test::made_tile_bytes(cell, 1201, [&](double latitude_deg, double) {
                        return latitude_deg < cell.south_deg + known_deg ? 100.0 : -32768.0;
                      }));
  };
  write_known({44, -72}, 0.55);
  write_known({45, -72}, 0.45);
  const fetch::Plan plan = fetch::plan(wish);
  CHECK(plan.cells_on_board == 1);
  REQUIRE(plan.files.size() == 1);
  CHECK(plan.files[0].cells == std::vector<TileCell>{{45, -72}});
}

TEST_CASE("after a refusal the way by hand is told, and what came before stays on board") {
  Publisher publisher;
  publisher.files[test::glo_90_path("N44", "W072")] = test::glo_90_bytes({44, -72});
  publisher.statuses[test::glo_90_path("N44", "W071")] = 403;
  auto wish = publisher.wish(PartKind::terrain, {{44, -72}, {44, -71}});
  wish.keep = true;
  const auto refused = fetch::run(wish, fetch::plan(wish));
  REQUIRE_FALSE(refused);
  CHECK(contains(refused.error().what, "403"));
  CHECK(contains(refused.error().remedy, "in a browser"));
  CHECK(contains(refused.error().remedy, "https://copernicus-dem-90m."));
  CHECK(contains(refused.error().remedy, "mastwise import terrain FILE"));
  CHECK(contains(refused.error().remedy, "1 of 2 files are imported already"));
  CHECK(fetch::plan(wish).cells_on_board == 1);
  CHECK(publisher.downloads() == 1);  // kept
}

TEST_CASE("the regulator's dump becomes stations, and half an archive changes none") {
  Publisher publisher;
  const std::string dump = invented_dump();
  publisher.files[kDumpPath] = dump;
  const auto wish = publisher.wish(PartKind::stations);
  const auto done = publisher.run(wish);
  REQUIRE(done.stations.size() == 1);
  CHECK(done.stations[0].stations_added == test::LicensingDump(5'000).stations());
  CHECK(done.stations[0].source.date.size() == std::string("2026-11-29").size());
  CHECK(publisher.downloads() == 0);

  publisher.files[kDumpPath] = dump.substr(0, dump.size() / 2);
  const auto half = fetch::run(wish, fetch::plan(wish));
  REQUIRE_FALSE(half);
  CHECK(contains(half.error().where, "Current_LMS_Dump.zip"));
  CHECK(contains(half.error().remedy, "the next fetch gets it again"));
  publisher.files[kDumpPath] = dump;
  const auto again = publisher.run(wish);
  REQUIRE(again.stations.size() == 1);
  CHECK(again.stations[0].stations_unchanged == done.stations[0].stations_added);
  CHECK(publisher.downloads() == 0);

  publisher.statuses[kDumpPath] = 404;
  const auto gone = fetch::run(wish, fetch::plan(wish));
  REQUIRE_FALSE(gone);
  CHECK(contains(gone.error().remedy, "--mapping us_lms"));
}

TEST_CASE("a sign-in page in place of a file is not imported") {
  Publisher publisher;
  publisher.files[test::glo_90_path("N44", "W072")] =
      "\n<!DOCTYPE html><html>Welcome, guest</html>";
  const auto wish = publisher.wish(PartKind::terrain, {{44, -72}});
  const auto page = fetch::run(wish, fetch::plan(wish));
  REQUIRE_FALSE(page);
  CHECK(contains(page.error().what, "web page"));
  CHECK(publisher.downloads() == 0);
}

TEST_CASE("stopping a fetch keeps what came for the next time") {
  Publisher publisher;
  publisher.files[test::glo_90_path("N44", "W072")] = test::glo_90_bytes({44, -72});
  const auto wish = publisher.wish(PartKind::terrain, {{44, -72}});
  for (const bool importing : {false, true}) {
    const auto stopped = fetch::run(wish, fetch::plan(wish), [&](const fetch::Progress& now) {
      return now.importing != importing;
    });
    REQUIRE(stopped);
    CHECK(stopped->stopped);
    CHECK(stopped->files == 0);
    CHECK(stopped->kept.size() == (importing ? 1 : 0));
    CHECK(fetch::plan(wish).cells_on_board == 0);
  }
  CHECK(publisher.run(wish).files == 1);
  CHECK(publisher.downloads() == 0);
}

TEST_CASE("a whole land cover file of the publisher is fetched by its layout") {
  const std::string name = "ESA_WorldCover_10m_2021_v200_N00E006_Map.tif";
  const auto real = test::reference("landcover/" + name);
  if (!real || test::kSanitized) return;
  Publisher publisher;
  publisher.files["/v200/2021/map/" + name] = test::read_file(*real);
  const auto wish = publisher.wish(PartKind::landcover, {{0, 6}, {0, 7}});
  const fetch::Plan plan = fetch::plan(wish);
  REQUIRE(plan.files.size() == 1);
  const auto done = publisher.run(wish);
  CHECK(done.files == 1);
  CHECK(done.fetched_bytes == fs::file_size(*real));
  const platform::CoverFolder tiles(wish.home.cover);
  // Sao Tome lies at 0.2 N, 6.6 E: land, most of it under trees.
  const auto tile = tiles.tile({0, 6});
  REQUIRE(tile);
  CHECK(tile->at(240, 720) == landcover::CoverClass::trees);
  // Most of the squares is open sea, which the publisher leaves without a class.
  const fetch::Plan again = fetch::plan(wish);
  CHECK(again.files.empty());
  CHECK(again.cells_on_board + again.cells_empty == 2);
  fs::remove(wish.home.cover / "N00E006.cover");
  CHECK(fetch::plan(wish).files.size() == 1);
}
