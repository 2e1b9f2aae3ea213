#include "app/map/draw_frame.hpp"
#include "app/ui/kite.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

// Distances, bearings and the aiming tolerance around the stop.
namespace mastwise::screens {

using ui::Face;
using ui::Point;
using ui::Rect;

namespace {

constexpr float kToleranceWidth = 11.0f;  // width of the tolerance

}  // namespace

float MapFrame::bearings_radius() const {
  constexpr float kOutside = 40.0f;  // room for the norths and the degrees
  return std::min(area_.width(), area_.height()) / 2.0f - kOutside;
}

// Circles around the stop at round distances, one to three of them within the ring of bearings:
// between them there must be room for words.
MapFrame::Ring MapFrame::ring_step() const {
  constexpr double kLeastRings = 1.4;
  const double unit_m = words::distance_unit_m(shared_.settings.miles);
  const double room = bearings_radius() * map_.view.meters_per_unit / unit_m / kLeastRings;
  const double ten = std::pow(10.0, std::floor(std::log10(room)));
  const double step = ten * (room >= 5.0 * ten ? 5.0 : room >= 2.5 * ten ? 2.5 : 1.0);
  return {step, unit_m};
}

// Those within the ring of bearings; some more where the map was dragged away from the stop.
int MapFrame::ring_count() const {
  constexpr int kAway = 6;
  constexpr float kMerged = 24.0f;  // a ring so near to that of the bearings is not drawn
  if (!seen(stop())) return kAway;
  const Ring ring = ring_step();
  return static_cast<int>((bearings_radius() - kMerged) / units(ring.step * ring.unit_m));
}

void MapFrame::draw_bearings() {
  const float radius = bearings_radius();
  canvas_.circle(stop(), radius, theme_.ink, 1.5f);
  constexpr int kStep_deg = 10, kLong_deg = 30;
  for (int bearing = 0; bearing < 360; bearing += kStep_deg) {
    const float way = on_screen(Bearing<True>::degrees(bearing));
    const float tick = bearing % kLong_deg == 0 ? 16.0f : 8.0f;
    canvas_.line(ui::around(stop(), radius - tick, way), ui::around(stop(), radius, way),
                 theme_.ink, 1.5f);
  }
  constexpr float kKite = 13.0f, kAway = 24.0f;
  const auto north = [&](Bearing<True> bearing, bool filled) {
    const float way = on_screen(bearing);
    const Point middle = ui::around(stop(), radius + kAway, way);
    ui::kite(canvas_, middle, kKite, theme_.ink, filled, way);
    field_.block_mark(middle, kKite);
  };
  if (const auto& field = shared_.findings.field) {
    north(to_true(Bearing<Magnetic>(), field->declination), false);
  }
  north(Bearing<True>(), true);
  field_.block_ring(stop(), radius);
  field_.block_ring(stop(), radius + kToleranceWidth);
}

// The degrees at an end of the tolerance, past the end, where there is room: `past` is -1 at the
// left end, 1 at the right.
void MapFrame::draw_tolerance_end(float end, float past, double amount_deg) {
  constexpr float kHeight = 32.0f;
  const std::string words = words::whole_degrees(amount_deg);
  const float width = canvas_.text_width(words, Face::TextBold) + 12.0f;
  const float radius = bearings_radius();
  struct Place {
    float radius, past_deg;
  };
  for (const Place& place : {Place{radius + 22.0f, 5.0f}, Place{radius + 4.0f, 7.0f},
                             Place{radius - 30.0f, 6.0f}, Place{radius - 34.0f, -9.0f}}) {
    const Point middle = ui::around(stop(), place.radius, end + past * place.past_deg);
    const Rect plate{middle.x - width / 2.0f, middle.y - kHeight / 2.0f, middle.x + width / 2.0f,
                     middle.y + kHeight / 2.0f};
    if (!field_.is_free(plate, LabelField::On::Rings)) continue;
    field_.block(plate);
    canvas_.fill(plate, theme_.panel, 6.0f);
    canvas_.text({middle.x, plate.bottom - 7.0f}, words, Face::TextBold, theme_.accent,
                 ui::Align::Center);
    return;
  }
}

void MapFrame::draw_tolerance() {
  const auto& card = shared_.findings.card;
  const auto& slack = shared_.findings.slack;
  if (!card || !slack) return;
  const float radius = bearings_radius(), middle = radius + kToleranceWidth / 2.0f;
  if (slack->all_round()) {
    canvas_.circle(stop(), middle, theme_.accent, kToleranceWidth);
    return;
  }
  const float to = on_screen(card->bearing_true);
  const float left = to - static_cast<float>(slack->left_deg);
  const float right = to + static_cast<float>(slack->right_deg);
  canvas_.arc(stop(), middle, left, right, theme_.accent, kToleranceWidth);
  for (const float end : {left, right}) {
    const Point from = ui::around(stop(), 36.0f, end);
    const Point edge = ui::around(stop(), radius + kToleranceWidth, end);
    canvas_.line(from, edge, theme_.accent, 2.5f);
    field_.block_line(from, edge);
  }
  draw_tolerance_end(left, -1.0f, slack->left_deg);
  draw_tolerance_end(right, 1.0f, slack->right_deg);
}

// An arrow from the rig toward the target, not as far as its mark.
void MapFrame::draw_target_way() {
  const auto& card = shared_.findings.card;
  if (!card) return;
  constexpr float kFrom = 40.0f, kMark = 28.0f, kHead = 26.0f, kHalfHead = 11.0f, kWidth = 5.0f;
  const float reach = std::min(0.42f * bearings_radius(), units(card->distance_m) - kMark);
  if (reach < kFrom + kHead) return;
  const float way = on_screen(card->bearing_true);
  const Point from = ui::around(stop(), kFrom, way), tip = ui::around(stop(), reach, way);
  const Point neck = ui::around(stop(), reach - kHead, way);
  canvas_.line(from, neck, theme_.ink, kWidth);
  const std::array head{tip, ui::around(neck, kHalfHead, way + 90.0f),
                        ui::around(neck, kHalfHead, way - 90.0f)};
  canvas_.polygon(head, theme_.ink);
  field_.block_line(from, tip);
}

// A name stands on its ring, where there is room.
void MapFrame::place_ring_names() {
  constexpr float kHeight = 32.0f;
  const Ring ring = ring_step();
  for (int i = 1; i <= ring_count(); ++i) {
    const float radius = units(i * ring.step * ring.unit_m);
    const std::string words =
        fmt::format("{:g} {}", i * ring.step, words::distance_unit(shared_.settings.miles));
    const float width = canvas_.text_width(words, Face::Text) + 12.0f;
    for (const double way : {150.0, 165.0, 135.0, 195.0, 210.0, 120.0, 225.0, 60.0, 300.0, 15.0}) {
      const Point middle = ui::around(stop(), radius, way);
      const Rect plate{middle.x - width / 2.0f, middle.y - kHeight / 2.0f, middle.x + width / 2.0f,
                       middle.y + kHeight / 2.0f};
      if (!field_.is_free(plate, LabelField::On::BreakingRings)) continue;
      field_.block(plate);
      ring_names_.push_back({plate, words});
      break;
    }
  }
}

// The rings of distance, with gaps at all words.
void MapFrame::draw_distances(const std::vector<Rect>& words) {
  constexpr float kGap = 8.0f, kWidth = 1.2f;
  constexpr double kStep_deg = 1.5;
  const Ring ring = ring_step();
  std::vector<Point> line;
  const auto end_line = [&] {
    if (line.size() > 1) canvas_.polyline(line, theme_.second_ink, kWidth);
    line.clear();
  };
  for (int i = 1; i <= ring_count(); ++i) {
    const float radius = units(i * ring.step * ring.unit_m);
    for (double way = 0.0; way <= 360.0; way += kStep_deg) {
      const Point place = ui::around(stop(), radius, way);
      const auto covers = [&](const Rect& plate) { return plate.inset(-kGap).contains(place); };
      if (std::any_of(words.begin(), words.end(), covers)) {
        end_line();
      } else {
        line.push_back(place);
      }
    }
    end_line();
  }
  for (const RingName& name : ring_names_) {
    canvas_.fill(name.plate, theme_.paper, 6.0f);
    canvas_.text({name.plate.center().x, name.plate.bottom - 7.5f}, name.words, Face::Text,
                 theme_.ink, ui::Align::Center);
  }
}

void MapFrame::draw_rings() {
  const Ring ring = ring_step();
  for (int i = 1; i <= ring_count(); ++i) {
    field_.block_ring(stop(), units(i * ring.step * ring.unit_m), true);
  }
  draw_bearings();
  draw_tolerance();
  draw_target_way();
}

}  // namespace mastwise::screens
