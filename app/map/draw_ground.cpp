#include "app/map/draw_bitmaps.hpp"
#include "app/map/draw_frame.hpp"
#include "app/map/update.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>

// The ground of the map.
namespace mastwise::screens {

using ui::Point;
using ui::Rect;

namespace {

// From places on the screen to the cells of a square grid around the stop.
class Cells {
 public:
  Cells(const MapView& view, Point middle, int side, double meters_per_cell)
      : side_(side), middle_(middle) {
    const map::PlanePoint origin = point_at(view, {}), right = point_at(view, {1.0, 0.0}),
                          down = point_at(view, {0.0, 1.0});
    const double half = side / 2.0;
    column_ = {origin.east_m / meters_per_cell + half,
               (right.east_m - origin.east_m) / meters_per_cell,
               (down.east_m - origin.east_m) / meters_per_cell};
    row_ = {half - origin.north_m / meters_per_cell,
            (origin.north_m - right.north_m) / meters_per_cell,
            (origin.north_m - down.north_m) / meters_per_cell};
  }

  // The index of the cell, or none outside the grid.
  std::optional<std::size_t> at(Point place) const {
    const double right = place.x - middle_.x, down = place.y - middle_.y;
    const auto column = static_cast<int>(std::floor(column_.of(right, down)));
    const auto row = static_cast<int>(std::floor(row_.of(right, down)));
    if (column < 0 || row < 0 || column >= side_ || row >= side_) return std::nullopt;
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(side_) +
           static_cast<std::size_t>(column);
  }

 private:
  struct Axis {
    double origin = 0.0, right = 0.0, down = 0.0;
    double of(double x, double y) const { return origin + right * x + down * y; }
  };
  int side_;
  Point middle_;
  Axis column_, row_;
};

bool behind_ridge(std::uint8_t cell) {
  return cell >= 1.0 + reception::RidgeShadow::kRidge_db;
}

}  // namespace

MapFrame::MapFrame(ui::Ui& ui, Rect area, const std::vector<Rect>& covered, const Shared& shared,
                   const MapState& map)
    : ui_(ui),
      canvas_(ui.canvas()),
      theme_(ui.theme()),
      area_(area),
      shared_(shared),
      map_(map),
      field_(area.inset(4.0f)) {
  for (const Rect& rect : covered) field_.block(rect.inset(-6.0f));
}

Point MapFrame::at(map::PlanePoint point) const {
  const MapOffset offset = offset_of(map_.view, point);
  const Point center = area_.center();
  return {center.x + static_cast<float>(offset.right), center.y + static_cast<float>(offset.down)};
}

// A square of the plane around the stop, as tetragon on the screen.
std::array<Point, 4> MapFrame::square(double half_m) const {
  return {at({-half_m, half_m}), at({half_m, half_m}), at({half_m, -half_m}),
          at({-half_m, -half_m})};
}

// Each look has bitmaps of its own.
std::uint64_t MapFrame::versioned(std::uint64_t serial) const {
  return ui::kLookCount * serial + static_cast<std::uint64_t>(ui_.look());
}

void MapFrame::draw_relief() {
  const auto& sheet = map_.sheet;
  if (!sheet || !sheet->relief) return;
  const map::Relief& relief = *sheet->relief;
  const ui::Bitmap& bitmap = ui_.bitmap("relief", versioned(map_.sheet_serial),
                                        [&] { return ui::relief_bitmap(relief, ui_.look()); });
  canvas_.image(bitmap, square(relief.grid.meters_per_cell * relief.grid.columns / 2.0));
}

void MapFrame::draw_area_scan() {
  const auto& sheet = map_.area_sheet;
  if (!map_.area || !sheet || sheet->percent.empty() || !sheet->trouble.empty()) return;
  const ui::Bitmap& bitmap = ui_.bitmap("area", versioned(map_.area_serial),
                                        [&] { return ui::area_bitmap(*sheet, ui_.look()); });
  canvas_.image(bitmap, square(sheet->question.radius_m));
  canvas_.polyline(square(sheet->question.radius_m), theme_.ink, 2.0f, true);
}

// Dots on unknown ground, and where the way from the target to it is unknown. They move with the
// stop, so that they do not swim while the map is dragged.
void MapFrame::draw_unknown() {
  if (!map_.sheet || !map_.sheet->relief) return;
  constexpr float kStep = 22.0f, kDot = 2.4f;
  const map::Relief& relief = *map_.sheet->relief;
  const Cells ground(map_.view, area_.center(), relief.grid.columns, relief.grid.meters_per_cell);
  const reception::RidgeShadow* shadow = shadow_of_target(map_, shared_);
  const bool with_way = shadow != nullptr && !map_.area;
  const Cells way(map_.view, area_.center(), with_way ? shadow->side : 0,
                  with_way ? shadow->meters_per_cell : 1.0);
  const float reach = units(kShadow_m);
  const auto first = [&](float from, float anchor) {
    return from + std::fmod(std::fmod(anchor - from, kStep) + kStep, kStep);
  };
  std::vector<Point> dots;
  for (float y = first(area_.top, stop().y); y < area_.bottom; y += kStep) {
    for (float x = first(area_.left, stop().x); x < area_.right; x += kStep) {
      const auto cell = ground.at({x, y});
      const bool near = with_way && touch::distance({x, y}, stop()) < reach;
      const auto way_cell = near ? way.at({x, y}) : std::nullopt;
      const bool unknown =
          (cell && relief.shade[*cell] == map::Relief::kUnknown) ||
          (way_cell && shadow->cells[*way_cell] == reception::RidgeShadow::kUnknown);
      if (unknown) dots.push_back({x, y});
    }
  }
  canvas_.squares(dots, kDot, theme_.second_ink);
}

// Strokes over ground behind a ridge, also anchored at the stop.
void MapFrame::draw_shadow() {
  const reception::RidgeShadow* shadow = shadow_of_target(map_, shared_);
  if (shadow == nullptr || map_.area) return;
  constexpr float kApart = 14.0f, kStep = 4.0f, kWidth = 1.1f;
  constexpr Point kAlong{0.6f, 0.8f}, kAcross{0.8f, -0.6f};
  const Cells cells(map_.view, area_.center(), shadow->side, shadow->meters_per_cell);
  const Point anchor = stop();
  const float reach = units(kShadow_m);
  const auto span = [&](Point way) {
    float least = 1e9f, most = -1e9f;
    for (const Point corner : {Point{area_.left, area_.top}, Point{area_.right, area_.top},
                               Point{area_.left, area_.bottom}, Point{area_.right, area_.bottom}}) {
      const Point from = corner - anchor;
      const float reach = from.x * way.x + from.y * way.y;
      least = std::min(least, reach);
      most = std::max(most, reach);
    }
    return std::pair(least, most);
  };
  const auto [first_across, last_across] = span(kAcross);
  const auto [first_along, last_along] = span(kAlong);
  for (float across = kApart * std::ceil(first_across / kApart); across <= last_across;
       across += kApart) {
    const Point line = anchor + kAcross * across;
    std::optional<float> begun;
    for (float along = kStep * std::floor(first_along / kStep); along <= last_along + kStep;
         along += kStep) {
      const Point place = line + kAlong * along;
      const bool near = seen(place, kStep) && touch::distance(place, anchor) < reach;
      const auto cell = near ? cells.at(place) : std::nullopt;
      if (cell && behind_ridge(shadow->cells[*cell])) {
        if (!begun) begun = along;
      } else if (begun) {
        canvas_.line(line + kAlong * *begun, place, theme_.second_ink, kWidth);
        begun.reset();
      }
    }
  }
}

void MapFrame::draw_lines() {
  if (!map_.sheet) return;
  constexpr float kLeastStep = 3.0f;  // shorter steps are invisible, and thousands cost time
  std::vector<Point> points;
  for (const map::PlaneLine& line : map_.sheet->lines) {
    points.clear();
    bool any = false;
    for (const map::PlanePoint& point : line.points) {
      const Point place = at(point);
      any = any || seen(place, 400.0f);
      const bool last = &point == &line.points.back();
      if (points.empty() || last || touch::distance(points.back(), place) >= kLeastStep) {
        points.push_back(place);
      }
    }
    if (!any) continue;
    const bool shore = line.kind == map::LineKind::Coast || line.kind == map::LineKind::LakeShore;
    canvas_.polyline(points, shore ? theme_.accent : theme_.second_ink,
                     line.kind == map::LineKind::StateBorder ? 1.5f : 2.5f);
  }
}

void MapFrame::draw_ground() {
  draw_relief();
  draw_area_scan();
  draw_unknown();
  draw_shadow();
  draw_lines();
}

}  // namespace mastwise::screens
