#include "core/landcover/cover_tile.hpp"
#include "platform/cover_folder.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <algorithm>
#include <span>
#include <vector>

using namespace mastwise;
using landcover::CoverClass;
using landcover::CoverTile;

namespace {

constexpr terrain::TileCell kCell{.south_deg = 45, .west_deg = 7};

const std::vector<std::byte>& sound_tile() {
  static const std::vector<std::byte> kTile = *landcover::cover_file(
      kCell, std::vector<CoverClass>(CoverTile::kClassBytes, CoverClass::trees), {"(c) Q"});
  return kTile;
}

void put_sum(std::vector<std::byte>& bytes) {
  const auto before = std::span(bytes).first(bytes.size() - CoverTile::kSumBytes);
  const std::uint32_t sum = landcover::cover_sum(before);
  for (std::size_t i = 0; i < CoverTile::kSumBytes; ++i) {
    bytes[before.size() + i] = static_cast<std::byte>(sum >> (24 - 8 * i));
  }
}

// A tile with the right sum whose head or classes are any bytes. Looks at some areas only: there
// are many.
void check_read(const std::vector<std::byte>& bytes) {
  const auto tile = CoverTile::over(kCell, bytes);
  if (!fuzz::read_or_told(tile)) return;
  for (int at = 0; at < CoverTile::kSide; ++at) {
    const CoverClass cover = tile->at(at, (7 * at) % CoverTile::kSide);
    fuzz::require(static_cast<int>(cover) < landcover::kCoverClasses);
  }
  static const std::vector<CoverClass> kOpen(CoverTile::kClassBytes, CoverClass::open);
  const auto written = landcover::cover_file(kCell, kOpen, tile->notices());
  fuzz::require(static_cast<bool>(written));
  fuzz::require(std::equal(bytes.begin(), bytes.begin() + CoverTile::kHeadBytes, written->begin()));
}

}  // namespace

// Reads the input as a file that is too short, as the head of a tile, and as changes of a sound
// one: three bytes of place and one of value each. What is changed and has the old sum is refused.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto input = std::as_bytes(std::span(data, size));
  fuzz::require(size == CoverTile::kFileBytes || !CoverTile::over(kCell, input));
  auto headed = sound_tile();
  std::fill_n(headed.begin(), CoverTile::kHeadBytes, std::byte{0});
  std::copy_n(input.begin(), std::min(size, CoverTile::kHeadBytes), headed.begin());
  put_sum(headed);
  check_read(headed);

  auto changed = sound_tile();
  for (std::size_t i = 0; i + 4 <= size; i += 4) {
    const std::size_t place = data[i] << 16 | data[i + 1] << 8 | data[i + 2];
    changed[place % changed.size()] = input[i + 3];
  }
  const bool same = changed == sound_tile();
  fuzz::require(static_cast<bool>(CoverTile::over(kCell, changed)) == same);
  put_sum(changed);
  check_read(changed);

  static const fuzz::Scratch scratch;
  const std::string folder = scratch.file("tiles");
  std::filesystem::create_directories(folder);
  const std::filesystem::path file = folder + "/N45E007.cover.zip";
  std::ofstream(file, std::ios::binary) << fuzz::text_of(data, size);
  const platform::CoverFolder tiles(folder);
  fuzz::require(static_cast<bool>(tiles.tile(kCell)) == tiles.problems().empty());
  return 0;
}
