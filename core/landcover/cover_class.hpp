#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace mastwise::landcover {

// What covers the ground, in the categories of Recommendation ITU-R P.1812 table 2. The numbers are
// the bytes of a cover tile; a released number keeps its meaning. A later class shields at least as
// much as an earlier one.
enum class CoverClass : std::uint8_t {
  unknown = 0,
  water = 1,
  open = 2,  // open or rural: fields, grass, shrubs, bare ground, snow, herbaceous wetland
  suburban = 3,
  trees = 4,
  urban = 5,
  dense_urban = 6,
};
inline constexpr int kCoverClasses = 7;

// "water", "open", "suburban", "trees", "urban", "dense urban"; "unknown".
std::string_view to_text(CoverClass cover);
// The class of a text as above; std::nullopt for any other text.
std::optional<CoverClass> parse_cover_class(std::string_view text);

// The class of a byte of a tile; `unknown` for bytes without a class.
inline CoverClass cover_class_of(std::uint8_t byte) {
  return byte < kCoverClasses ? static_cast<CoverClass>(byte) : CoverClass::unknown;
}

// The height that a model adds to the ground of a path, m: water and open 0, suburban 10, urban and
// trees 15, dense urban 20; NaN if unknown [Recommendation ITU-R P.1812-6 table 2, as quoted in the
// reference data].
double added_height_m(CoverClass cover);

// The surroundings of an antenna for the height-gain correction of Recommendation ITU-R P.2108-1
// section 3.1, with the representative heights of its table 3.
struct TerminalFigures {
  double height_m = 0.0;  // R: 10 for water, open and suburban, 15 for urban and trees, 20
  bool built = false;     // shields as an edge, (2a): all but water and open, (2b)
};
// std::nullopt if unknown.
std::optional<TerminalFigures> terminal_figures(CoverClass cover);

}  // namespace mastwise::landcover
