#pragma once

#include "app/ui/ui.hpp"
#include "core/reception/chance.hpp"

#include <initializer_list>
#include <span>
#include <string>
#include <vector>

namespace mastwise::screens {

using ui::Align;
using ui::Color;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

// Draws a guide's picture: on a sheet of 280 by 240, the origin in its middle, fitted into a
// rectangle. Letters keep their size.
class Sketch {
 public:
  static constexpr float kWidth = 280.0f, kHeight = 240.0f;

  Sketch(Ui& ui, Rect room);

  Ui& ui() { return ui_; }
  const ui::Theme& theme() const { return ui_.theme(); }
  Point at(float x, float y) const { return {middle_.x + x * scale_, middle_.y + y * scale_}; }
  Rect at(Rect rect) const;
  float size(float length) const { return length * scale_; }

  void line(Point from, Point to, Color color, float width = 4.0f);
  void lines(std::initializer_list<Point> points, Color color, float width = 4.0f,
             bool closed = false);
  void curve(std::span<const Point> points, Color color, float width);
  void polygon(std::initializer_list<Point> points, Color color);
  void disc(Point center, float radius, Color color);
  void circle(Point center, float radius, Color color, float width = 4.0f);
  void arc(Point center, float radius, float from_deg, float to_deg, Color color, float width);
  void fill(Rect rect, Color color, float radius = 0.0f);
  void outline(Rect rect, Color color, float width = 4.0f, float radius = 0.0f);
  void arrow(Point from, Point tip, Color color, float width = 6.0f);
  void turn(Point center, float radius, float from_deg, float to_deg, Color color);
  void text(Point baseline, const std::string& words, Face face, Color color,
            Align align = Align::Center);

  // Things of the trade, and of the screens.
  void rig(Point center, double nose_deg, float length);
  void dial(Point center, float radius);
  void chance(Point left, float width, std::size_t filled);
  void ring(Point center, double chance_percent);
  void kite(Point center, float half_height, bool filled, double turned_deg = 0.0);
  void antenna(Point center, double to_deg, float length);
  void mast(Point foot, float height);
  void tower(Point foot, float height);
  void button(Rect rect, const std::string& label, bool filled = false);
  void slip(Rect rect, const std::string& value);
  void stick(Rect rect);
  void tv(Rect rect);
  // A hand whose finger touches the tip, with the ring of a touch around it.
  void hand(Point tip, bool held = false);

 private:
  void finger(Point from, Point to, float width, Color color);

  Ui& ui_;
  ui::Canvas& canvas_;
  Point middle_;
  float scale_;
};

}  // namespace mastwise::screens
