#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"
#include "platform/mapped_file.hpp"
#include "platform/tile_index.hpp"
#include "platform/zipped_file.hpp"

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <shared_mutex>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace mastwise::platform {

// The tiles of a folder, of one kind: what TileFolder and CoverFolder share, described there.
// `Kind` has the type `Tile`, `naming()`, `kLost` (see MappedFile), `kLostText` and `over(cell,
// bytes)`.
template <class Kind>
class CellFolder {
 public:
  using Tile = typename Kind::Tile;
  using TileCell = terrain::TileCell;

  CellFolder(std::filesystem::path folder, std::size_t unpacked_limit_bytes)
      : folder_(std::move(folder)), unpacked_limit_bytes_(unpacked_limit_bytes) {
    take(index_tiles(folder_, Kind::naming()));
  }

  std::shared_ptr<const Tile> tile(TileCell cell);
  bool refresh();
  bool find_cut() const;
  std::vector<TileCell> cells() const;
  std::vector<Error> problems() const;

 private:
  // A tile with its bytes, in one of the first two members.
  struct LoadedTile {
    std::optional<MappedFile> mapped;
    std::vector<std::byte> unpacked;
    std::optional<Tile> tile;
  };
  using Loaded = std::shared_ptr<const LoadedTile>;

  struct Slot {
    explicit Slot(TileFile listed) : file(std::move(listed)) {}
    const TileFile file;
    std::mutex busy;  // locked while loading, so that a tile is loaded once
    Loaded loaded;
    std::optional<Error> problem;
    std::atomic<std::uint64_t> last_use = 0;
  };

  static std::shared_ptr<const Tile> tile_of(const Loaded& loaded) {
    return loaded ? std::shared_ptr<const Tile>(loaded, &*loaded->tile) : nullptr;
  }
  static Result<Loaded> load(TileCell cell, const TileFile& file);
  void take(TileIndex index);
  void drop_longest_unused();
  std::vector<std::shared_ptr<Slot>> all_slots() const;

  const std::filesystem::path folder_;
  const std::size_t unpacked_limit_bytes_;
  std::atomic<std::uint64_t> uses_ = 0;
  std::mutex refreshing_;
  std::mutex dropping_;
  mutable std::shared_mutex listed_;  // guards the members below
  TileIndex index_;
  std::map<TileCell, std::shared_ptr<Slot>> slots_;
};

template <class Kind>
auto CellFolder<Kind>::load(TileCell cell, const TileFile& file) -> Result<Loaded> {
  LoadedTile loaded;
  std::span<const std::byte> bytes;
  if (file.zipped) {
    auto unpacked = unpack_one(
        file.path,
        [cell](std::string_view name) {
          return terrain::cell_named(name) == cell && ends_in(name, Kind::naming().end);
        },
        Kind::naming().right_size);
    if (!unpacked) return unpacked.error();
    loaded.unpacked = std::move(*unpacked);
    bytes = loaded.unpacked;
  } else {
    auto mapped = MappedFile::open(file.path, Kind::kLost);
    if (!mapped) return mapped.error();
    loaded.mapped = std::move(*mapped);
    bytes = loaded.mapped->bytes();
  }
  auto tile = Kind::over(cell, bytes);
  if (!tile) {
    Error error = tile.error();
    error.where = file.path.string();
    return error;
  }
  loaded.tile = *std::move(tile);
  // Bytes read for a check alone need not stay in memory.
  if (loaded.mapped) loaded.mapped->forget();
  return std::make_shared<const LoadedTile>(std::move(loaded));
}

template <class Kind>
auto CellFolder<Kind>::tile(TileCell cell) -> std::shared_ptr<const Tile> {
  std::shared_ptr<Slot> slot;
  {
    const std::shared_lock reading(listed_);
    const auto found = slots_.find(cell);
    if (found == slots_.end()) return nullptr;
    slot = found->second;
  }
  slot->last_use = ++uses_;
  Loaded loaded;
  {
    const std::lock_guard loading(slot->busy);
    if (slot->loaded || slot->problem) return tile_of(slot->loaded);
    const auto result = load(cell, slot->file);
    if (!result) {
      slot->problem = result.error();
      return nullptr;
    }
    loaded = slot->loaded = *result;
  }
  if (slot->file.zipped) drop_longest_unused();
  return tile_of(loaded);
}

// Locks a slot only briefly: other threads may be loading meanwhile.
template <class Kind>
void CellFolder<Kind>::drop_longest_unused() {
  const std::lock_guard alone(dropping_);
  std::map<std::uint64_t, std::shared_ptr<Slot>> unpacked;
  std::size_t unpacked_bytes = 0;
  for (const auto& slot : all_slots()) {
    if (!slot->file.zipped) continue;
    const std::unique_lock looking(slot->busy, std::try_to_lock);
    if (!looking || !slot->loaded) continue;
    unpacked_bytes += slot->loaded->unpacked.size();
    unpacked.emplace(slot->last_use, slot);
  }
  for (const auto& [use, slot] : unpacked) {
    if (unpacked_bytes <= unpacked_limit_bytes_) return;
    const std::lock_guard dropping(slot->busy);
    unpacked_bytes -= slot->loaded->unpacked.size();
    slot->loaded.reset();
  }
}

template <class Kind>
bool CellFolder<Kind>::refresh() {
  const std::lock_guard alone(refreshing_);
  const bool cut = find_cut();
  {
    const std::shared_lock reading(listed_);
    if (!may_have_changed(index_)) return cut;
  }
  TileIndex index = index_tiles(folder_, Kind::naming());
  const bool changed = index.files != index_.files || index.wrong_sizes != index_.wrong_sizes;
  take(std::move(index));
  return changed || cut;
}

// A file that is cut short or written anew in place changes no folder.
template <class Kind>
bool CellFolder<Kind>::find_cut() const {
  bool any = false;
  for (const auto& slot : all_slots()) {
    const std::lock_guard looking(slot->busy);
    if (!slot->loaded || !slot->loaded->mapped) continue;
    std::error_code unknown;
    const auto size = std::filesystem::file_size(slot->file.path, unknown);
    if (!unknown && slot->loaded->mapped->cut(size)) any = true;
  }
  return any;
}

// Unchanged files keep their slot and so their tile.
template <class Kind>
void CellFolder<Kind>::take(TileIndex index) {
  std::map<TileCell, std::shared_ptr<Slot>> slots;
  for (const auto& [cell, file] : index.files) {
    const auto before = slots_.find(cell);
    const bool same = before != slots_.end() && before->second->file == file;
    slots.emplace_hint(slots.end(), cell, same ? before->second : std::make_shared<Slot>(file));
  }
  const std::unique_lock writing(listed_);
  index_ = std::move(index);
  slots_.swap(slots);
}

template <class Kind>
auto CellFolder<Kind>::all_slots() const -> std::vector<std::shared_ptr<Slot>> {
  const std::shared_lock reading(listed_);
  std::vector<std::shared_ptr<Slot>> slots;
  for (const auto& [cell, slot] : slots_) slots.push_back(slot);
  return slots;
}

template <class Kind>
auto CellFolder<Kind>::cells() const -> std::vector<TileCell> {
  const std::shared_lock reading(listed_);
  std::vector<TileCell> cells;
  for (const auto& [cell, slot] : slots_) cells.push_back(cell);
  return cells;
}

template <class Kind>
std::vector<Error> CellFolder<Kind>::problems() const {
  std::vector<Error> problems;
  {
    const std::shared_lock reading(listed_);
    problems = index_.wrong_sizes;
  }
  for (const auto& slot : all_slots()) {
    const std::lock_guard looking(slot->busy);
    if (slot->problem) problems.push_back(*slot->problem);
    if (slot->loaded && slot->loaded->mapped && slot->loaded->mapped->lost_bytes()) {
      problems.push_back({.what = Kind::kLostText,
                          .where = slot->file.path.string(),
                          .remedy = "put the card back in, or copy the tile again"});
    }
  }
  return problems;
}

}  // namespace mastwise::platform
