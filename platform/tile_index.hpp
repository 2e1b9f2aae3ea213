#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <vector>

namespace mastwise::platform {

// A file named like a tile, as the folder lists it.
struct TileFile {
  std::filesystem::path path;
  std::uintmax_t size_bytes = 0;
  std::filesystem::file_time_type written;
  bool zipped = false;
  bool operator==(const TileFile&) const = default;
};

// The contents of a folder of tiles and its subfolders.
struct TileIndex {
  std::map<terrain::TileCell, TileFile> files;
  std::map<std::filesystem::path, std::filesystem::file_time_type> folders;
  std::vector<Error> wrong_sizes;
  std::filesystem::file_time_type read_at;
};

// Lists names, sizes and times without opening any file. Skips hidden folders, and folders more
// than kDeepestFolder below the first. Unreadable folders count as empty.
inline constexpr int kDeepestFolder = 4;
TileIndex index_tiles(const std::filesystem::path& folder);

// Whether the folders may have changed since the index was made.
bool may_have_changed(const TileIndex& index);

}  // namespace mastwise::platform
