#include "app/ui/icons.hpp"

#include <array>
#include <vector>

namespace mastwise::ui {
namespace {

constexpr float kStroke = 3.5f;

// A stake in the ground with its foot ring.
void here(Canvas& canvas, Point c, Color color) {
  canvas.arc({c.x, c.y - 5.0f}, 14.0f, -125.0f, 125.0f, color, kStroke);
  const std::array left{Point{c.x - 11.5f, c.y + 3.0f}, Point{c.x, c.y + 20.0f},
                        Point{c.x + 11.5f, c.y + 3.0f}};
  canvas.polyline(left, color, kStroke);
  canvas.circle({c.x, c.y - 5.0f}, 5.0f, color, kStroke);
}

// A list whose best line is the longest.
void stations(Canvas& canvas, Point c, Color color) {
  constexpr std::array kLengths{40.0f, 30.0f, 20.0f};
  float y = c.y - 14.0f;
  for (const float length : kLengths) {
    canvas.line({c.x - 20.0f, y}, {c.x - 20.0f + length, y}, color, kStroke);
    y += 14.0f;
  }
}

// Contour lines around a hill.
void map(Canvas& canvas, Point c, Color color) {
  const std::array outer{Point{c.x - 20.0f, c.y + 4.0f},  Point{c.x - 16.0f, c.y - 9.0f},
                         Point{c.x - 3.0f, c.y - 17.0f},  Point{c.x + 9.0f, c.y - 16.0f},
                         Point{c.x + 18.0f, c.y - 12.0f}, Point{c.x + 20.0f, c.y - 1.0f},
                         Point{c.x + 13.0f, c.y + 14.0f}, Point{c.x, c.y + 18.0f},
                         Point{c.x - 15.0f, c.y + 15.0f}};
  const std::array inner{Point{c.x - 9.0f, c.y + 3.0f}, Point{c.x - 5.0f, c.y - 5.0f},
                         Point{c.x + 3.0f, c.y - 7.0f}, Point{c.x + 9.0f, c.y - 2.0f},
                         Point{c.x + 7.0f, c.y + 5.0f}, Point{c.x - 2.0f, c.y + 8.0f}};
  canvas.polyline(outer, color, kStroke, true);
  canvas.polyline(inner, color, kStroke, true);
}

void aim(Canvas& canvas, Point c, Color color) {
  canvas.circle(c, 20.0f, color, kStroke);
  canvas.line({c.x, c.y - 12.0f}, c, color, kStroke);
  canvas.line(c, {c.x - 9.0f, c.y + 15.0f}, color, kStroke);
}

// Readings that rise to a summit and fall again.
void peak(Canvas& canvas, Point c, Color color) {
  const std::array curve{Point{c.x - 20.0f, c.y + 16.0f}, Point{c.x - 12.0f, c.y + 13.0f},
                         Point{c.x - 6.0f, c.y - 6.0f},   Point{c.x, c.y - 16.0f},
                         Point{c.x + 6.0f, c.y - 6.0f},   Point{c.x + 12.0f, c.y + 13.0f},
                         Point{c.x + 20.0f, c.y + 16.0f}};
  canvas.polyline(curve, color, kStroke);
}

// A page with two lines.
void logbook(Canvas& canvas, Point c, Color color) {
  canvas.outline({c.x - 16.0f, c.y - 20.0f, c.x + 16.0f, c.y + 20.0f}, color, kStroke, 3.0f);
  canvas.line({c.x - 8.0f, c.y - 7.0f}, {c.x + 8.0f, c.y - 7.0f}, color, kStroke);
  canvas.line({c.x - 8.0f, c.y + 4.0f}, {c.x + 8.0f, c.y + 4.0f}, color, kStroke);
}

// Two places and the route between them.
void ahead(Canvas& canvas, Point c, Color color) {
  canvas.circle({c.x - 14.0f, c.y + 13.0f}, 6.0f, color, kStroke);
  canvas.circle({c.x + 14.0f, c.y - 13.0f}, 6.0f, color, kStroke);
  const std::array way{Point{c.x - 7.0f, c.y + 12.0f}, Point{c.x + 1.0f, c.y + 8.0f},
                       Point{c.x - 1.0f, c.y - 8.0f}, Point{c.x + 7.0f, c.y - 12.0f}};
  canvas.polyline(way, color, kStroke);
}

}  // namespace

void draw_place_icon(Canvas& canvas, Place place, Point center, Color color) {
  switch (place) {
    case Place::Here:
      return here(canvas, center, color);
    case Place::Stations:
      return stations(canvas, center, color);
    case Place::Aim:
      return aim(canvas, center, color);
    case Place::Peak:
      return peak(canvas, center, color);
    case Place::Logbook:
      return logbook(canvas, center, color);
    case Place::Ahead:
      return ahead(canvas, center, color);
    case Place::Map:
      return map(canvas, center, color);
  }
}

void draw_sun(Canvas& canvas, Point center, Color color) {
  canvas.circle(center, 7.0f, color, 3.0f);
  for (int ray = 0; ray < 360; ray += 45) {
    canvas.line(around(center, 11.5f, ray), around(center, 16.0f, ray), color, 3.0f);
  }
}

void draw_moon(Canvas& canvas, Point center, Color color) {
  constexpr float kRadius = 14.9f, kBite = 11.5f;
  const Point bite{center.x + 13.75f, center.y - 6.5f};
  std::vector<Point> edge;
  for (int degrees = 380; degrees >= 110; degrees -= 10) {
    edge.push_back(around(center, kRadius, degrees));
  }
  for (int degrees = 180; degrees <= 310; degrees += 10) {
    edge.push_back(around(bite, kBite, degrees));
  }
  canvas.polyline(edge, color, 3.0f, true);
}

}  // namespace mastwise::ui
