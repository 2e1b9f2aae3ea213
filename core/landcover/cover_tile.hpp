#pragma once

#include "core/landcover/cover_class.hpp"
#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::landcover {

// The land cover of one square degree: a view of the bytes of a .cover file, named after its cell
// as N00E006.cover. The bytes must outlive it. Reading needs no lock. The file has
//   4,096 bytes  text: "mastwise land cover 1", the cell's name, then each source's notice, a line
//                each; zero bytes to the end
//   1,440,000    classes, one byte each (CoverClass), of areas of 3 arc seconds; neighboring tiles
//                share none. They lie in blocks of 8 by 8 areas, 150 by 150 blocks: from the
//                south-west corner eastward, then row by row northward, in a block as of blocks. A
//                path crosses a block of 64 bytes in some 8 points, in any direction: far fewer
//                memory accesses than by whole rows
//   4            CRC-32 of all bytes before (IEEE 802.3, as in zip and PNG), most significant first
// All numbers are single bytes or have a stated order, so the file is the same on every machine.
class CoverTile {
 public:
  static constexpr int kSide = 1200;
  static constexpr std::size_t kHeadBytes = 4096;
  static constexpr std::size_t kClassBytes = std::size_t{kSide} * kSide;
  static constexpr std::size_t kSumBytes = 4;
  static constexpr std::size_t kFileBytes = kHeadBytes + kClassBytes + kSumBytes;

  // The error for a file of any other size; `where` names it.
  static Error size_error(std::string where, std::uintmax_t bytes);

  // Reads all bytes once to check the sum. Errors: wrong size, another format or a newer version, a
  // tile of another cell, damaged bytes.
  static Result<CoverTile> over(terrain::TileCell cell, std::span<const std::byte> bytes);

  terrain::TileCell cell() const { return cell_; }
  // Notices of the sources, in the order of their import.
  const std::vector<std::string>& notices() const { return notices_; }

  // Where the class of an area is among the classes; `north` and `east` count areas from the
  // south-west corner, both within [0, kSide - 1].
  static constexpr int place_of(int north, int east) {
    return (north >> 3) * (8 * kSide) + ((east >> 3) << 6) + ((north & 7) << 3) + (east & 7);
  }

  CoverClass at(int north, int east) const {
    return cover_class_of(std::to_integer<std::uint8_t>(classes_[place_of(north, east)]));
  }
  // The classes by place_of().
  const std::byte* classes() const { return classes_; }

 private:
  CoverTile(terrain::TileCell cell, std::vector<std::string> notices, const std::byte* classes)
      : cell_(cell), notices_(std::move(notices)), classes_(classes) {}

  terrain::TileCell cell_;
  std::vector<std::string> notices_;
  const std::byte* classes_;
};

// The bytes of a .cover file. `classes` has kClassBytes entries, by place_of(). Errors: notices
// that are empty, have a control character, or together do not fit the head.
Result<std::vector<std::byte>> cover_file(terrain::TileCell cell,
                                          std::span<const CoverClass> classes,
                                          const std::vector<std::string>& notices);

// The notices of the sources, from the first kHeadBytes of a .cover file alone; empty if they are
// not such a head. For a list of all sources: the rest of the file is not checked.
std::vector<std::string> notices_in_head(std::span<const std::byte> head);

// CRC-32 as above.
std::uint32_t cover_sum(std::span<const std::byte> bytes);

}  // namespace mastwise::landcover
