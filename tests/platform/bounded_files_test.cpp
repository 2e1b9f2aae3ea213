#include "platform/files.hpp"
#include "platform/table_folder.hpp"
#include "platform/tile_folder.hpp"
#include "platform/zipped_file.hpp"
#include "tests/support/memory_need.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/zip_bomb.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

constexpr long kLittleMb = 48;
constexpr std::uint32_t kBlocks = 150;  // 3.1 GB in 19 MB

// The error of reading a table's stream to its end, and how many bytes came before it.
std::pair<std::optional<Error>, std::size_t> error_at_end(ByteStream& stream) {
  std::size_t given = 0;
  std::string piece(1 << 16, '\0');
  while (true) {
    const auto got = stream.read(piece);
    if (!got) return {got.error(), given};
    if (*got == 0) return {std::nullopt, given};
    given += *got;
  }
}

}  // namespace

TEST_CASE("2026-11-29: a table that would unpack to gigabytes is refused before it is unpacked") {
  const test::TemporaryFolder folder;
  test::write_zip_bomb(folder / "tables.zip", "place.dat", kBlocks, kBlocks * test::kBlockBytes);
  const long need_mb = test::memory_need_mb([&] {
    auto tables = platform::TableFolder::at(folder / "tables.zip");
    const auto refused = tables->open("place.dat");
    return !refused && refused.error().what ==
                           "place.dat unpacks to 2952 MB; the most read from an archive is 2048 MB";
  });
  CHECK(need_mb < kLittleMb);
}

TEST_CASE("2026-11-29: an archive that hides the size of its table is read no further than that") {
  const test::TemporaryFolder folder;
  test::write_zip_bomb(folder / "tables.zip", "place.dat", kBlocks, 100'000);
  auto tables = platform::TableFolder::at(folder / "tables.zip");
  REQUIRE(tables);
  const auto stream = tables->open("place.dat");
  REQUIRE(stream);
  const auto [error, given] = error_at_end(**stream);
  REQUIRE(error);
  CHECK(error->what == "cannot unpack the zip archive: it is larger than it states");
  CHECK(given <= 100'000);
}

TEST_CASE("2026-11-29: an archive whose table ends before its stated size is damaged") {
  const test::TemporaryFolder folder;
  // "foo", deflated, with its right checksum.
  test::write_deflated(folder / "tables.zip", "a", {"\x4b\xcb\xcf\x07\x00", 5}, 1, 5000,
                       0x8C736521);
  auto tables = platform::TableFolder::at(folder / "tables.zip");
  REQUIRE(tables);
  const auto stream = tables->open("a");
  REQUIRE(stream);
  const auto [error, given] = error_at_end(**stream);
  REQUIRE(error);
  CHECK(error->what == "cannot unpack the zip archive: it ends too early");
  CHECK(given == 3);
}

TEST_CASE("2026-11-29: a zipped tile that unpacks to more than a tile is a problem, not memory") {
  const test::TemporaryFolder folder;
  constexpr std::uint32_t kTileBytes = 2 * 1201 * 1201;
  test::write_zip_bomb(folder / "N45E007.hgt.zip", "N45E007.hgt", kBlocks, kTileBytes);
  test::write_zip_bomb(folder / "N46E007.hgt.zip", "N46E007.hgt", kBlocks,
                       kBlocks * test::kBlockBytes);
  const long need_mb = test::memory_need_mb([&] {
    const platform::TileFolder tiles(folder.path());
    return !tiles.tile({45, 7}) && !tiles.tile({46, 7}) && tiles.problems().size() == 2 &&
           tiles.problems()[1].what.find("wrong size, 3096") != std::string::npos;
  });
  CHECK(need_mb < kLittleMb);
}

TEST_CASE("2026-11-29: a file of more than a gigabyte is refused before it is read") {
  const test::TemporaryFolder folder;
  std::ofstream(folder / "long.log") << "$";
  std::filesystem::resize_file(folder / "long.log", platform::kLargestFile + 1);
  const long need_mb = test::memory_need_mb([&] {
    const auto refused = platform::read_file(folder.file("long.log"));
    return !refused && refused.error().what == "cannot read: larger than 1024 MB";
  });
  CHECK(need_mb < kLittleMb);
}
