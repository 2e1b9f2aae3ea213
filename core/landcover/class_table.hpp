#pragma once

#include "core/landcover/cover_class.hpp"
#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::landcover {

struct Color {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Color&) const = default;
};

// How to read the codes of one land cover product.
struct ClassTable {
  std::string name = {};                   // "ESA WorldCover"
  std::string notice = {};                 // of its owner, kept in the tiles and shown
  std::vector<std::string> files = {};     // beginnings of its files' names
  std::vector<std::uint8_t> no_data = {};  // codes that say nothing
  struct Row {
    std::string name = {};  // as the product calls it
    CoverClass cover = CoverClass::unknown;
    std::optional<Color> color = {};
    bool operator==(const Row&) const = default;
  };
  std::map<std::uint8_t, Row> rows = {};
  bool operator==(const ClassTable&) const = default;

  // Whether the table has a class for the code, or knows that it says nothing.
  bool lists(std::uint8_t code) const;
  // The class of a code; `unknown` for codes that say nothing or that the table does not list.
  CoverClass of(std::uint8_t code) const;
};

// Reads a class table, JSON with these keys:
//   about    what the table is and where its codes are published; not read
//   name     the product
//   notice   a line of text that its license wants shown, at most 300 bytes
//   files    beginnings of the names of its files, in any case; may be missing
//   no_data  codes that say nothing; may be missing
//   classes  for each code, "10": {"name": "Tree cover", "class": "trees", "color": "#006400"}; the
//            class as in cover_class.hpp but not "unknown"; the color, of the raster's palette, may
//            be missing
// Errors: not JSON, an unknown or missing key, a code outside [0, 255] or given twice, an unknown
// class, a color that is not six hexadecimal digits.
Result<ClassTable> read_class_table(std::string_view text);

// Facts about a raster before its import.
struct RasterTraits {
  std::string file_name = {};        // without its folder
  std::vector<Color> palette = {};   // by code; empty if it has none
  std::array<bool, 256> codes = {};  // found in a sample of it
};

// The table to read a raster by, of `tables`: the one that `chosen` names (in any case), if given;
// else the only one whose file names and codes fit, else whose colors and codes fit, else whose
// codes alone fit, if the sample has at least three classes. Codes fit if the table lists all of
// them. Errors: `chosen` is unknown or lists no class of the sample; none fits, or several.
Result<std::size_t> recognize(std::span<const ClassTable> tables, const RasterTraits& traits,
                              std::string_view chosen);

// The commonest class of an area by the votes of samples spread over it, by class; votes for
// `unknown` are samples without a known class. `unknown` if these are more than half of all, or
// there are none. In a tie the class that shields more wins (the later one of CoverClass).
CoverClass commonest(const std::array<std::uint32_t, kCoverClasses>& votes);

}  // namespace mastwise::landcover
