#include "platform/tile_folder.hpp"

#include "platform/cell_folder.hpp"

#include <utility>

namespace mastwise::platform {
namespace {

struct TerrainTiles {
  using Tile = terrain::Tile;
  // Bytes of a mapped tile that can no longer be read are voids: kVoidSample, big-endian.
  static constexpr MappedFile::Lost kLost = {std::byte{0x80}, std::byte{0x00}};
  static constexpr const char* kLostText =
      "terrain tile can no longer be read in full; the rest is void";
  static const TileNaming& naming() { return kTerrainTiles; }
  static Result<Tile> over(terrain::TileCell cell, std::span<const std::byte> bytes) {
    return Tile::over(cell, bytes);
  }
};

}  // namespace

class TileFolder::State : public CellFolder<TerrainTiles> {
 public:
  using CellFolder::CellFolder;
};

TileFolder::TileFolder(std::filesystem::path folder, std::size_t unpacked_limit_bytes)
    : state_(std::make_unique<State>(std::move(folder), unpacked_limit_bytes)) {}

TileFolder::~TileFolder() = default;

std::shared_ptr<const terrain::Tile> TileFolder::tile(terrain::TileCell cell) const {
  return state_->tile(cell);
}

bool TileFolder::refresh() {
  return state_->refresh();
}

bool TileFolder::find_cut() const {
  return state_->find_cut();
}

std::vector<terrain::TileCell> TileFolder::cells() const {
  return state_->cells();
}

std::vector<Error> TileFolder::problems() const {
  return state_->problems();
}

}  // namespace mastwise::platform
