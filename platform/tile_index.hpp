#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::platform {

// How the files of one kind of tile are named and how large they are.
struct TileNaming {
  std::string_view end;  // of a plain file's name, in lower case; a zipped one adds ".zip"
  bool (*right_size)(std::uintmax_t bytes);
  Error (*size_error)(std::string where, std::uintmax_t bytes);
};
extern const TileNaming kTerrainTiles;  // .hgt
extern const TileNaming kCoverTiles;    // .cover

// Whether a name ends so, in either case.
bool ends_in(std::string_view name, std::string_view lower_case_end);

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
TileIndex index_tiles(const std::filesystem::path& folder, const TileNaming& naming);

// Whether the folders may have changed since the index was made.
bool may_have_changed(const TileIndex& index);

}  // namespace mastwise::platform
