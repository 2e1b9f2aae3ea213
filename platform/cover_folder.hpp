#pragma once

#include "core/landcover/cover_source.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace mastwise::platform {

// A folder or a card of land cover tiles, with its subfolders: N44W072.cover and N44W072.cover.zip.
// Like TileFolder: indexing reads only names and sizes; a tile is mapped, or unpacked, once, on
// first request, and its checksum is verified then. If a cell has several files, a plain one has
// priority over a zipped one, then the earlier path. Bytes of a mapped tile whose card was pulled
// out, or whose file was cut, become unknown. Any thread may call any function.
class CoverFolder : public landcover::CoverSource {
 public:
  // Zipped tiles stay unpacked up to this much memory (1.4 MB each).
  static constexpr std::size_t kUnpackedLimit_bytes = 64u << 20;

  // A folder that does not exist yet counts as empty.
  explicit CoverFolder(std::filesystem::path folder,
                       std::size_t unpacked_limit_bytes = kUnpackedLimit_bytes);
  ~CoverFolder() override;

  // Null for a cell without a tile, and for a damaged one, which problems() then lists.
  std::shared_ptr<const landcover::CoverTile> tile(terrain::TileCell cell) const override;

  // See TileFolder.
  bool refresh();
  bool find_cut() const;
  std::vector<terrain::TileCell> cells() const;
  std::vector<Error> problems() const;

 private:
  class State;
  std::unique_ptr<State> state_;
};

// The notices of all sources of a folder's plain tiles, each once, in the order of the cells. Reads
// only the heads of the files.
std::vector<std::string> cover_notices(const std::filesystem::path& folder);

}  // namespace mastwise::platform
