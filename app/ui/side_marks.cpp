#include "app/ui/side_marks.hpp"

#include "app/ui/rig_symbol.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace mastwise::ui {
namespace {

using reception::SideKind;

constexpr double kTurn = 2.0 * std::numbers::pi;

// Ends of a piece of a ring, for the picture of open ground.
constexpr double kPiece_deg = 23.0;

float stroke_for(float size) {
  return std::clamp(0.16f * size, 2.0f, 3.0f);
}

// A closed line whose distance from the center varies around it.
template <std::size_t kPoints, class Distance>
std::array<Point, kPoints> outline(Point center, Distance distance) {
  std::array<Point, kPoints> points;
  for (std::size_t i = 0; i < kPoints; ++i) {
    const double turn = kTurn * static_cast<double>(i) / static_cast<double>(kPoints);
    points[i] = around(center, distance(turn), turn * 360.0 / kTurn);
  }
  return points;
}

void draw_mark(Canvas& canvas, const Theme& theme, Point at, float size, SideKind kind,
               double inward_deg) {
  const float half = size / 2.0f;
  switch (kind) {
    case SideKind::unmarked:
    case SideKind::open:
      return;
    case SideKind::trees:
      draw_tree(canvas, at, half, theme.ink, theme.panel);
      return;
    case SideKind::hill:
      canvas.disc(at, half, theme.panel);
      draw_hill(canvas, at, half, theme.ink);
      return;
    case SideKind::rig:
      draw_rig(canvas, theme, at, Turn::clockwise_deg(inward_deg + 90.0),
               1.25f * size / kRigLength);
      return;
  }
}

}  // namespace

void draw_tree(Canvas& canvas, Point center, float size, Color ink, Color ground) {
  constexpr int kScallops = 7;
  const auto crown = outline<42>(center, [size](double turn) {
    const double bulge = std::fabs(std::sin(0.5 * kScallops * turn));
    return size * static_cast<float>(0.80 + 0.20 * bulge);
  });
  canvas.fan(center, crown, ground);
  canvas.polyline(crown, ink, stroke_for(size), true);
  canvas.disc(center, std::max(1.8f, 0.13f * size), ink);
}

void draw_hill(Canvas& canvas, Point center, float size, Color ink) {
  for (const double part : {1.0, 0.62, 0.27}) {
    const auto contour = outline<36>(center, [size, part](double turn) {
      const double shape = 0.90 + 0.08 * std::cos(2.0 * turn + 1.0) + 0.05 * std::cos(3.0 * turn);
      return size * static_cast<float>(part * shape);
    });
    canvas.polyline(contour, ink, stroke_for(size), true);
  }
}

void draw_side_picture(Canvas& canvas, Rect room, SideKind kind, Color ink, Color ground) {
  const Point middle = room.center();
  const float half = std::min(0.5f * room.height(), 0.3f * room.width());
  switch (kind) {
    case SideKind::unmarked:
      return;
    case SideKind::open: {
      const float outer = 3.6f * half, inner = 2.1f * half;
      const Point center{middle.x, middle.y + 2.75f * half};
      std::array<Point, 18> piece;
      for (std::size_t i = 0; i < 9; ++i) {
        const double turn = kPiece_deg * (static_cast<double>(i) / 4.0 - 1.0);
        piece[i] = around(center, outer, turn);
        piece[17 - i] = around(center, inner, turn);
      }
      canvas.polyline(piece, ink, 2.5f, true);
      return;
    }
    case SideKind::trees:
      draw_tree(canvas, {middle.x - 0.75f * half, middle.y + 0.1f * half}, 0.8f * half, ink,
                ground);
      draw_tree(canvas, {middle.x + 0.8f * half, middle.y - 0.1f * half}, 0.75f * half, ink,
                ground);
      return;
    case SideKind::hill:
      draw_hill(canvas, middle, half, ink);
      return;
    case SideKind::rig: {
      Theme theme{};
      theme.ink = ink;
      theme.paper = ground;
      draw_rig(canvas, theme, middle, Turn::clockwise_deg(90.0), 3.2f * half / kRigLength);
      return;
    }
  }
}

void draw_obstacles(Canvas& canvas, const Theme& theme, Point center, float radius, float size,
                    const reception::ObstacleRing& ring, Bearing<True> up) {
  for (std::size_t side = 0; side < reception::kSides; ++side) {
    const double at_deg = (ring.middle_of(side) - up).clockwise_deg();
    draw_mark(canvas, theme, around(center, radius, at_deg), size, ring.sides[side].kind, at_deg);
  }
}

}  // namespace mastwise::ui
