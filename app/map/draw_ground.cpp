#include "app/map/draw_ground.hpp"

#include "app/map/draw_rasters.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

class MapDrawing {
 public:
  MapDrawing(Ui& ui, Rect area, const Shared& shared, const MapState& map)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        map_(map),
        view_(map.view) {}

  void ground();
  void area_scan();
  void lines();
  void rings();
  void ring_names();
  void beam();
  void other_stations();
  void stations();
  void spots();
  void rig();

 private:
  struct Ring {
    double step, unit_m;
  };
  static constexpr int kRings = 4;
  Ring ring_step() const;

  struct Mark {
    Point at;
    const StationRow* row;
  };

  Point at(map::PlanePoint point) const {
    const MapOffset offset = offset_of(view_, point);
    const Point center = area_.center();
    return {center.x + static_cast<float>(offset.right),
            center.y + static_cast<float>(offset.down)};
  }
  Point stop() const { return at({}); }
  float units(double distance_m) const {
    return static_cast<float>(distance_m / view_.meters_per_unit);
  }
  bool seen(Point point, float margin = 0.0f) const { return area_.inset(-margin).contains(point); }
  // A square of the plane around the stop, as tetragon on the screen.
  std::array<Point, 4> square(double half_m) const {
    return {at({-half_m, half_m}), at({half_m, half_m}), at({half_m, -half_m}),
            at({-half_m, -half_m})};
  }
  // Each look has rasters of its own.
  std::uint64_t versioned(std::uint64_t serial) const {
    return ui::kLookCount * serial + static_cast<std::uint64_t>(ui_.look());
  }
  std::vector<Mark> marks() const;
  bool is_target(const StationKey& key) const {
    return shared_.stop.target && key_of(*shared_.stop.target) == key;
  }
  void mark(const Mark& mark);
  // Draws words on a plate; false if another plate is in the way.
  bool label(Point at, const std::string& words, bool bold, bool must);

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const MapState& map_;
  const MapView& view_;
  std::vector<Rect> plates_;
};

void MapDrawing::ground() {
  const auto& sheet = map_.sheet;
  if (!sheet || !sheet->relief) return;
  const map::Relief& relief = *sheet->relief;
  const ui::Raster& raster = ui_.raster("relief", versioned(map_.sheet_serial),
                                        [&] { return ui::relief_raster(relief, ui_.look()); });
  canvas_.image(raster, square(relief.grid.meters_per_cell * relief.grid.columns / 2.0));
}

void MapDrawing::area_scan() {
  const auto& sheet = map_.area_sheet;
  if (!map_.area || !sheet || sheet->percent.empty()) return;
  const ui::Raster& raster = ui_.raster("area", versioned(map_.area_serial),
                                        [&] { return ui::area_raster(*sheet, ui_.look()); });
  canvas_.image(raster, square(sheet->question.radius_m));
  canvas_.polyline(square(sheet->question.radius_m), theme_.ink, 2.0f, true);
}

void MapDrawing::lines() {
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

// Circles around the stop at round distances, two or three of them on the screen.
MapDrawing::Ring MapDrawing::ring_step() const {
  const double unit_m = words::distance_unit_m(shared_.settings.miles);
  const double room = 0.5 * std::min(area_.width(), area_.height()) * view_.meters_per_unit;
  double step = std::pow(10.0, std::floor(std::log10(room / unit_m)));
  if (step * unit_m * 5.0 <= room) {
    step *= 2.5;
  } else if (step * unit_m * 2.0 > room) {
    step /= 2.0;
  }
  return {step, unit_m};
}

void MapDrawing::rings() {
  const Ring ring = ring_step();
  for (int i = 1; i <= kRings; ++i) {
    canvas_.circle(stop(), units(i * ring.step * ring.unit_m), theme_.second_ink, 1.2f);
  }
}

void MapDrawing::ring_names() {
  const Ring ring = ring_step();
  for (int i = 1; i <= kRings; ++i) {
    const Point place = ui::around(stop(), units(i * ring.step * ring.unit_m), 45.0);
    if (!seen(place, -40.0f)) continue;
    label(place,
          fmt::format("{:g} {}", i * ring.step, words::distance_unit(shared_.settings.miles)),
          false, false);
  }
}

// From the stop toward the target, as wide as the aiming tolerance.
void MapDrawing::beam() {
  const auto& card = shared_.findings.card;
  if (!card) return;
  const float reach = 2.0f * (area_.width() + area_.height()) +
                      units(std::hypot(view_.middle.east_m, view_.middle.north_m));
  const auto to = static_cast<float>((card->bearing_true - view_.up).clockwise_deg());
  const auto edge = [&](float degrees) {
    canvas_.line(stop(), ui::around(stop(), reach, degrees), theme_.accent, 2.5f);
  };
  if (const auto& slack = shared_.findings.slack; slack && !slack->all_round()) {
    const float left = to - static_cast<float>(slack->left_deg);
    const float right = to + static_cast<float>(slack->right_deg);
    constexpr float kOpacity = 0.22f;
    // Each half is less than a half circle, as a filled sector must be. An area's colors stay
    // unchanged.
    if (!map_.area) {
      canvas_.sector(stop(), reach, left, to, theme_.accent, kOpacity);
      canvas_.sector(stop(), reach, to, right, theme_.accent, kOpacity);
    }
    edge(left);
    edge(right);
  } else {
    edge(to);
  }
}

void MapDrawing::other_stations() {
  if (!map_.sheet) return;
  std::vector<Point> dots;
  for (const map::PlanePoint point : map_.sheet->stations) {
    const Point dot = at(point);
    if (seen(dot)) dots.push_back(dot);
  }
  canvas_.squares(dots, 5.0f, theme_.second_ink);
}

// Hides overlapping marks and keeps the likeliest; the rest stay dots until the map is zoomed in.
std::vector<MapDrawing::Mark> MapDrawing::marks() const {
  constexpr float kApart = 26.0f;
  std::vector<Mark> marks;
  if (!shared_.stations) return marks;
  for (const std::size_t i : shared_.findings.listed) {
    const StationRow& row = shared_.stations->rows[i];
    if (!row.outlook) continue;
    const Point place = at(plane_point(row.outlook->distance_m, row.outlook->bearing));
    if (!seen(place, 20.0f)) continue;
    const auto covers = [&](const Mark& other) {
      return touch::distance(other.at, place) < kApart;
    };
    const StationKey key = key_of(row.station);
    const bool must = is_pinned(shared_.stop, key) || is_target(key) || map_.selected == key;
    if (must || std::none_of(marks.begin(), marks.end(), covers)) marks.push_back({place, &row});
  }
  return marks;
}

// The list's five segments around a middle that is filled if the station is pinned.
void MapDrawing::mark(const Mark& mark) {
  constexpr float kRadius = 13.0f, kWidth = 8.0f, kSegment_deg = 72.0f, kGap_deg = 10.0f;
  const auto& percent = mark.row->outlook->chance_percent;
  const std::size_t filled =
      percent ? ui::kChanceSegments - static_cast<std::size_t>(reception::chance_word(*percent))
              : 0;
  canvas_.disc(mark.at, kRadius + kWidth / 2.0f + 2.0f, theme_.panel);
  canvas_.circle(mark.at, kRadius + kWidth / 2.0f + 2.0f, theme_.ink, 1.5f);
  for (std::size_t i = 0; i < filled; ++i) {
    const float from = kSegment_deg * static_cast<float>(i) + kGap_deg / 2.0f;
    canvas_.arc(mark.at, kRadius, from, from + kSegment_deg - kGap_deg,
                ui::chance_color(i, ui_.look()), kWidth);
  }
  if (is_pinned(shared_.stop, key_of(mark.row->station))) {
    canvas_.disc(mark.at, 6.0f, theme_.accent);
  }
}

bool MapDrawing::label(Point at, const std::string& words, bool bold, bool must) {
  constexpr float kHeight = 26.0f, kMargin = 6.0f;
  const Face face = bold ? Face::SmallBold : Face::Small;
  const float width = canvas_.text_width(words, face) + 2.0f * kMargin;
  const Rect plate{at.x - width / 2.0f, at.y - kHeight / 2.0f, at.x + width / 2.0f,
                   at.y + kHeight / 2.0f};
  const auto covers = [&](const Rect& other) { return other.overlaps(plate); };
  const bool within =
      area_.contains({plate.left, plate.top}) && area_.contains({plate.right, plate.bottom});
  if (!must && (!within || std::any_of(plates_.begin(), plates_.end(), covers))) return false;
  plates_.push_back(plate);
  canvas_.fill(plate, theme_.panel, 6.0f);
  canvas_.text({plate.left + kMargin, plate.bottom - 7.5f}, words, face, theme_.ink);
  return true;
}

// The likeliest are drawn last, on top, and named first.
void MapDrawing::stations() {
  constexpr std::size_t kMostNames = 24;
  constexpr float kBelow = 34.0f;
  const std::vector<Mark> all = marks();
  const auto is = [](const Mark& one, const std::optional<StationKey>& key) {
    return key && key_of(one.row->station) == *key;
  };
  for (auto one = all.rbegin(); one != all.rend(); ++one) mark(*one);
  for (const Mark& one : all) {
    constexpr float kRadius = 14.0f;  // names may touch a mark's edge
    plates_.push_back(
        {one.at.x - kRadius, one.at.y - kRadius, one.at.x + kRadius, one.at.y + kRadius});
  }
  for (const Mark& one : all) {
    if (is(one, map_.selected)) canvas_.circle(one.at, 26.0f, theme_.accent, 4.0f);
  }
  const auto name = [&](const Mark& one, bool must) {
    label({one.at.x, one.at.y + kBelow},
          one.row->station.call_sign + " " + words::chance_number(*one.row->outlook),
          is_target(key_of(one.row->station)), must);
  };
  for (const Mark& one : all) {
    if (is_target(key_of(one.row->station)) || is(one, map_.selected)) name(one, true);
  }
  std::size_t names = 0;
  for (const Mark& one : all) {
    if (++names > kMostNames) break;
    if (!is_target(key_of(one.row->station)) && !is(one, map_.selected)) name(one, false);
  }
}

void MapDrawing::spots() {
  if (!map_.area || !map_.area_sheet) return;
  for (const AreaSpot& spot : map_.area_sheet->spots) {
    const Point place = at(plane_point(spot.distance_m, spot.bearing));
    if (!seen(place)) continue;
    canvas_.circle(place, 12.0f, theme_.panel, 8.0f);
    canvas_.circle(place, 12.0f, theme_.ink, 4.0f);
    label({place.x, place.y - 30.0f}, words::chance_number(spot.chance_percent), true, false);
  }
}

void MapDrawing::rig() {
  const auto& nose = shared_.findings.nose;
  ui::draw_rig(canvas_, theme_, stop(),
               nose ? std::optional(nose->nose() - view_.up) : std::nullopt, 0.42f);
}

}  // namespace

void draw_map(Ui& ui, Rect area, const Shared& shared, const MapState& map) {
  MapDrawing drawing(ui, area, shared, map);
  ui.canvas().push_clip(area);
  drawing.ground();
  drawing.area_scan();
  drawing.lines();
  drawing.beam();
  drawing.rings();
  if (!map.area) {
    drawing.other_stations();
    drawing.stations();
  }
  drawing.spots();
  drawing.ring_names();
  drawing.rig();
  ui.canvas().pop_clip();
  ui.canvas().outline(area, ui.theme().rule, 2.0f);
}

}  // namespace mastwise::screens
