#include "app/ui/canvas.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace mastwise::ui {
namespace {

constexpr float kRadiansPerDegree = std::numbers::pi_v<float> / 180.0f;

ImU32 packed(Color color, float opacity = 1.0f) {
  return IM_COL32(color.red, color.green, color.blue,
                  static_cast<unsigned char>(std::lround(255.0f * opacity)));
}

constexpr float kHalfCapital = 0.375f;  // of the em

// The height of a line as it is shown; very large letters are drawn smaller (see Fonts).
float size_px(const ImFont& font) {
  return font.FontSize * font.Scale;
}

// To the sides of what is clipped, which cuts no letters because they are larger than usual.
float room_at(const ImDrawList& list, float scale, Point at, Align align) {
  const float left = at.x - list.GetClipRectMin().x / scale;
  const float right = list.GetClipRectMax().x / scale - at.x;
  if (align == Align::Center) return 2.0f * std::min(left, right);
  return align == Align::Left ? right : left;
}

}  // namespace

Point around(Point center, float radius, double clockwise_deg) {
  const float angle = static_cast<float>(clockwise_deg) * kRadiansPerDegree;
  return {center.x + radius * std::sin(angle), center.y - radius * std::cos(angle)};
}

void Canvas::text(Point at, std::string_view words, Face face, Color color, Align align,
                  float share) {
  if (words.empty()) return;  // its data may be null, which the library would read
  share = std::min(share, size_within(room_at(list_, scale_, at, align), words, face));
  const ImFont* font = fonts_.font(face);
  const float width = share * text_width(words, face), height_px = share * size_px(*font);
  const float left = at.x * scale_ - (align == Align::Left     ? 0.0f
                                      : align == Align::Center ? scale_ * width / 2.0f
                                                               : scale_ * width);
  const float baseline = at.y + kHalfCapital * (share * em(face) - em_units(face));
  // Whole pixels keep the letters sharp.
  const ImVec2 top_left(std::round(left),
                        std::round(baseline * scale_ - share * font->Ascent * font->Scale));
  list_.AddText(font, height_px, top_left, packed(color), words.data(),
                words.data() + words.size());
  const float x = top_left.x / scale_, y = top_left.y / scale_;
  texts_.push_back({std::string(words), {x, y, x + width, y + height_px / scale_}, face});
}

float Canvas::size_within(float width, std::string_view words, Face face) const {
  const float whole = text_width(words, face);
  return whole <= width ? 1.0f : std::max(usual_share(face), width / whole);
}

float Canvas::text_width(std::string_view words, Face face) const {
  if (words.empty()) return 0.0f;
  const ImFont* font = fonts_.font(face);
  const ImVec2 size =
      font->CalcTextSizeA(size_px(*font), 1e9f, 0.0f, words.data(), words.data() + words.size());
  return size.x / scale_;
}

void Canvas::line(Point from, Point to, Color color, float width) {
  list_.AddLine(px(from), px(to), packed(color), width * scale_);
}

void Canvas::polyline(std::span<const Point> points, Color color, float width, bool closed) {
  for (const Point point : points) list_.PathLineTo(px(point));
  list_.PathStroke(packed(color), closed ? ImDrawFlags_Closed : ImDrawFlags_None, width * scale_);
}

void Canvas::polygon(std::span<const Point> points, Color color) {
  for (const Point point : points) list_.PathLineTo(px(point));
  list_.PathFillConvex(packed(color));
}

void Canvas::solid(std::span<const Point> points, Color color) {
  const ImDrawListFlags flags = list_.Flags;
  list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
  polygon(points, color);
  list_.Flags = flags;
}

void Canvas::fan(Point center, std::span<const Point> points, Color color) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::array triangle{center, points[i], points[(i + 1) % points.size()]};
    solid(triangle, color);
  }
}

void Canvas::fill(Rect rect, Color color, float radius) {
  list_.AddRectFilled(px({rect.left, rect.top}), px({rect.right, rect.bottom}), packed(color),
                      radius * scale_);
}

void Canvas::outline(Rect rect, Color color, float width, float radius) {
  list_.AddRect(px({rect.left, rect.top}), px({rect.right, rect.bottom}), packed(color),
                radius * scale_, ImDrawFlags_None, width * scale_);
}

void Canvas::circle(Point center, float radius, Color color, float width) {
  // By default the library draws large circles with 48 corners.
  constexpr float kOff_px = 0.1f;
  constexpr int kLeast = 12, kMost = 512;
  const float radius_px = std::max(1.0f, radius * scale_);
  const float half_step = std::acos(1.0f - kOff_px / radius_px);
  const int corners =
      std::clamp(static_cast<int>(std::ceil(std::numbers::pi_v<float> / half_step)), kLeast, kMost);
  list_.AddCircle(px(center), radius * scale_, packed(color), corners, width * scale_);
}

void Canvas::disc(Point center, float radius, Color color) {
  list_.AddCircleFilled(px(center), radius * scale_, packed(color), 0);
}

void Canvas::arc(Point center, float radius, float from_deg, float to_deg, Color color,
                 float width) {
  // Dear ImGui counts from the right-hand side, clockwise on the screen.
  list_.PathArcTo(px(center), radius * scale_, (from_deg - 90.0f) * kRadiansPerDegree,
                  (to_deg - 90.0f) * kRadiansPerDegree, 0);
  list_.PathStroke(packed(color), ImDrawFlags_None, width * scale_);
}

void Canvas::sector(Point center, float radius, float from_deg, float to_deg, Color color,
                    float opacity) {
  list_.PathLineTo(px(center));
  list_.PathArcTo(px(center), radius * scale_, (from_deg - 90.0f) * kRadiansPerDegree,
                  (to_deg - 90.0f) * kRadiansPerDegree, 0);
  list_.PathFillConvex(packed(color, opacity));
}

void Canvas::squares(std::span<const Point> middles, float side, Color color) {
  // Indices have 16 bits: a reservation must stay below that.
  constexpr std::size_t kBatch = 8'000;
  const float half = side * scale_ / 2.0f;
  for (std::size_t first = 0; first < middles.size(); first += kBatch) {
    const auto batch = middles.subspan(first, std::min(kBatch, middles.size() - first));
    const auto count = static_cast<int>(batch.size());
    list_.PrimReserve(6 * count, 4 * count);
    for (const Point middle : batch) {
      const ImVec2 at = px(middle);
      list_.PrimRect({at.x - half, at.y - half}, {at.x + half, at.y + half}, packed(color));
    }
  }
}

void Canvas::image(const Bitmap& bitmap, const std::array<Point, 4>& corners) {
  const ImTextureID name = const_cast<Bitmap*>(&bitmap);
  list_.AddImageQuad(name, px(corners[0]), px(corners[1]), px(corners[2]), px(corners[3]));
}

void Canvas::push_clip(Rect rect) {
  list_.PushClipRect(px({rect.left, rect.top}), px({rect.right, rect.bottom}), true);
}

void Canvas::pop_clip() {
  list_.PopClipRect();
}

}  // namespace mastwise::ui
