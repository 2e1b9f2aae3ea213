#include "tests/support/made_cover.hpp"

#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::test {
namespace {

struct OwningCover {
  std::vector<std::byte> bytes;
  landcover::CoverTile tile;
};

}  // namespace

std::vector<std::byte> made_cover_bytes(terrain::TileCell cell, const CoverAt& cover,
                                        const std::vector<std::string>& notices) {
  std::vector<landcover::CoverClass> classes(landcover::CoverTile::kClassBytes);
  for (int north = 0; north < landcover::CoverTile::kSide; ++north) {
    for (int east = 0; east < landcover::CoverTile::kSide; ++east) {
      classes[static_cast<std::size_t>(landcover::CoverTile::place_of(north, east))] =
          cover(north, east);
    }
  }
  auto bytes = landcover::cover_file(cell, classes, notices);
  REQUIRE(bytes);
  return *std::move(bytes);
}

std::shared_ptr<const landcover::CoverTile> made_cover(terrain::TileCell cell,
                                                       const CoverAt& cover) {
  auto bytes = made_cover_bytes(cell, cover);
  auto tile = landcover::CoverTile::over(cell, bytes);
  REQUIRE(tile);
  auto owner = std::make_shared<OwningCover>(OwningCover{std::move(bytes), *tile});
  return std::shared_ptr<const landcover::CoverTile>(owner, &owner->tile);
}

}  // namespace mastwise::test
