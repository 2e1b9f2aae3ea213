#pragma once

#include "app/touch/geometry.hpp"
#include "app/ui/fonts.hpp"
#include "app/ui/raster.hpp"
#include "app/ui/theme.hpp"

#include <array>
#include <span>
#include <string_view>

#include <imgui.h>

namespace mastwise::ui {

using touch::Point;
using touch::Rect;

enum class Align { Left, Centre, Right };

// Draws paper and ink. Every measure is in units (see Metrics); pixels begin behind this class.
class Canvas {
 public:
  Canvas(ImDrawList& list, const Fonts& fonts, float px_per_unit)
      : list_(list), fonts_(fonts), scale_(px_per_unit) {}

  float px_per_unit() const { return scale_; }

  // `at` is where the baseline begins, is centred, or ends.
  void text(Point at, std::string_view words, Face face, Colour colour, Align align = Align::Left);
  float text_width(std::string_view words, Face face) const;

  void line(Point from, Point to, Colour colour, float width);
  void polyline(std::span<const Point> points, Colour colour, float width, bool closed = false);
  void polygon(std::span<const Point> points, Colour colour);  // convex
  // The same with hard edges, for neighbours that must leave no seam.
  void solid(std::span<const Point> points, Colour colour);
  // Seen whole from the centre, in order around it: the shape of an antenna's pattern.
  void fan(Point centre, std::span<const Point> points, Colour colour);
  void fill(Rect rect, Colour colour, float radius = 0.0f);
  void outline(Rect rect, Colour colour, float width, float radius = 0.0f);
  void circle(Point centre, float radius, Colour colour, float width);
  void disc(Point centre, float radius, Colour colour);
  // A band along a circle, clockwise on the screen; 0 degrees is up.
  void arc(Point centre, float radius, float from_deg, float to_deg, Colour colour, float width);

  // A sector of a circle, clockwise on the screen; 0 degrees is up. `opacity` within [0, 1].
  void sector(Point centre, float radius, float from_deg, float to_deg, Colour colour,
              float opacity);
  // Small squares of one size around their middles; as cheap as can be, for thousands.
  void squares(std::span<const Point> middles, float side, Colour colour);
  // The raster over a tetragon: its upper left corner, then clockwise.
  void image(const Raster& raster, const std::array<Point, 4>& corners);

  void push_clip(Rect rect);
  void pop_clip();

 private:
  ImVec2 px(Point point) const { return {point.x * scale_, point.y * scale_}; }

  ImDrawList& list_;
  const Fonts& fonts_;
  float scale_;
};

// A point `radius` from the centre; 0 degrees is up, clockwise on the screen.
Point around(Point centre, float radius, double clockwise_deg);

}  // namespace mastwise::ui
