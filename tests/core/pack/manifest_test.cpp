#include "core/pack/manifest.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::pack;

namespace {

const std::string kSum(64, 'a');

Manifest example() {
  return {.name = "Northeast",
          .made = "2026-11-29",
          .area = {41.0, -76.0, 46.0, -69.0},
          .parts = {{PartKind::terrain,
                     "terrain/N44W072.hgt",
                     2'884'802,
                     kSum,
                     {"a satellite's elevation", "2021", "free"}},
                    {PartKind::landcover, "landcover/N44W072.cover", 1'440'000, kSum, {}},
                    {PartKind::stations, "stations/1.csv", 12, kSum, {"a table", "", ""}}}};
}

// The example's text with one piece replaced.
Result<Manifest> read_with(const std::string& piece, const std::string& other) {
  std::string text = write_manifest(example());
  const std::size_t at = text.find(piece);
  INFO(piece << " in " << text);
  REQUIRE(at != std::string::npos);
  return read_manifest(text.replace(at, piece.size(), other));
}

}  // namespace

TEST_CASE("a manifest is read back as it was written") {
  const auto read = read_manifest(write_manifest(example()));
  REQUIRE(read);
  CHECK(*read == example());
  CHECK(total_bytes(*read) == 2'884'802 + 1'440'000 + 12);
  CHECK(cell_of(read->parts[0]) == terrain::TileCell{44, -72});
  CHECK_FALSE(cell_of(read->parts[2]));
  CHECK(tile_file(PartKind::landcover, {-34, 151}) == "landcover/S34E151.cover");
}

TEST_CASE("a manifest that could unpack elsewhere or lie about its parts is refused") {
  const char* const kNames[] = {
      "../N44W072.hgt",           "/etc/N44W072.hgt",      "terrain/../N44W072.hgt",
      "terrain/n44w072.hgt",      "terrain/N99W072.hgt",   "terrain/N44W072.hgt.zip",
      "terrain/x/N44W072.hgt",    "terrain/N44W072",       "landcover/N44W072.hgt",
      "terrain/N44W072.SRTM.hgt", "terrain\\\\N44W072.hgt"};
  for (const std::string name : kNames) {
    const auto read = read_with("terrain/N44W072.hgt", name);
    INFO(name);
    REQUIRE_FALSE(read);
    CHECK(read.error().where.find("part 1") != std::string::npos);
  }
  CHECK_FALSE(read_with("stations/1.csv", "stations/a.csv"));
  CHECK_FALSE(read_with("landcover/N44W072.cover", "stations/1.csv"));
  CHECK_FALSE(read_with("2884802", "-1"));
  CHECK_FALSE(read_with("2884802", "99999999999"));
  CHECK_FALSE(read_with(kSum, kSum.substr(1)));
  CHECK_FALSE(read_with(kSum, "A" + kSum.substr(1)));
  CHECK_FALSE(read_with("\"terrain\"", "\"music\""));
  CHECK_FALSE(read_with("41.0", "91.0"));
  CHECK_FALSE(read_with("\"made\"", "\"area\""));
}

TEST_CASE("a newer pack says that Mastwise is too old, another file that it is no pack") {
  const auto newer = read_with("\"version\": 1", "\"version\": 2");
  REQUIRE_FALSE(newer);
  CHECK(newer.error().remedy == "update Mastwise");
  for (const std::string text : {"", "{}", "[]", "PK", "{\"format\": \"zip\", \"version\": 1}"}) {
    INFO(text);
    REQUIRE_FALSE(read_manifest(text));
    CHECK(read_manifest(text).error().what == "this is not a pack of Mastwise");
  }
}
