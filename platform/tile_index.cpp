#include "platform/tile_index.hpp"

#include "core/landcover/cover_tile.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <system_error>
#include <tuple>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using landcover::CoverTile;
using terrain::Tile;

// Memory cards (FAT) store times in steps of 2 s: a second change within that is invisible.
constexpr std::chrono::seconds kCoarsestFileTime{2};

// The priority of two files of one cell: plain before zipped, larger (finer) before smaller, then
// the earlier path.
bool goes_before(const TileFile& a, const TileFile& b) {
  return std::tuple(a.zipped, b.size_bytes, a.path) < std::tuple(b.zipped, a.size_bytes, b.path);
}

void note_file(const fs::directory_entry& entry, const TileNaming& naming, TileIndex& index) {
  const std::string name = entry.path().filename().string();
  const auto cell = terrain::cell_named(name);
  const bool zipped = ends_in(name, std::string(naming.end) + ".zip");
  if (!cell || !(zipped || ends_in(name, naming.end))) return;
  std::error_code failed;
  if (!entry.is_regular_file(failed)) return;
  TileFile file{.path = entry.path(),
                .size_bytes = entry.file_size(failed),
                .written = entry.last_write_time(failed),
                .zipped = zipped};
  if (failed) return;
  if (!zipped && !naming.right_size(file.size_bytes)) {
    index.wrong_sizes.push_back(naming.size_error(file.path.string(), file.size_bytes));
    return;
  }
  const auto [known, added] = index.files.try_emplace(*cell, file);
  if (!added && goes_before(file, known->second)) known->second = file;
}

void note_folder(const fs::path& folder, TileIndex& index) {
  std::error_code failed;
  const auto written = fs::last_write_time(folder, failed);
  index.folders[folder] = failed ? fs::file_time_type::min() : written;
}

}  // namespace

const TileNaming kTerrainTiles{
    .end = ".hgt",
    .right_size = [](std::uintmax_t bytes) { return Tile::side_of_size(bytes).has_value(); },
    .size_error = Tile::size_error};
const TileNaming kCoverTiles{
    .end = ".cover",
    .right_size = [](std::uintmax_t bytes) { return bytes == CoverTile::kFileBytes; },
    .size_error = CoverTile::size_error};

bool ends_in(std::string_view name, std::string_view lower_case_end) {
  if (name.size() < lower_case_end.size()) return false;
  const std::size_t start = name.size() - lower_case_end.size();
  for (std::size_t i = 0; i < lower_case_end.size(); ++i) {
    const char letter = name[start + i];
    const char lower = letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter | 0x20) : letter;
    if (lower != lower_case_end[i]) return false;
  }
  return true;
}

TileIndex index_tiles(const fs::path& folder, const TileNaming& naming) {
  TileIndex index;
  index.read_at = fs::file_time_type::clock::now();
  note_folder(folder, index);
  std::error_code failed;
  fs::recursive_directory_iterator entry(folder, fs::directory_options::skip_permission_denied,
                                         failed);
  for (; !failed && entry != fs::recursive_directory_iterator(); entry.increment(failed)) {
    std::error_code unknown;
    if (!entry->is_directory(unknown)) {
      note_file(*entry, naming, index);
    } else if (entry->path().filename().string().front() == '.' ||
               entry.depth() >= kDeepestFolder) {
      entry.disable_recursion_pending();
    } else {
      note_folder(entry->path(), index);
    }
  }
  return index;
}

bool may_have_changed(const TileIndex& index) {
  for (const auto& [folder, written] : index.folders) {
    std::error_code failed;
    const auto now_written = fs::last_write_time(folder, failed);
    if ((failed ? fs::file_time_type::min() : now_written) != written) return true;
    if (!failed && index.read_at - written < kCoarsestFileTime) return true;
  }
  return false;
}

}  // namespace mastwise::platform
