#include "app/ui/icons.hpp"

#include <array>

namespace mastwise::ui {
namespace {

constexpr float kStroke = 3.5f;

// A stake in the ground with its foot ring.
void here(Canvas& canvas, Point c, Colour colour) {
  canvas.arc({c.x, c.y - 5.0f}, 14.0f, -125.0f, 125.0f, colour, kStroke);
  const std::array left{Point{c.x - 11.5f, c.y + 3.0f}, Point{c.x, c.y + 20.0f},
                        Point{c.x + 11.5f, c.y + 3.0f}};
  canvas.polyline(left, colour, kStroke);
  canvas.circle({c.x, c.y - 5.0f}, 5.0f, colour, kStroke);
}

// A list whose best line is the longest.
void stations(Canvas& canvas, Point c, Colour colour) {
  constexpr std::array kLengths{40.0f, 30.0f, 20.0f};
  float y = c.y - 14.0f;
  for (const float length : kLengths) {
    canvas.line({c.x - 20.0f, y}, {c.x - 20.0f + length, y}, colour, kStroke);
    y += 14.0f;
  }
}

void aim(Canvas& canvas, Point c, Colour colour) {
  canvas.circle(c, 20.0f, colour, kStroke);
  canvas.line({c.x, c.y - 12.0f}, c, colour, kStroke);
  canvas.line(c, {c.x - 9.0f, c.y + 15.0f}, colour, kStroke);
}

}  // namespace

void draw_place_icon(Canvas& canvas, Place place, Point centre, Colour colour) {
  switch (place) {
    case Place::Here:
      return here(canvas, centre, colour);
    case Place::Stations:
      return stations(canvas, centre, colour);
    case Place::Aim:
      return aim(canvas, centre, colour);
  }
}

}  // namespace mastwise::ui
