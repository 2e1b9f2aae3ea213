#include "core/landcover/cover_class.hpp"

#include <array>
#include <cstddef>
#include <limits>

namespace mastwise::landcover {
namespace {

struct Row {
  std::string_view text;
  double added_m;
  double terminal_m;
  bool built;
};

constexpr std::array<Row, kCoverClasses> kRows{{
    {"unknown", std::numeric_limits<double>::quiet_NaN(), 0.0, false},
    {"water", 0.0, 10.0, false},
    {"open", 0.0, 10.0, false},
    {"suburban", 10.0, 10.0, true},
    {"trees", 15.0, 15.0, true},
    {"urban", 15.0, 15.0, true},
    {"dense urban", 20.0, 20.0, true},
}};

const Row& row_of(CoverClass cover) {
  return kRows[static_cast<std::size_t>(cover_class_of(static_cast<std::uint8_t>(cover)))];
}

}  // namespace

std::string_view to_text(CoverClass cover) {
  return row_of(cover).text;
}

std::optional<CoverClass> parse_cover_class(std::string_view text) {
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    if (kRows[i].text == text) return static_cast<CoverClass>(i);
  }
  return std::nullopt;
}

double added_height_m(CoverClass cover) {
  return row_of(cover).added_m;
}

std::optional<TerminalFigures> terminal_figures(CoverClass cover) {
  const Row& row = row_of(cover);
  if (&row == kRows.data()) return std::nullopt;
  return TerminalFigures{.height_m = row.terminal_m, .built = row.built};
}

}  // namespace mastwise::landcover
