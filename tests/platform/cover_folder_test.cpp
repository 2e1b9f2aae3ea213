#include "platform/cover_folder.hpp"

#include "core/landcover/cover_profile.hpp"
#include "tests/support/made_cover.hpp"
#include "tests/support/temporary_folder.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using landcover::CoverClass;
using landcover::CoverTile;

std::vector<std::byte> wooded(terrain::TileCell cell) {
  return test::made_cover_bytes(cell, [](int, int) { return CoverClass::trees; }, {"(c) Q"});
}

Position in_alps() {
  return *Position::at_deg(45.5, 7.5);
}

void check_refused(const fs::path& folder, const char* why) {
  const CoverFolder cover(folder);
  CHECK(landcover::class_at(cover, in_alps()) == CoverClass::unknown);
  REQUIRE(cover.problems().size() == 1);
  const std::string message = cover.problems()[0].message();
  INFO(message);
  CHECK(message.find("N45E007.cover") != std::string::npos);
  CHECK(message.find(why) != std::string::npos);
  CHECK(message.find("import") != std::string::npos);
}

}  // namespace

TEST_CASE("cover tiles of a folder are found by name beside terrain tiles") {
  const test::TemporaryFolder folder;
  fs::create_directories(folder / "alps");
  test::write_bytes(folder / "alps/N45E007.cover", wooded({45, 7}));
  test::write_bytes(folder / "n46e007.COVER", wooded({46, 7}));
  test::write_bytes(folder / "N47E007.hgt", {});
  const CoverFolder cover(folder.path());
  CHECK(cover.cells() == std::vector<terrain::TileCell>{{45, 7}, {46, 7}});
  CHECK(landcover::class_at(cover, in_alps()) == CoverClass::trees);
  REQUIRE(cover.tile({46, 7}));
  CHECK(cover.tile({46, 7})->notices() == std::vector<std::string>{"(c) Q"});
  CHECK(cover.problems().empty());
}

TEST_CASE("a damaged or cut cover tile is unknown, and its problem is listed") {
  const test::TemporaryFolder folder;
  auto bytes = wooded({45, 7});
  SECTION("one byte of the classes changed") {
    bytes[CoverTile::kHeadBytes + 700'000] = std::byte{1};
    test::write_bytes(folder / "N45E007.cover", bytes);
    check_refused(folder.path(), "checksum");
  }
  SECTION("cut") {
    bytes.resize(700'000);
    test::write_bytes(folder / "N45E007.cover", bytes);
    check_refused(folder.path(), "700000 bytes");
  }
  SECTION("cut and filled with zeros, as after a power loss") {
    std::fill(bytes.begin() + 700'000, bytes.end(), std::byte{0});
    test::write_bytes(folder / "N45E007.cover", bytes);
    check_refused(folder.path(), "checksum");
  }
  SECTION("a tile of another cell under this name") {
    test::write_bytes(folder / "N45E007.cover", wooded({46, 7}));
    check_refused(folder.path(), "another cell");
  }
}

TEST_CASE("a cover tile that is cut while in use becomes unknown, never another class", "[linux]") {
  const test::TemporaryFolder folder;
  test::write_bytes(folder / "N45E007.cover", wooded({45, 7}));
  CoverFolder cover(folder.path());
  const auto tile = cover.tile({45, 7});
  REQUIRE(tile);
  fs::resize_file(folder / "N45E007.cover", CoverTile::kHeadBytes + 600 * CoverTile::kSide);
  CHECK(cover.refresh());
  std::size_t trees = 0, unknown = 0;
  for (int north = 0; north < CoverTile::kSide; ++north) {
    for (int east = 0; east < CoverTile::kSide; ++east) {
      trees += tile->at(north, east) == CoverClass::trees ? 1 : 0;
      unknown += tile->at(north, east) == CoverClass::unknown ? 1 : 0;
    }
  }
  CHECK(trees == 600 * CoverTile::kSide);
  CHECK(trees + unknown == CoverTile::kClassBytes);
  REQUIRE_FALSE(cover.problems().empty());
  CHECK(cover.problems()[0].where.find("N45E007.cover") != std::string::npos);
}

}  // namespace mastwise::platform
