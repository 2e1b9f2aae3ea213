#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace mastwise::terrain {

// The sample value for an unknown height in an SRTM tile.
inline constexpr std::int16_t kVoidSample = -32768;

// One square degree, named by its south-west corner: south within [-90, 89] degrees, west within
// [-180, 179] degrees.
struct TileCell {
  int south_deg = 0;
  int west_deg = 0;
  auto operator<=>(const TileCell&) const = default;
};

// The cell of a position. A position on a degree line belongs to the cell north and east of it, the
// north pole to the cells south of it.
TileCell cell_of(Position position);

// "N44W072".
std::string cell_name(TileCell cell);

// The cell in the first seven characters of a file name, in either case: "N44W072.hgt",
// "s33e151.SRTMGL1.hgt.zip". std::nullopt if they are not a cell of the globe or the eighth
// character, if any, is not a dot.
std::optional<TileCell> cell_named(std::string_view file_name);

// The heights of one cell: a view of the bytes of an SRTM .hgt file (big-endian 16-bit meters above
// the EGM96 geoid, rows from north to south, the outer rows and columns shared with the neighbors).
// The bytes must outlive it. Reading needs no lock.
class Tile {
 public:
  static constexpr int kSide3ArcSeconds = 1201;
  static constexpr int kSide1ArcSecond = 3601;

  // Samples on a side for a file of that many bytes: 1201, 3601, or std::nullopt for any other
  // size.
  static std::optional<int> side_of_size(std::uintmax_t bytes);

  // The error for a file of any other size; `where` names it.
  static Error size_error(std::string where, std::uintmax_t bytes);

  // Errors: bytes that are neither 2,884,802 (3 arc seconds) nor 25,934,402 (1 arc second) long.
  static Result<Tile> over(TileCell cell, std::span<const std::byte> bytes);

  TileCell cell() const { return cell_; }
  int side() const { return side_; }
  int arc_seconds() const { return 3600 / (side_ - 1); }

  // The sample in meters, row 0 at the north edge, column 0 at the west edge, both within [0, side
  // - 1]; kVoidSample if the height is unknown.
  std::int16_t sample(int row, int column) const {
    const std::byte* at = bytes_ + offset(row, column);
    return static_cast<std::int16_t>(byte(at, 0) << 8 | byte(at, 1));
  }

  // Height in meters by bilinear interpolation; `east` and `south` count sample spacings from the
  // north-west corner, both within [0, side - 1]. NaN if a sample with weight is void.
  double height_m(double east, double south) const {
    const int last = side_ - 2;
    const int column = static_cast<int>(east) < last ? static_cast<int>(east) : last;
    const int row = static_cast<int>(south) < last ? static_cast<int>(south) : last;
    const double u = east - column;
    const double v = south - row;
    const std::byte* corner = bytes_ + offset(row, column);
    const std::uint32_t upper_pair = pair(corner);
    const std::uint32_t lower_pair = pair(corner + row_bytes_);
    const auto north_west = static_cast<std::int16_t>(upper_pair >> 16);
    const auto north_east = static_cast<std::int16_t>(upper_pair);
    const auto south_west = static_cast<std::int16_t>(lower_pair >> 16);
    const auto south_east = static_cast<std::int16_t>(lower_pair);
    if (north_west == kVoidSample || north_east == kVoidSample || south_west == kVoidSample ||
        south_east == kVoidSample) [[unlikely]] {
      return height_beside_void_m(row, column, u, v);
    }
    const double upper = north_west + u * (north_east - north_west);
    const double lower = south_west + u * (south_east - south_west);
    return upper + v * (lower - upper);
  }

 private:
  Tile(TileCell cell, int side, const std::byte* bytes)
      : cell_(cell), side_(side), row_bytes_(2 * static_cast<std::size_t>(side)), bytes_(bytes) {}

  std::size_t offset(int row, int column) const {
    return static_cast<std::size_t>(row) * row_bytes_ + 2 * static_cast<std::size_t>(column);
  }
  static std::uint32_t byte(const std::byte* at, int index) {
    return std::to_integer<std::uint32_t>(at[index]);
  }
  // Two neighbors of a row in one load: the western sample in the upper half.
  static std::uint32_t pair(const std::byte* at) {
    return byte(at, 0) << 24 | byte(at, 1) << 16 | byte(at, 2) << 8 | byte(at, 3);
  }
  double height_beside_void_m(int row, int column, double u, double v) const;

  TileCell cell_;
  int side_;
  std::size_t row_bytes_;
  const std::byte* bytes_;
};

}  // namespace mastwise::terrain
