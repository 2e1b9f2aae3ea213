#pragma once

#include "app/touch/geometry.hpp"

#include <optional>
#include <span>
#include <vector>

namespace mastwise::ui {

using touch::Point;
using touch::Rect;

// A dial and the room around it, in units of the screen.
struct DialRoom {
  Point center;
  float radius = 0.0f;  // of the ring with the marks
  float reach = 0.0f;   // what the dial covers around its center, labels keep out
  Rect room;
};

// The words of a mark on the ring, in units: whole, and short where there is less room.
struct DialLabelWish {
  Point mark;
  float width = 0.0f, short_width = 0.0f;
};

struct DialLabelPlace {
  bool is_short = false;
  bool left = false;  // at the left edge of the room, else at the right one
  float baseline = 0.0f;
  Rect words;
  std::vector<Point> leader;  // from the words to the mark
};

constexpr float kDialMark = 19.0f;  // radius of a mark

// Where the words stand, in lines in the corners around the dial; std::nullopt where there is no
// room. No words or leader lies on other words, on another mark, on `blocked` or on another leader.
// The first has the first choice.
std::vector<std::optional<DialLabelPlace>> place_dial_labels(const DialRoom& room,
                                                             std::span<const DialLabelWish> wishes,
                                                             std::span<const Rect> blocked);

}  // namespace mastwise::ui
