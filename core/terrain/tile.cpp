#include "core/terrain/tile.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>

namespace mastwise::terrain {
namespace {

std::optional<int> digits(std::string_view text) {
  int number = 0;
  for (const char digit : text) {
    if (digit < '0' || digit > '9') return std::nullopt;
    number = 10 * number + (digit - '0');
  }
  return number;
}

// `positive` or `negative` as a sign, in either case; 0 for any other letter.
int hemisphere(char letter, char positive, char negative) {
  const char lower = static_cast<char>(letter | 0x20);
  if (lower == positive) return 1;
  return lower == negative ? -1 : 0;
}

std::uintmax_t bytes_of_side(int side) {
  return 2 * static_cast<std::uintmax_t>(side) * static_cast<std::uintmax_t>(side);
}

}  // namespace

TileCell cell_of(Position position) {
  return {.south_deg = std::min(static_cast<int>(std::floor(position.latitude_deg())), 89),
          .west_deg = static_cast<int>(std::floor(position.longitude_deg()))};
}

std::string cell_name(TileCell cell) {
  return fmt::format("{}{:02}{}{:03}", cell.south_deg < 0 ? 'S' : 'N', std::abs(cell.south_deg),
                     cell.west_deg < 0 ? 'W' : 'E', std::abs(cell.west_deg));
}

std::optional<TileCell> cell_named(std::string_view file_name) {
  constexpr std::size_t kNameLength = 7;
  if (file_name.size() < kNameLength) return std::nullopt;
  if (file_name.size() > kNameLength && file_name[kNameLength] != '.') return std::nullopt;
  const int north = hemisphere(file_name[0], 'n', 's');
  const int east = hemisphere(file_name[3], 'e', 'w');
  const auto latitude = digits(file_name.substr(1, 2));
  const auto longitude = digits(file_name.substr(4, 3));
  if (north == 0 || east == 0 || !latitude || !longitude) return std::nullopt;
  const TileCell cell{.south_deg = north * *latitude, .west_deg = east * *longitude};
  const bool on_globe = cell.south_deg >= -90 && cell.south_deg <= 89 && cell.west_deg >= -180 &&
                        cell.west_deg <= 179;
  if (!on_globe) return std::nullopt;
  return cell;
}

std::optional<int> Tile::side_of_size(std::uintmax_t bytes) {
  for (const int side : {kSide3ArcSeconds, kSide1ArcSecond}) {
    if (bytes == bytes_of_side(side)) return side;
  }
  return std::nullopt;
}

Error Tile::size_error(std::string where, std::uintmax_t bytes) {
  return {
      .what = fmt::format("terrain tile of {} bytes; a tile has {} (3 arc seconds) or {} "
                          "(1 arc second)",
                          bytes, bytes_of_side(kSide3ArcSeconds), bytes_of_side(kSide1ArcSecond)),
      .where = std::move(where),
      .remedy = "copy the tile again from its source"};
}

Result<Tile> Tile::over(TileCell cell, std::span<const std::byte> bytes) {
  const auto side = side_of_size(bytes.size());
  if (!side) return size_error(cell_name(cell), bytes.size());
  return Tile(cell, *side, bytes.data());
}

// A void sample with zero weight, as for a point on the line between two known ones, is harmless.
double Tile::height_beside_void_m(int row, int column, double u, double v) const {
  double height_m = 0.0;
  for (const int south : {0, 1}) {
    for (const int east : {0, 1}) {
      const double weight = (east == 1 ? u : 1.0 - u) * (south == 1 ? v : 1.0 - v);
      if (weight == 0.0) continue;
      const std::int16_t corner = sample(row + south, column + east);
      if (corner == kVoidSample) return std::numeric_limits<double>::quiet_NaN();
      height_m += weight * corner;
    }
  }
  return height_m;
}

}  // namespace mastwise::terrain
