#include "platform/cover_folder.hpp"

#include "platform/cell_folder.hpp"

#include <algorithm>
#include <fstream>
#include <utility>

namespace mastwise::platform {
namespace {

struct CoverTiles {
  using Tile = landcover::CoverTile;
  static constexpr MappedFile::Lost kLost = {std::byte{0}, std::byte{0}};  // CoverClass::unknown
  static constexpr const char* kLostText =
      "land cover tile can no longer be read in full; the rest is unknown";
  static const TileNaming& naming() { return kCoverTiles; }
  static Result<Tile> over(terrain::TileCell cell, std::span<const std::byte> bytes) {
    return Tile::over(cell, bytes);
  }
};

}  // namespace

class CoverFolder::State : public CellFolder<CoverTiles> {
 public:
  using CellFolder::CellFolder;
};

CoverFolder::CoverFolder(std::filesystem::path folder, std::size_t unpacked_limit_bytes)
    : state_(std::make_unique<State>(std::move(folder), unpacked_limit_bytes)) {}

CoverFolder::~CoverFolder() = default;

std::shared_ptr<const landcover::CoverTile> CoverFolder::tile(terrain::TileCell cell) const {
  return state_->tile(cell);
}

bool CoverFolder::refresh() {
  return state_->refresh();
}

bool CoverFolder::find_cut() const {
  return state_->find_cut();
}

std::vector<terrain::TileCell> CoverFolder::cells() const {
  return state_->cells();
}

std::vector<Error> CoverFolder::problems() const {
  return state_->problems();
}

std::vector<std::string> cover_notices(const std::filesystem::path& folder) {
  std::vector<std::string> notices;
  std::vector<std::byte> head(landcover::CoverTile::kHeadBytes);
  for (const auto& [cell, file] : index_tiles(folder, kCoverTiles).files) {
    if (file.zipped) continue;
    std::ifstream bytes(file.path, std::ios::binary);
    if (!bytes.read(reinterpret_cast<char*>(head.data()),
                    static_cast<std::streamsize>(head.size()))) {
      continue;
    }
    for (std::string& notice : landcover::notices_in_head(head)) {
      if (std::find(notices.begin(), notices.end(), notice) == notices.end()) {
        notices.push_back(std::move(notice));
      }
    }
  }
  return notices;
}

}  // namespace mastwise::platform
