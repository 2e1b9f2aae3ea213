#include "platform/tile_folder.hpp"

#include "platform/mapped_file.hpp"
#include "platform/tile_index.hpp"
#include "platform/zipped_file.hpp"

#include <atomic>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <shared_mutex>
#include <string_view>
#include <utility>

namespace mastwise::platform {
namespace {

using terrain::Tile;
using terrain::TileCell;

// A tile with the bytes that it is a view of.
template <class Bytes>
struct Owned {
  Bytes bytes;
  std::optional<Tile> tile;
};

template <class Bytes>
Result<std::shared_ptr<const Tile>> own(TileCell cell, Bytes bytes,
                                        std::span<const std::byte> view) {
  const auto tile = Tile::over(cell, view);
  if (!tile) return tile.error();
  auto owned = std::make_shared<Owned<Bytes>>(Owned<Bytes>{std::move(bytes), *tile});
  return std::shared_ptr<const Tile>(owned, &*owned->tile);
}

Result<std::shared_ptr<const Tile>> load(TileCell cell, const TileFile& file) {
  if (!file.zipped) {
    auto mapped = MappedFile::open(file.path);
    if (!mapped) return mapped.error();
    const auto view = mapped->bytes();
    return own(cell, std::move(*mapped), view);
  }
  auto unpacked = unpack_one(
      file.path,
      [cell](std::string_view name) {
        return terrain::cell_named(name) == cell &&
               (name.ends_with(".hgt") || name.ends_with(".HGT"));
      },
      [](std::uintmax_t size) { return Tile::side_of_size(size).has_value(); });
  if (!unpacked) return unpacked.error();
  const std::span<const std::byte> view(*unpacked);
  return own(cell, std::move(*unpacked), view);
}

struct Slot {
  explicit Slot(TileFile listed) : file(std::move(listed)) {}
  const TileFile file;
  std::mutex busy;  // held while loading, so that a tile is loaded once
  std::shared_ptr<const Tile> tile;
  std::optional<Error> problem;
  std::atomic<std::uint64_t> last_use = 0;
};

std::size_t bytes_of(const Tile& tile) {
  return 2 * static_cast<std::size_t>(tile.side()) * static_cast<std::size_t>(tile.side());
}

}  // namespace

class TileFolder::State {
 public:
  State(std::filesystem::path folder, std::size_t unpacked_limit_bytes)
      : folder_(std::move(folder)), unpacked_limit_bytes_(unpacked_limit_bytes) {
    take(index_tiles(folder_));
  }

  std::shared_ptr<const Tile> tile(TileCell cell);
  bool refresh();
  std::vector<TileCell> cells() const;
  std::vector<Error> problems() const;

 private:
  void take(TileIndex index);
  void drop_longest_unused();
  std::vector<std::shared_ptr<Slot>> all_slots() const;

  const std::filesystem::path folder_;
  const std::size_t unpacked_limit_bytes_;
  std::atomic<std::uint64_t> uses_ = 0;
  std::mutex refreshing_;
  std::mutex dropping_;
  mutable std::shared_mutex listed_;  // guards what follows
  TileIndex index_;
  std::map<TileCell, std::shared_ptr<Slot>> slots_;
};

std::shared_ptr<const Tile> TileFolder::State::tile(TileCell cell) {
  std::shared_ptr<Slot> slot;
  {
    const std::shared_lock reading(listed_);
    const auto found = slots_.find(cell);
    if (found == slots_.end()) return nullptr;
    slot = found->second;
  }
  slot->last_use = ++uses_;
  std::shared_ptr<const Tile> tile;
  {
    const std::lock_guard loading(slot->busy);
    if (slot->tile || slot->problem) return slot->tile;
    auto loaded = load(cell, slot->file);
    if (!loaded) {
      slot->problem = loaded.error();
      return nullptr;
    }
    tile = slot->tile = *loaded;
  }
  if (slot->file.zipped) drop_longest_unused();
  return tile;
}

// Holds no slot's lock but for a moment: others may be loading meanwhile.
void TileFolder::State::drop_longest_unused() {
  const std::lock_guard alone(dropping_);
  std::map<std::uint64_t, std::shared_ptr<Slot>> unpacked;
  std::size_t unpacked_bytes = 0;
  for (const auto& slot : all_slots()) {
    if (!slot->file.zipped) continue;
    const std::unique_lock looking(slot->busy, std::try_to_lock);
    if (!looking || !slot->tile) continue;
    unpacked_bytes += bytes_of(*slot->tile);
    unpacked.emplace(slot->last_use, slot);
  }
  for (const auto& [use, slot] : unpacked) {
    if (unpacked_bytes <= unpacked_limit_bytes_) return;
    const std::lock_guard dropping(slot->busy);
    unpacked_bytes -= bytes_of(*slot->tile);
    slot->tile.reset();
  }
}

bool TileFolder::State::refresh() {
  const std::lock_guard alone(refreshing_);
  {
    const std::shared_lock reading(listed_);
    if (!may_have_changed(index_)) return false;
  }
  TileIndex index = index_tiles(folder_);
  const bool changed = index.files != index_.files || index.wrong_sizes != index_.wrong_sizes;
  take(std::move(index));
  return changed;
}

// Files that are as they were keep their slot and so their tile.
void TileFolder::State::take(TileIndex index) {
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

std::vector<std::shared_ptr<Slot>> TileFolder::State::all_slots() const {
  const std::shared_lock reading(listed_);
  std::vector<std::shared_ptr<Slot>> slots;
  for (const auto& [cell, slot] : slots_) slots.push_back(slot);
  return slots;
}

std::vector<TileCell> TileFolder::State::cells() const {
  const std::shared_lock reading(listed_);
  std::vector<TileCell> cells;
  for (const auto& [cell, slot] : slots_) cells.push_back(cell);
  return cells;
}

std::vector<Error> TileFolder::State::problems() const {
  std::vector<Error> problems;
  {
    const std::shared_lock reading(listed_);
    problems = index_.wrong_sizes;
  }
  for (const auto& slot : all_slots()) {
    const std::lock_guard looking(slot->busy);
    if (slot->problem) problems.push_back(*slot->problem);
  }
  return problems;
}

TileFolder::TileFolder(std::filesystem::path folder, std::size_t unpacked_limit_bytes)
    : state_(std::make_unique<State>(std::move(folder), unpacked_limit_bytes)) {}

TileFolder::~TileFolder() = default;

std::shared_ptr<const Tile> TileFolder::tile(TileCell cell) const {
  return state_->tile(cell);
}

bool TileFolder::refresh() {
  return state_->refresh();
}

std::vector<TileCell> TileFolder::cells() const {
  return state_->cells();
}

std::vector<Error> TileFolder::problems() const {
  return state_->problems();
}

}  // namespace mastwise::platform
