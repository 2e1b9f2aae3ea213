#include "core/landcover/cover_tile.hpp"

#include "core/landcover/cover_source.hpp"
#include "tests/support/made_cover.hpp"

#include <cmath>
#include <span>
#include <string_view>

#include <catch2/catch.hpp>

namespace mastwise::landcover {
namespace {

using terrain::TileCell;

constexpr TileCell kCoverCell{.south_deg = 45, .west_deg = 7};

// A different class for neighbors, and each class somewhere.
CoverClass patchwork(int north, int east) {
  return static_cast<CoverClass>((north + 3 * east) % kCoverClasses);
}

Position place(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

}  // namespace

TEST_CASE("clutter heights are those of P.1812 table 2 and P.2108 table 3") {
  // Recommendation ITU-R P.1812-6 table 2, height added to the profile, and P.2108-1 table 3,
  // representative height R at a terminal, both as the reference data quotes them.
  struct Published {
    CoverClass cover;
    double added_m, terminal_m;
    bool built;
  };
  for (const auto& row : {Published{CoverClass::water, 0, 10, false},
                          {CoverClass::open, 0, 10, false},
                          {CoverClass::suburban, 10, 10, true},
                          {CoverClass::urban, 15, 15, true},
                          {CoverClass::trees, 15, 15, true},
                          {CoverClass::dense_urban, 20, 20, true}}) {
    CHECK(added_height_m(row.cover) == row.added_m);
    REQUIRE(terminal_figures(row.cover));
    CHECK(terminal_figures(row.cover)->height_m == row.terminal_m);
    CHECK(terminal_figures(row.cover)->built == row.built);
    CHECK(parse_cover_class(to_text(row.cover)) == row.cover);
  }
  CHECK(std::isnan(added_height_m(CoverClass::unknown)));
  CHECK_FALSE(terminal_figures(CoverClass::unknown));
  CHECK_FALSE(parse_cover_class("forest"));
}

TEST_CASE("the sum of a tile is the CRC-32 of zip and PNG") {
  // The check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms: CBF43926
  // for "123456789"; and zlib's crc32 of "a" and of nothing.
  const auto sum = [](std::string_view text) {
    return cover_sum(std::as_bytes(std::span(text.data(), text.size())));
  };
  CHECK(sum("123456789") == 0xCBF43926);
  CHECK(sum("a") == 0xE8B7BE43);
  CHECK(sum("") == 0);
}

TEST_CASE("a cover tile written and read again has the same classes and notices") {
  const std::vector<std::string> notices{"(c) One", "(c) Another, 2021"};
  const auto bytes = test::made_cover_bytes(kCoverCell, patchwork, notices);
  CHECK(bytes.size() == CoverTile::kFileBytes);
  const auto tile = CoverTile::over(kCoverCell, bytes);
  REQUIRE(tile);
  CHECK(tile->cell() == kCoverCell);
  CHECK(tile->notices() == notices);
  int different = 0;
  for (int north = 0; north < CoverTile::kSide; ++north) {
    for (int east = 0; east < CoverTile::kSide; ++east) {
      different += tile->at(north, east) != patchwork(north, east) ? 1 : 0;
    }
  }
  CHECK(different == 0);
}

TEST_CASE("a cut, changed, renamed or foreign cover tile is refused with a reason") {
  const auto whole = test::made_cover_bytes(kCoverCell, patchwork, {"(c) One"});
  const auto refused = [](TileCell cell, std::span<const std::byte> bytes, const char* why) {
    const auto tile = CoverTile::over(cell, bytes);
    REQUIRE_FALSE(tile);
    INFO(tile.error().message());
    CHECK(tile.error().what.find(why) != std::string::npos);
    CHECK_FALSE(tile.error().remedy.empty());
  };
  refused(kCoverCell, std::span(whole).first(whole.size() - 1), "1444099 bytes");
  refused(kCoverCell, {}, "0 bytes");
  refused({.south_deg = 45, .west_deg = 8}, whole, "another cell");
  // One bit anywhere: in the head's notice, the first and last class, the sum.
  for (const std::size_t at :
       {std::size_t{31}, CoverTile::kHeadBytes, whole.size() - 5, whole.size() - 1}) {
    auto bytes = whole;
    bytes[at] ^= std::byte{1};
    refused(kCoverCell, bytes, "checksum");
  }
  auto newer = whole;
  newer[20] = std::byte{'2'};
  refused(kCoverCell, newer, "newer version");
  refused(kCoverCell, std::vector<std::byte>(CoverTile::kFileBytes), "not a land cover tile");
}

TEST_CASE("a position has the class of its area, and none without a tile") {
  CoverSet cover;
  cover.add(test::made_cover(kCoverCell, patchwork));
  // The middle of the first area is 1.5 arc seconds from the corner.
  constexpr double kArea = 1.0 / 1200.0;
  for (const int north : {0, 1, 600, 1199}) {
    for (const int east : {0, 1, 777, 1199}) {
      const Position middle = place(45.0 + (north + 0.5) * kArea, 7.0 + (east + 0.5) * kArea);
      CHECK(class_at(cover, middle) == patchwork(north, east));
    }
  }
  CHECK(class_at(cover, place(45.0, 7.0)) == patchwork(0, 0));
  CHECK(class_at(cover, place(46.0, 7.5)) == CoverClass::unknown);
  CHECK(class_at(cover, place(45.5, 8.0)) == CoverClass::unknown);
  CHECK(class_at(cover, place(90.0, 7.5)) == CoverClass::unknown);
}

TEST_CASE("a cover tile without room for its notices is an error") {
  const std::vector<CoverClass> classes(CoverTile::kClassBytes, CoverClass::open);
  CHECK_FALSE(cover_file(kCoverCell, classes, {std::string(4'080, 'x')}));
  CHECK_FALSE(cover_file(kCoverCell, classes, {"two\nlines"}));
  CHECK_FALSE(cover_file(kCoverCell, classes, {""}));
  CHECK(cover_file(kCoverCell, classes, {std::string(4'000, 'x')}));
}

}  // namespace mastwise::landcover
