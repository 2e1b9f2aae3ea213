#pragma once

#include "app/look/theme.hpp"
#include "app/touch/geometry.hpp"
#include "app/ui/bitmap.hpp"
#include "app/ui/fonts.hpp"

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <imgui.h>

namespace mastwise::ui {

using touch::Point;
using touch::Rect;

enum class Align { Left, Center, Right };

// A text of the last frame, in units; its rectangle is that of its letters, not cut.
struct DrawnText {
  std::string text;
  Rect rect;
  Face face;
};

// Draws paper and ink. All measures are in units (see Metrics); only this class uses pixels.
class Canvas {
 public:
  // Every text is also noted in `texts`.
  Canvas(ImDrawList& list, const Fonts& fonts, float px_per_unit, std::vector<DrawnText>& texts)
      : list_(list), fonts_(fonts), scale_(px_per_unit), texts_(texts) {}

  float px_per_unit() const { return scale_; }
  // How many times larger than usual texts are, in units.
  float letters() const { return fonts_.letters(); }
  // The size of the em in units, by how much that is more than usual, and the usual size's share.
  float em(Face face) const { return em_units(face, letters()); }
  float em_grown(Face face) const { return em(face) - em_units(face); }
  float usual_share(Face face) const { return em_units(face) / em(face); }

  // `at` is the start, middle or end of the baseline of letters of the usual size; larger ones
  // grow around the same middle.
  // `share` of the face's size: see size_within().
  void text(Point at, std::string_view words, Face face, Color color, Align align = Align::Left,
            float share = 1.0f);
  float text_width(std::string_view words, Face face) const;
  // The share of the face's size at which the words fit the width, but never below the usual size.
  float size_within(float width, std::string_view words, Face face) const;

  void line(Point from, Point to, Color color, float width);
  void polyline(std::span<const Point> points, Color color, float width, bool closed = false);
  void polygon(std::span<const Point> points, Color color);  // convex
  // The same with hard edges, for neighbors without a seam.
  void solid(std::span<const Point> points, Color color);
  // A star-shaped outline around the center: an antenna's pattern.
  void fan(Point center, std::span<const Point> points, Color color);
  void fill(Rect rect, Color color, float radius = 0.0f);
  void outline(Rect rect, Color color, float width, float radius = 0.0f);
  void circle(Point center, float radius, Color color, float width);
  void disc(Point center, float radius, Color color);
  // A band along a circle, clockwise on the screen; 0 degrees is up.
  void arc(Point center, float radius, float from_deg, float to_deg, Color color, float width);

  // A sector of a circle, clockwise on the screen; 0 degrees is up. `opacity` within [0, 1].
  void sector(Point center, float radius, float from_deg, float to_deg, Color color, float opacity);
  // Small squares of one size around their middles; cheap enough for thousands.
  void squares(std::span<const Point> middles, float side, Color color);
  // The bitmap over a tetragon: its upper left corner, then clockwise.
  void image(const Bitmap& bitmap, const std::array<Point, 4>& corners);

  void push_clip(Rect rect);
  void pop_clip();

 private:
  ImVec2 px(Point point) const { return {point.x * scale_, point.y * scale_}; }

  ImDrawList& list_;
  const Fonts& fonts_;
  float scale_;
  std::vector<DrawnText>& texts_;
};

// A point `radius` from the center; 0 degrees is up, clockwise on the screen.
Point around(Point center, float radius, double clockwise_deg);

}  // namespace mastwise::ui
