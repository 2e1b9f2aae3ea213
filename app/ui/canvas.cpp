#include "app/ui/canvas.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace mastwise::ui {
namespace {

constexpr float kRadiansPerDegree = std::numbers::pi_v<float> / 180.0f;

ImU32 packed(Colour colour) {
  return IM_COL32(colour.red, colour.green, colour.blue, 255);
}

}  // namespace

Point around(Point centre, float radius, double clockwise_deg) {
  const float angle = static_cast<float>(clockwise_deg) * kRadiansPerDegree;
  return {centre.x + radius * std::sin(angle), centre.y - radius * std::cos(angle)};
}

void Canvas::text(Point at, std::string_view words, Face face, Colour colour, Align align) {
  const ImFont* font = fonts_.font(face);
  const float width = align == Align::Left ? 0.0f : text_width(words, face) * scale_;
  const float left = at.x * scale_ - (align == Align::Centre  ? width / 2.0f
                                      : align == Align::Right ? width
                                                              : 0.0f);
  // Whole pixels keep the letters sharp.
  const ImVec2 top_left(std::round(left), std::round(at.y * scale_ - font->Ascent));
  list_.AddText(font, font->FontSize, top_left, packed(colour), words.data(),
                words.data() + words.size());
}

float Canvas::text_width(std::string_view words, Face face) const {
  const ImFont* font = fonts_.font(face);
  const ImVec2 size =
      font->CalcTextSizeA(font->FontSize, 1e9f, 0.0f, words.data(), words.data() + words.size());
  return size.x / scale_;
}

void Canvas::line(Point from, Point to, Colour colour, float width) {
  list_.AddLine(px(from), px(to), packed(colour), width * scale_);
}

void Canvas::polyline(std::span<const Point> points, Colour colour, float width, bool closed) {
  for (const Point point : points) list_.PathLineTo(px(point));
  list_.PathStroke(packed(colour), closed ? ImDrawFlags_Closed : ImDrawFlags_None, width * scale_);
}

void Canvas::polygon(std::span<const Point> points, Colour colour) {
  for (const Point point : points) list_.PathLineTo(px(point));
  list_.PathFillConvex(packed(colour));
}

void Canvas::solid(std::span<const Point> points, Colour colour) {
  const ImDrawListFlags flags = list_.Flags;
  list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
  polygon(points, colour);
  list_.Flags = flags;
}

void Canvas::fan(Point centre, std::span<const Point> points, Colour colour) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::array triangle{centre, points[i], points[(i + 1) % points.size()]};
    solid(triangle, colour);
  }
}

void Canvas::fill(Rect rect, Colour colour, float radius) {
  list_.AddRectFilled(px({rect.left, rect.top}), px({rect.right, rect.bottom}), packed(colour),
                      radius * scale_);
}

void Canvas::outline(Rect rect, Colour colour, float width, float radius) {
  list_.AddRect(px({rect.left, rect.top}), px({rect.right, rect.bottom}), packed(colour),
                radius * scale_, ImDrawFlags_None, width * scale_);
}

void Canvas::circle(Point centre, float radius, Colour colour, float width) {
  list_.AddCircle(px(centre), radius * scale_, packed(colour), 0, width * scale_);
}

void Canvas::disc(Point centre, float radius, Colour colour) {
  list_.AddCircleFilled(px(centre), radius * scale_, packed(colour), 0);
}

void Canvas::arc(Point centre, float radius, float from_deg, float to_deg, Colour colour,
                 float width) {
  // Dear ImGui counts from the right-hand side, clockwise on the screen.
  list_.PathArcTo(px(centre), radius * scale_, (from_deg - 90.0f) * kRadiansPerDegree,
                  (to_deg - 90.0f) * kRadiansPerDegree, 0);
  list_.PathStroke(packed(colour), ImDrawFlags_None, width * scale_);
}

void Canvas::push_clip(Rect rect) {
  list_.PushClipRect(px({rect.left, rect.top}), px({rect.right, rect.bottom}), true);
}

void Canvas::pop_clip() {
  list_.PopClipRect();
}

}  // namespace mastwise::ui
