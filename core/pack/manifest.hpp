#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// A pack is one file with all that a region needs: a zip archive whose first entry,
// "manifest.json", lists every other entry:
//
//   {"format": "mastwise pack", "version": 1,
//    "name": "Northeast", "made": "2026-11-29",
//    "area": {"south_deg": 41, "west_deg": -76, "north_deg": 46, "east_deg": -69},
//    "parts": [{"kind": "terrain", "file": "terrain/N44W072.hgt",
//               "bytes": 2884802, "sha256": "9f86...", "source": "...", "date": "...",
//               "license": "..."}]}
//
// Kinds and their files:
//   terrain    terrain/N44W072.hgt       an elevation tile (terrain::Tile)
//   landcover  landcover/N44W072.cover   a land cover tile (landcover::CoverTile)
//   stations   stations/1.csv            a station table (import_csv.hpp)
//
// A text that nobody told is empty. Any program that reads zip archives can unpack one.
namespace mastwise::pack {

enum class PartKind : std::uint8_t { terrain, landcover, stations };
std::string_view to_text(PartKind kind);

// Where a part came from.
struct Origin {
  std::string source = {}, date = {}, license = {};
  bool operator==(const Origin&) const = default;
};

struct Part {
  PartKind kind = PartKind::terrain;
  std::string file = {};    // its entry in the archive
  std::uint64_t bytes = 0;  // unpacked
  std::string sha256 = {};  // 64 hexadecimal digits in lower case
  Origin origin = {};
  bool operator==(const Part&) const = default;
};

// The covered ground, in degrees; north is above south, and east of the west side going east, also
// across 180 degrees.
struct Area {
  double south_deg = 0.0, west_deg = 0.0, north_deg = 0.0, east_deg = 0.0;
  bool operator==(const Area&) const = default;
};

struct Manifest {
  std::string name = {};
  std::string made = {};  // the day, "2026-11-29"
  Area area = {};
  std::vector<Part> parts = {};
  bool operator==(const Manifest&) const = default;
};

// The entry's name of a tile or of the station table with this number.
std::string tile_file(PartKind kind, terrain::TileCell cell);
std::string station_file(std::size_t number);
// The cell of a tile's part.
std::optional<terrain::TileCell> cell_of(const Part& part);

std::uint64_t total_bytes(const Manifest& manifest);

std::string write_manifest(const Manifest& manifest);

// Errors: not JSON, another format or a newer version, a missing or wrong member, an entry's name
// that is not one of its kind (so that nothing is unpacked elsewhere), or the same name twice.
Result<Manifest> read_manifest(std::string_view text);

}  // namespace mastwise::pack
