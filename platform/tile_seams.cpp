#include "platform/tile_seams.hpp"

#include "platform/tile_folder.hpp"
#include "platform/tile_writer.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <set>

namespace mastwise::platform {
namespace {

using terrain::kVoidSample;
using terrain::Tile;
using terrain::TileCell;

// The cell beside it; none beyond a pole.
std::optional<TileCell> beside(TileCell cell, int north, int east) {
  const int south_deg = cell.south_deg + north;
  if (south_deg < -90 || south_deg > 89) return std::nullopt;
  return TileCell{south_deg, (cell.west_deg + east + 180 + 360) % 360 - 180};
}

// A tile's bytes with the void samples of its edges completed from its neighbors; empty if there is
// nothing to complete.
class Completed {
 public:
  Completed(const TileFolder& tiles, const Tile& tile) : tile_(tile), last_(tile.side() - 1) {
    for (int north = -1; north <= 1; ++north) {
      for (int east = -1; east <= 1; ++east) {
        const auto cell = beside(tile.cell(), north, east);
        const auto neighbor =
            cell && (north != 0 || east != 0) ? tiles.tile(*cell) : std::shared_ptr<const Tile>();
        if (neighbor && neighbor->side() == tile.side()) take_edge(*neighbor, north, east);
      }
    }
  }
  const std::vector<std::byte>& bytes() const { return bytes_; }

 private:
  // The common row, column or corner.
  void take_edge(const Tile& neighbor, int north, int east) {
    const int first_row = north < 0 ? last_ : 0;
    const int last_row = north > 0 ? 0 : last_;
    const int first_column = east > 0 ? last_ : 0;
    const int last_column = east < 0 ? 0 : last_;
    for (int row = first_row; row <= last_row; ++row) {
      for (int column = first_column; column <= last_column; ++column) {
        if (tile_.sample(row, column) != kVoidSample) continue;
        const std::int16_t height = neighbor.sample(row + north * last_, column - east * last_);
        if (height != kVoidSample) put(row, column, height);
      }
    }
  }
  void put(int row, int column, std::int16_t height) {
    const auto side = static_cast<std::size_t>(tile_.side());
    if (bytes_.empty()) {
      bytes_.reserve(2 * side * side);
      for (int r = 0; r <= last_; ++r) {
        for (int c = 0; c <= last_; ++c) append(tile_.sample(r, c));
      }
    }
    const std::size_t at =
        2 * (static_cast<std::size_t>(row) * side + static_cast<std::size_t>(column));
    bytes_[at] = static_cast<std::byte>(static_cast<std::uint16_t>(height) >> 8);
    bytes_[at + 1] = static_cast<std::byte>(height & 0xff);
  }
  void append(std::int16_t height) {
    bytes_.push_back(static_cast<std::byte>(static_cast<std::uint16_t>(height) >> 8));
    bytes_.push_back(static_cast<std::byte>(height & 0xff));
  }

  const Tile& tile_;
  const int last_;
  std::vector<std::byte> bytes_;
};

}  // namespace

std::vector<TileCell> close_seams(const std::filesystem::path& folder,
                                  const std::vector<TileCell>& cells) {
  std::set<TileCell> looked_at;
  for (const TileCell cell : cells) {
    for (int north = -1; north <= 1; ++north) {
      for (int east = -1; east <= 1; ++east) {
        if (const auto one = beside(cell, north, east)) looked_at.insert(*one);
      }
    }
  }
  const TileFolder tiles(folder);
  TileWriter writer(folder, kTerrainTiles);
  if (!writer.start()) return {};
  for (const TileCell cell : looked_at) {
    const auto tile = tiles.tile(cell);
    if (!tile) continue;
    const Completed completed(tiles, *tile);
    if (!completed.bytes().empty() && !writer.write(cell, completed.bytes())) return {};
  }
  const auto placed = writer.place();
  return placed ? *placed : std::vector<TileCell>();
}

}  // namespace mastwise::platform
