#include "core/terrain/profile.hpp"
#include "platform/tile_folder.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/tablet.hpp"

#include <atomic>
#include <cmath>
#include <thread>

#include <catch2/catch.hpp>
#include <zip.h>

// A card that is pulled out while it is read: the app goes on, and says what is missing.
using namespace mastwise;
namespace fs = std::filesystem;
using test::Stage;
using test::Tablet;

namespace {

std::vector<std::byte> flat_tile(terrain::TileCell cell) {
  return test::made_tile_bytes(cell, 1201, [](double, double) { return 100.0; });
}

void write_zipped(const fs::path& path, const std::vector<std::byte>& bytes) {
  int code = 0;
  zip_t* const archive = zip_open(path.c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code);
  REQUIRE(archive != nullptr);
  zip_source_t* const source = zip_source_buffer(archive, bytes.data(), bytes.size(), 0);
  REQUIRE(zip_file_add(archive, "N45E007.hgt", source, ZIP_FL_ENC_UTF_8) >= 0);
  REQUIRE(zip_close(archive) == 0);
}

void cut_across(const terrain::TileSource& tiles, terrain::PathProfile& profile) {
  terrain::cut_profile(tiles, *Position::at_deg(45.1, 7.1), *Position::at_deg(45.9, 7.9), profile);
}

std::string many_rows(int count) {
  std::string text = test::kOwnHeader;
  for (int i = 0; i < count; ++i) {
    text += "Q" + std::to_string(1'000 + i) + ",ATSC,23,42." + std::to_string(1'000 + i) +
            ",-118.5,Basin\n";
  }
  return text;
}

}  // namespace

TEST_CASE(
    "tiles cut short while four threads read them turn into voids, and into no wrong height") {
  const test::TemporaryFolder folder;
  const int rounds = test::kSanitized ? 3 : 20;
  int wrong = 0;
  for (int round = 0; round < rounds; ++round) {
    const fs::path path = folder / "N45E007.hgt";
    test::write_bytes(path, flat_tile({45, 7}));
    platform::TileFolder tiles(folder.path());
    const auto tile = tiles.tile({45, 7});
    REQUIRE(tile);
    std::atomic<bool> pulled = false;
    std::vector<std::thread> threads;
    for (int reader = 0; reader < 4; ++reader) {
      threads.emplace_back([&] {
        terrain::PathProfile profile;
        for (int left = 3; left > 0; left -= pulled ? 1 : 0) {
          cut_across(tiles, profile);
        }
      });
    }
    // Within a page: the system shows zeros from there to the page's end.
    fs::resize_file(path, static_cast<std::uintmax_t>(round) * 130'000 + 1'000);
    pulled = true;
    for (std::thread& thread : threads) thread.join();
    // The next survey asks for changes first.
    CHECK(tiles.refresh());
    CHECK_FALSE(tiles.refresh());
    for (int row = 0; row < 1'201; ++row) {
      for (int column = 0; column < 1'201; ++column) {
        const auto sample = tile->sample(row, column);
        wrong += sample != 100 && sample != terrain::kVoidSample ? 1 : 0;
      }
    }
    CHECK_FALSE(terrain::ground_height_m(tiles, *Position::at_deg(45.0, 7.5)));
    REQUIRE(tiles.problems().size() == 1);
    fs::remove(path);
  }
  CHECK(wrong == 0);
}

TEST_CASE("a zip that vanishes before or after it was unpacked ends no survey") {
  const test::TemporaryFolder folder;
  const fs::path path = folder / "N45E007.hgt.zip";
  const auto tile = flat_tile({45, 7});
  SECTION("before") {
    write_zipped(path, tile);
    const platform::TileFolder tiles(folder.path());
    fs::remove(path);
    CHECK_FALSE(tiles.tile({45, 7}));
    REQUIRE(tiles.problems().size() == 1);
    CHECK(tiles.problems()[0].where == path.string());
    CHECK_FALSE(tiles.problems()[0].remedy.empty());
  }
  SECTION("after") {
    write_zipped(path, tile);
    const platform::TileFolder tiles(folder.path());
    REQUIRE(tiles.tile({45, 7}));
    fs::remove(path);
    CHECK(terrain::ground_height_m(tiles, *Position::at_deg(45.5, 7.5)) == 100.0);
  }
}

TEST_CASE("a station table that is deleted or cut short during its import changes nothing unseen") {
  Tablet tablet;
  const std::string table = tablet.table("stations.csv", many_rows(400));
  Stage stage(test::kTablet, tablet.folder());
  test::pick(stage, tablet, "stations.csv");
  SECTION("deleted") {
    fs::remove(tablet.path() / "stick/stations.csv");
    stage.tap("take in");
    CHECK(stage.model().data.question.step != IntakeStep::Report);
    CHECK(stage.shows_within("stations.csv"));
    CHECK(tablet.with_call_sign("Q1000").empty());
  }
  SECTION("cut within a row") {
    const fs::path path = tablet.path() / "stick/stations.csv";
    fs::resize_file(path, fs::file_size(path) / 2 - 20);
    stage.tap("take in");
    const IntakeReport& report = test::report_of(stage);
    CHECK(report.stations.stations_added + report.rejected == report.stations.rows_read);
    CHECK(report.rejected == 1);
  }
  SECTION("emptied") {
    fs::resize_file(tablet.path() / "stick/stations.csv", 0);
    stage.tap("take in");
    CHECK(stage.model().data.question.step != IntakeStep::Report);
    CHECK(tablet.with_call_sign("Q1000").empty());
  }
  // The app goes on.
  stage.set(act::OpenSheet{Sheet::None});
  stage.tap("place Here");
  CHECK(stage.model().place == Place::Here);
}
