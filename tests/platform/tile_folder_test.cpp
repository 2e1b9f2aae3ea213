#include "platform/tile_folder.hpp"

#include "core/terrain/profile.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <atomic>
#include <chrono>
#include <cmath>
#include <memory>
#include <span>
#include <string>
#include <thread>
#include <utility>

#include <catch2/catch.hpp>
#include <zip.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::Tile;
using terrain::TileCell;

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

std::vector<std::byte> flat_bytes(TileCell cell, double height_m, int side = 1201) {
  return test::made_tile_bytes(cell, side, [height_m](double, double) { return height_m; });
}

std::vector<std::byte> hilly_bytes(TileCell cell) {
  return test::made_tile_bytes(cell, 1201, [](double latitude_deg, double longitude_deg) {
    return 500.0 + 300.0 * std::sin(200.0 * latitude_deg) * std::cos(170.0 * longitude_deg);
  });
}

void write_zip(const fs::path& path,
               const std::vector<std::pair<std::string, std::vector<std::byte>>>& entries) {
  int code = 0;
  zip_t* const archive = zip_open(path.string().c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code);
  REQUIRE(archive != nullptr);
  for (const auto& [name, bytes] : entries) {
    zip_source_t* const source = zip_source_buffer(archive, bytes.data(), bytes.size(), 0);
    REQUIRE(zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8) >= 0);
  }
  REQUIRE(zip_close(archive) == 0);
}

// refresh() treats a folder as unchanged only if its time is older than a card's time resolution.
void settle(const fs::path& folder) {
  fs::last_write_time(folder, fs::file_time_type::clock::now() - std::chrono::minutes(5));
}

}  // namespace

TEST_CASE("tiles of a folder and its subfolders are found by name and size") {
  const test::TemporaryFolder folder;
  fs::create_directories(folder / "europe/alps");
  fs::create_directories(folder / ".hidden");
  test::write_bytes(folder / "N45E007.hgt", flat_bytes({45, 7}, 100));
  test::write_bytes(folder / "europe/n46e007.HGT", flat_bytes({46, 7}, 200, 3601));
  test::write_bytes(folder / "europe/alps/N47E007.SRTMGL1.hgt", flat_bytes({47, 7}, 300));
  test::write_bytes(folder / ".hidden/N48E007.hgt", flat_bytes({48, 7}, 400));
  test::write_bytes(folder / "N49E007.txt", flat_bytes({49, 7}, 500));
  test::write_bytes(folder / "notes.hgt", {});
  const TileFolder tiles(folder.path());
  CHECK(tiles.cells() == std::vector<TileCell>{{45, 7}, {46, 7}, {47, 7}});
  CHECK(tiles.problems().empty());
  CHECK(terrain::ground_height_m(tiles, at(45.5, 7.5)) == 100.0);
  CHECK(terrain::ground_height_m(tiles, at(46.5, 7.5)) == 200.0);
  CHECK(terrain::ground_height_m(tiles, at(47.5, 7.5)) == 300.0);
  CHECK_FALSE(terrain::ground_height_m(tiles, at(48.5, 7.5)));
}

TEST_CASE("a missing folder counts as empty until it appears") {
  const test::TemporaryFolder folder;
  TileFolder tiles(folder / "card");
  CHECK(tiles.cells().empty());
  CHECK_FALSE(tiles.refresh());
  fs::create_directory(folder / "card");
  test::write_bytes(folder / "card/N45E007.hgt", flat_bytes({45, 7}, 100));
  CHECK(tiles.refresh());
  CHECK(terrain::ground_height_m(tiles, at(45.5, 7.5)) == 100.0);
}

TEST_CASE("a file of the wrong size is refused and reported") {
  const test::TemporaryFolder folder;
  auto bytes = flat_bytes({45, 7}, 100);
  bytes.resize(1'000'000);
  test::write_bytes(folder / "N45E007.hgt", bytes);
  const TileFolder tiles(folder.path());
  CHECK_FALSE(terrain::ground_height_m(tiles, at(45.5, 7.5)));
  REQUIRE(tiles.problems().size() == 1);
  const std::string message = tiles.problems()[0].message();
  CHECK(message.find("N45E007.hgt") != std::string::npos);
  CHECK(message.find("1000000 bytes") != std::string::npos);
}

TEST_CASE("among several files for a cell the plain one wins, then the finer") {
  const test::TemporaryFolder folder;
  fs::create_directory(folder / "fine");
  test::write_bytes(folder / "N45E007.hgt", flat_bytes({45, 7}, 3));
  test::write_bytes(folder / "fine/N45E007.hgt", flat_bytes({45, 7}, 1, 3601));
  write_zip(folder / "N45E007.hgt.zip", {{"N45E007.hgt", flat_bytes({45, 7}, 2)}});
  CHECK(terrain::ground_height_m(TileFolder(folder.path()), at(45.5, 7.5)) == 1.0);
  fs::remove(folder / "fine/N45E007.hgt");
  CHECK(terrain::ground_height_m(TileFolder(folder.path()), at(45.5, 7.5)) == 3.0);
  fs::remove(folder / "N45E007.hgt");
  CHECK(terrain::ground_height_m(TileFolder(folder.path()), at(45.5, 7.5)) == 2.0);
}

TEST_CASE("a zipped tile equals the plain one") {
  const test::TemporaryFolder folder;
  const auto bytes = hilly_bytes({45, 7});
  fs::create_directory(folder / "plain");
  fs::create_directory(folder / "zipped");
  test::write_bytes(folder / "plain/N45E007.hgt", bytes);
  write_zip(folder / "zipped/N45E007.SRTMGL3.hgt.zip",
            {{"readme.txt", {}}, {"tiles/N45E007.hgt", bytes}});
  const auto plain = TileFolder(folder / "plain").tile({45, 7});
  const auto zipped = TileFolder(folder / "zipped").tile({45, 7});
  REQUIRE(plain);
  REQUIRE(zipped);
  int different = 0;
  for (int row = 0; row < 1201; ++row) {
    for (int column = 0; column < 1201; ++column) {
      different += plain->sample(row, column) != zipped->sample(row, column) ? 1 : 0;
    }
  }
  CHECK(different == 0);
  CHECK(plain->sample(600, 600) != plain->sample(601, 610));
}

TEST_CASE("a damaged archive is refused and reported on first use") {
  const test::TemporaryFolder folder;
  const fs::path path = folder / "N45E007.hgt.zip";
  const auto damaged_in = [&](const char* how) {
    const TileFolder tiles(folder.path());
    INFO(how);
    CHECK(tiles.cells() == std::vector<TileCell>{{45, 7}});
    CHECK(tiles.problems().empty());
    CHECK_FALSE(tiles.tile({45, 7}));
    REQUIRE(tiles.problems().size() == 1);
    CHECK(tiles.problems()[0].where == path.string());
    CHECK(tiles.problems()[0].message().find(how) != std::string::npos);
    CHECK_FALSE(tiles.tile({45, 7}));
  };
  write_zip(path, {{"N45E007.hgt", hilly_bytes({45, 7})}});
  const std::string whole = test::read_file(path);
  const auto rewrite = [&](const std::string& text) {
    test::write_bytes(path, std::as_bytes(std::span(text)));
  };

  rewrite(whole.substr(0, whole.size() / 2));
  damaged_in("Not a zip archive");
  rewrite("");
  damaged_in("cannot unpack");
  std::string flipped = whole;
  for (std::size_t i = whole.size() / 2; i < whole.size() / 2 + 40; ++i) {
    flipped[i] = static_cast<char>(flipped[i] ^ 0x55);
  }
  rewrite(flipped);
  damaged_in("cannot unpack");

  write_zip(path, {{"N46E007.hgt", hilly_bytes({46, 7})}});
  damaged_in("no matching file");
  write_zip(path,
            {{"a/N45E007.hgt", hilly_bytes({45, 7})}, {"b/N45E007.hgt", hilly_bytes({45, 7})}});
  damaged_in("more than one matching file");
  write_zip(path, {{"N45E007.hgt", std::vector<std::byte>(5000)}});
  damaged_in("wrong size, 5000 bytes");
}

TEST_CASE("added, changed and removed tiles show without a restart", "[linux]") {
  const test::TemporaryFolder folder;
  fs::create_directory(folder / "more");
  test::write_bytes(folder / "N45E007.hgt", flat_bytes({45, 7}, 100));
  settle(folder / "more");
  settle(folder.path());
  TileFolder tiles(folder.path());
  const auto before = tiles.tile({45, 7});
  CHECK_FALSE(tiles.refresh());

  test::write_bytes(folder / "more/N46E007.hgt", flat_bytes({46, 7}, 200));
  CHECK_FALSE(tiles.tile({46, 7}));
  CHECK(tiles.refresh());
  CHECK(terrain::ground_height_m(tiles, at(46.5, 7.5)) == 200.0);
  CHECK(tiles.tile({45, 7}) == before);

  // The folder changed within the last seconds: it is listed again, but has no new tiles.
  CHECK_FALSE(tiles.refresh());

  test::write_bytes(folder / "new", flat_bytes({45, 7}, 150));
  fs::rename(folder / "new", folder / "N45E007.hgt");
  CHECK(tiles.refresh());
  CHECK(terrain::ground_height_m(tiles, at(45.5, 7.5)) == 150.0);
  CHECK(before->sample(0, 0) == 100);

  fs::remove(folder / "N45E007.hgt");
  CHECK(tiles.refresh());
  CHECK_FALSE(tiles.tile({45, 7}));
  CHECK(before->sample(0, 0) == 100);
}

TEST_CASE("a tile cut short during use turns into voids without a crash", "[linux]") {
  const test::TemporaryFolder folder;
  test::write_bytes(folder / "N45E007.hgt", flat_bytes({45, 7}, 100));
  const TileFolder tiles(folder.path());
  CHECK(terrain::ground_height_m(tiles, at(45.9, 7.5)) == 100.0);
  CHECK(tiles.problems().empty());
  fs::resize_file(folder / "N45E007.hgt", 1'000'000);
  CHECK(terrain::ground_height_m(tiles, at(45.9, 7.5)) == 100.0);
  CHECK_FALSE(terrain::ground_height_m(tiles, at(45.1, 7.5)));
  CHECK_FALSE(terrain::ground_height_m(tiles, at(45.0, 8.0)));
  REQUIRE(tiles.problems().size() == 1);
  CHECK(tiles.problems()[0].message().find("no longer be read") != std::string::npos);
}

TEST_CASE("unpacked tiles beyond the limit are dropped, the longest unused first") {
  const test::TemporaryFolder folder;
  for (const int south : {45, 46, 47}) {
    write_zip(folder / (terrain::cell_name({south, 7}) + ".hgt.zip"),
              {{terrain::cell_name({south, 7}) + ".hgt", flat_bytes({south, 7}, south)}});
  }
  const TileFolder tiles(folder.path(), 2 * 2'884'802);
  const std::weak_ptr<const Tile> first = tiles.tile({45, 7});
  const std::weak_ptr<const Tile> second = tiles.tile({46, 7});
  CHECK(tiles.tile({45, 7}) == first.lock());
  const auto third = tiles.tile({47, 7});
  CHECK_FALSE(first.expired());
  CHECK(second.expired());
  CHECK(tiles.tile({46, 7})->sample(0, 0) == 46);
  CHECK(first.expired());
  CHECK(third->sample(0, 0) == 47);
}

TEST_CASE("many threads share one tile and read while the folder changes") {
  const test::TemporaryFolder folder;
  write_zip(folder / "N45E007.hgt.zip", {{"N45E007.hgt", hilly_bytes({45, 7})}});
  test::write_bytes(folder / "N46E007.hgt", hilly_bytes({46, 7}));
  TileFolder tiles(folder.path());
  terrain::PathProfile expected;
  terrain::cut_profile(tiles, at(45.2, 7.1), at(46.8, 7.9), expected);
  REQUIRE(expected.complete());

  std::atomic<int> wrong = 0;
  std::atomic<bool> go = false;
  std::vector<std::shared_ptr<const Tile>> got(4);
  std::vector<std::thread> threads;
  TileFolder fresh(folder.path());
  for (auto& tile : got) {
    threads.emplace_back([&] {
      while (!go) std::this_thread::yield();
      tile = fresh.tile({45, 7});
      terrain::PathProfile profile;
      const int kProfiles = test::kSanitized ? 20 : 200;
      for (int i = 0; i < kProfiles; ++i) {
        terrain::cut_profile(fresh, at(45.2, 7.1), at(46.8, 7.9), profile);
        if (profile.heights_m != expected.heights_m) ++wrong;
      }
    });
  }
  go = true;
  for (int i = 0; i < 20; ++i) {
    test::write_bytes(folder / "N47E007.hgt", flat_bytes({47, 7}, i));
    fresh.refresh();
  }
  for (auto& thread : threads) thread.join();
  CHECK(wrong == 0);
  for (const auto& tile : got) CHECK(tile == got[0]);
}

TEST_CASE("the reference tiles give the same heights mapped and read") {
  const auto folder = test::reference("terrain");
  if (!folder) return;
  const TileFolder tiles(*folder);
  const auto mapped = tiles.tile({44, -72});
  REQUIRE(mapped);
  const auto read = test::read_tile(*folder / "N44W072.hgt", {44, -72});
  for (int row = 0; row < 1201; row += 7) {
    REQUIRE(mapped->sample(row, 1200 - row) == read->sample(row, 1200 - row));
  }
}

}  // namespace mastwise::platform
