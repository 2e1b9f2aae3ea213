#pragma once

#include <string>
#include <variant>
#include <vector>

// The drawing of a printed page, in points of 1/72 inch from its upper left corner. Ink is a gray
// from 0, black, to 1, white, so any printer can print it.
namespace mastwise::paper {

struct PageSize {
  double width_pt, height_pt;
};
inline constexpr PageSize kLetter{612.0, 792.0};
inline constexpr PageSize kA4{595.276, 841.890};

struct Spot {
  double x = 0.0, y = 0.0;
};

enum class Weight { Regular, Bold };

struct Text {
  Spot at;  // the left end of its baseline
  double size_pt = 0.0;
  Weight weight = Weight::Regular;
  double gray = 0.0;
  std::string text = {};
};

// A line through corners, optionally closed and filled.
struct Shape {
  std::vector<Spot> corners = {};
  double gray = 0.0;
  double width_pt = 0.0;
  bool closed = false, filled = false;
};

// Part of a circle, clockwise from the top of the page.
struct Arc {
  Spot center;
  double radius_pt = 0.0;
  double from_deg = 0.0, to_deg = 360.0;
  double gray = 0.0;
  double width_pt = 0.0;
};

using Mark = std::variant<Text, Shape, Arc>;

struct Page {
  PageSize size;
  std::string title = {};
  std::string made_on = {};  // in ISO 8601
  std::vector<Mark> marks = {};
};

}  // namespace mastwise::paper
