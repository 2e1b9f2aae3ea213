#include "app/parking/draw_ring.hpp"

#include "app/parking/actions.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/side_marks.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace mastwise::screens {
namespace {

using reception::kSide_deg;
using reception::kSides;
using reception::SideKind;
using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Theme;
using ui::Ui;

// Shares of the ring's outer radius.
constexpr float kInner = 0.545f, kBandRoom = 1.10f;
constexpr double kHalfSide_deg = kSide_deg / 2.0 - 1.2;  // drawn with gaps between

// Trees within a side: degrees from its middle, distance and size as shares of the outer radius.
struct TreePlace {
  double off_deg;
  float distance, size;
};
constexpr std::array kTrees{TreePlace{-13.5, 0.90f, 0.060f}, TreePlace{0.5, 0.89f, 0.068f},
                            TreePlace{14.0, 0.90f, 0.056f},  TreePlace{-9.0, 0.745f, 0.072f},
                            TreePlace{8.0, 0.745f, 0.080f},  TreePlace{-6.5, 0.615f, 0.052f},
                            TreePlace{8.5, 0.615f, 0.048f}};

class RingPainter {
 public:
  RingPainter(Ui& ui, Rect room, const Shared& shared, const ParkingState& parking)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        ring_(shared.findings.ring),
        shared_(shared),
        parking_(parking),
        center_(room.center()),
        outer_((std::min(room.width(), room.height()) / 2.0f - 12.0f) / kBandRoom),
        up_(shared.findings.nose ? shared.findings.nose->nose() : Bearing<True>()) {
    // The next paint turns an unpainted ring to the nose.
    if (ring_.blank()) ring_.first = up_;
  }

  void draw();

 private:
  double screen_deg(Bearing<True> bearing) const { return (bearing - up_).clockwise_deg(); }
  Point at(double clockwise_deg, float radius) const {
    return ui::around(center_, radius, clockwise_deg);
  }
  void piece(double from_deg, double to_deg, float inner, float outer, Color color) const;
  std::vector<Point> side_outline(double middle_deg) const;
  void side(std::size_t index) const;
  // The largest upright square that stays within every side, and 9 mm at least.
  float side_half() const { return std::max(0.19f * outer_, 0.5f * ui::kTouchUnits + 0.2f); }
  void clear_words() const;
  void expected_rig(bool right) const;
  void dotted(const std::vector<Point>& outline) const;
  void wedges() const;
  void bands() const;
  void hatched(const HeadingArc& arc) const;
  void counts() const;
  void norths() const;
  void touch();
  void paint_along(const touch::Gesture& gesture);
  std::vector<HeadingArc> arcs(bool blocked) const;

  Ui& ui_;
  Canvas& canvas_;
  const Theme& theme_;
  reception::ObstacleRing ring_;
  const Shared& shared_;
  const ParkingState& parking_;
  Point center_;
  float outer_;
  Bearing<True> up_;  // at the top of the picture
};

// A piece of a ring, from four-cornered steps without seams.
void RingPainter::piece(double from_deg, double to_deg, float inner, float outer,
                        Color color) const {
  constexpr double kStep_deg = 3.0;
  const int steps = std::max(1, static_cast<int>(std::ceil((to_deg - from_deg) / kStep_deg)));
  const double step_deg = (to_deg - from_deg) / steps;
  for (int i = 0; i < steps; ++i) {
    const double one = from_deg + i * step_deg, other = one + step_deg;
    canvas_.solid(std::array{at(one, inner), at(one, outer), at(other, outer), at(other, inner)},
                  color);
  }
}

std::vector<Point> RingPainter::side_outline(double middle_deg) const {
  constexpr int kSteps = 12;
  std::vector<Point> outline;
  const double step_deg = 2.0 * kHalfSide_deg / kSteps;
  for (int i = 0; i <= kSteps; ++i) {
    outline.push_back(at(middle_deg - kHalfSide_deg + i * step_deg, outer_));
  }
  // The gap between two sides is as wide at the inner ring.
  const double inner_deg = kSide_deg / 2.0 - (kSide_deg / 2.0 - kHalfSide_deg) / kInner;
  for (int i = kSteps; i >= 0; --i) {
    outline.push_back(at(middle_deg - inner_deg + i * 2.0 * inner_deg / kSteps, kInner * outer_));
  }
  return outline;
}

// Dots at even distances along a closed line.
void RingPainter::dotted(const std::vector<Point>& outline) const {
  constexpr float kApart = 10.0f, kDot = 1.6f;
  float left = 0.0f;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point from = outline[i], to = outline[(i + 1) % outline.size()];
    const float length = touch::distance(from, to);
    float along = left;
    for (; along < length; along += kApart) {
      canvas_.disc(from + (to - from) * (along / length), kDot, theme_.second_ink);
    }
    left = along - length;
  }
}

void RingPainter::side(std::size_t index) const {
  const reception::Side& what = ring_.sides[index];
  const double middle_deg = screen_deg(ring_.middle_of(index));
  const std::vector<Point> outline = side_outline(middle_deg);
  if (what.kind == SideKind::unmarked) return dotted(outline);
  const bool latest =
      std::find(parking_.stroke.begin(), parking_.stroke.end(), index) != parking_.stroke.end();
  const bool blocks =
      what.blocks() &&
      std::any_of(parking_.wanted.begin(), parking_.wanted.end(), [&](const WantedSight& one) {
        return one.sight == Sight::blocked && ring_.side_toward(one.bearing) == index;
      });
  canvas_.polyline(outline,
                   blocks   ? theme_.warning
                   : latest ? theme_.ink
                            : theme_.rule,
                   blocks   ? 5.0f
                   : latest ? 4.0f
                            : 3.0f,
                   true);
  const Point middle = at(middle_deg, 0.5f * (1.0f + kInner) * outer_);
  switch (what.kind) {
    case SideKind::unmarked:
    case SideKind::open:
      return;
    case SideKind::trees:
      for (const TreePlace& tree : kTrees) {
        ui::draw_tree(canvas_, at(middle_deg + tree.off_deg, tree.distance * outer_),
                      tree.size * outer_, theme_.ink, theme_.panel);
      }
      return;
    case SideKind::hill:
      ui::draw_hill(canvas_, middle, 0.20f * outer_, theme_.ink);
      return;
    case SideKind::rig:
      ui::draw_rig(canvas_, theme_, middle, Turn(), 0.42f * outer_ / ui::kRigLength);
      return;
  }
}

// Where a rig may park on the next site, if nobody has painted that side.
void RingPainter::expected_rig(bool right) const {
  if (!shared_.findings.nose) return;
  const double deg = right ? 90.0 : -90.0;
  const Bearing<True> toward = Bearing<True>::degrees(up_.degrees() + deg);
  if (ring_.sides[ring_.side_toward(toward)].kind != SideKind::unmarked) return;
  const RigSector occupied = neighbor_sector(right);
  const bool blocks =
      std::any_of(parking_.wanted.begin(), parking_.wanted.end(), [&](const WantedSight& one) {
        const auto noses = noses_that_clear({one.arc}, {&occupied, 1});
        return one.sight == Sight::blocked && !slack_within(noses, up_);
      });
  Theme theme = theme_;
  theme.ink = blocks ? theme_.warning : theme_.second_ink;
  ui::draw_rig(canvas_, theme, at(deg, 0.5f * (1.0f + kInner) * outer_), Turn(),
               0.42f * outer_ / ui::kRigLength);
}

// In the middle of an open side through which a wanted station comes.
void RingPainter::clear_words() const {
  for (std::size_t index = 0; index < kSides; ++index) {
    if (ring_.sides[index].kind != SideKind::open) continue;
    const bool wanted =
        std::any_of(parking_.wanted.begin(), parking_.wanted.end(), [&](const WantedSight& one) {
          return one.sight == Sight::clear && ring_.side_toward(one.bearing) == index;
        });
    if (!wanted) continue;
    const Point middle = at(screen_deg(ring_.middle_of(index)), 0.5f * (1.0f + kInner) * outer_);
    const char* clear = words::say("clear");
    canvas_.text({middle.x, middle.y + 9.0f}, clear, Face::TextBold, theme_.ink, Align::Center,
                 canvas_.size_within(2.0f * side_half(), clear, Face::TextBold));
  }
}

std::vector<HeadingArc> RingPainter::arcs(bool blocked) const {
  std::vector<HeadingArc> all;
  for (const WantedSight& one : parking_.wanted) {
    if ((one.sight == Sight::blocked) == blocked) all.push_back(one.arc);
  }
  return joined_arcs(std::move(all));
}

// What the antenna must see, from the rig outward; over sides that are open.
void RingPainter::wedges() const {
  for (const HeadingArc& arc : arcs(false)) {
    const double from_deg = screen_deg(arc.from);
    piece(from_deg, from_deg + arc.length_deg, 0.0f, outer_, theme_.lobe);
  }
  for (const HeadingArc& arc : arcs(true)) {
    const double from_deg = screen_deg(arc.from);
    piece(from_deg, from_deg + arc.length_deg, 0.0f, kInner * outer_, theme_.lobe);
  }
}

void RingPainter::hatched(const HeadingArc& arc) const {
  constexpr double kApart_deg = 4.0;
  const float inner = outer_ + 6.0f, outer = kBandRoom * outer_;
  const double from_deg = screen_deg(arc.from), to_deg = from_deg + arc.length_deg;
  piece(from_deg, to_deg, inner, outer, theme_.paper);
  std::vector<Point> outline;
  const int steps = std::max(1, static_cast<int>(arc.length_deg / 3.0));
  for (int i = 0; i <= steps; ++i) {
    outline.push_back(at(from_deg + arc.length_deg * i / steps, outer));
  }
  for (int i = steps; i >= 0; --i) {
    outline.push_back(at(from_deg + arc.length_deg * i / steps, inner));
  }
  canvas_.polyline(outline, theme_.warning, 3.0f, true);
  for (double deg = from_deg + kApart_deg; deg < to_deg; deg += kApart_deg) {
    canvas_.line(at(deg, inner), at(std::min(deg + 2.0, to_deg), outer), theme_.warning, 3.0f);
  }
}

void RingPainter::bands() const {
  for (const HeadingArc& arc : arcs(false)) {
    const double from_deg = screen_deg(arc.from);
    piece(from_deg, from_deg + arc.length_deg, outer_ + 6.0f, kBandRoom * outer_, theme_.accent);
  }
  for (const HeadingArc& arc : arcs(true)) hatched(arc);
}

// How many networks come from each direction, on the band.
void RingPainter::counts() const {
  constexpr float kRadius = 19.0f;
  constexpr double kTogether_deg = 11.0;
  struct Count {
    double at_deg;
    std::size_t number;
    bool blocked;
  };
  std::vector<Count> counts;
  for (const WantedSight& one : parking_.wanted) {
    const double at_deg = screen_deg(one.bearing);
    const bool blocked = one.sight == Sight::blocked;
    const auto near = std::find_if(counts.begin(), counts.end(), [&](const Count& count) {
      return std::fabs(fold_half_circle_deg(count.at_deg - at_deg)) < kTogether_deg;
    });
    if (near == counts.end()) {
      counts.push_back({at_deg, one.counts(), blocked});
    } else {
      near->number += one.counts();
      near->blocked |= blocked;
    }
  }
  for (const Count& count : counts) {
    const Point middle = at(count.at_deg, 0.5f * (outer_ + 6.0f + kBandRoom * outer_));
    const Color color = count.blocked ? theme_.warning : theme_.ink;
    canvas_.disc(middle, kRadius, theme_.panel);
    canvas_.circle(middle, kRadius, color, 3.0f);
    canvas_.text({middle.x, middle.y + 9.0f}, std::to_string(count.number), Face::TextBold, color,
                 Align::Center, canvas_.usual_share(Face::TextBold));
  }
}

// True north as a kite, and the other three as letters, inside the ring.
void RingPainter::norths() const {
  constexpr std::array kLetters{"N", "E", "S", "W"};
  for (std::size_t i = 0; i < kLetters.size(); ++i) {
    const double deg = screen_deg(Bearing<True>::degrees(90.0 * static_cast<double>(i)));
    const float ring = kInner * outer_;
    if (i == 0) {
      ui::kite(canvas_, at(deg, ring - 14.0f), 13.0f, theme_.ink, true, deg);
    } else {
      canvas_.line(at(deg, ring - 8.0f), at(deg, ring - 1.0f), theme_.ink, 3.0f);
    }
    const Point letter = at(deg, ring - (i == 0 ? 40.0f : 22.0f));
    canvas_.text({letter.x, letter.y + 9.0f}, words::say(kLetters[i]),
                 i == 0 ? Face::TextBold : Face::Text, theme_.ink, Align::Center,
                 canvas_.usual_share(Face::Text));
  }
}

// The sides that a wipe crosses; between two frames a quick finger crosses several.
void RingPainter::paint_along(const touch::Gesture& gesture) {
  constexpr int kSteps = 16;
  const float scale = canvas_.px_per_unit();
  const bool begins = gesture.phase == touch::Gesture::Phase::Begin;
  const Point to = gesture.current_px * (1.0f / scale);
  const Point from =
      begins ? gesture.start_px * (1.0f / scale) : to - gesture.delta_px * (1.0f / scale);
  std::optional<std::size_t> last;
  for (int i = 0; i <= kSteps; ++i) {
    const Point off = from + (to - from) * (static_cast<float>(i) / kSteps) - center_;
    const float away = touch::length(off);
    if (away < 0.45f * outer_ || away > 1.25f * outer_) continue;
    const double deg = std::atan2(off.x, -off.y) * 180.0 / std::numbers::pi;
    const std::size_t side = ring_.side_toward(Bearing<True>::degrees(up_.degrees() + deg));
    if (last == side) continue;
    last = side;
    ui_.emit(act::PaintSide{side, true});
  }
}

void RingPainter::touch() {
  const float half = side_half();
  for (std::size_t side = 0; side < kSides; ++side) {
    const Point middle = at(screen_deg(ring_.middle_of(side)), 0.5f * (1.0f + kInner) * outer_);
    const Rect square{middle.x - half, middle.y - half, middle.x + half, middle.y + half};
    if (ui_.touchable("side " + std::to_string(side), square, true, "sides")) {
      ui_.emit(act::PaintSide{side, false});
    }
  }
  const Rect whole{center_.x - outer_, center_.y - outer_, center_.x + outer_, center_.y + outer_};
  for (const touch::Gesture& gesture : ui_.gestures_in(whole)) {
    if (gesture.kind != touch::Gesture::Kind::Drag) continue;
    using Phase = touch::Gesture::Phase;
    if (gesture.phase == Phase::Begin || gesture.phase == Phase::Change) paint_along(gesture);
    if (gesture.phase == Phase::End || gesture.phase == Phase::Cancel) ui_.emit(act::EndWipe{});
  }
}

void RingPainter::draw() {
  for (std::size_t side = 0; side < kSides; ++side) {
    if (ring_.sides[side].kind == SideKind::unmarked) continue;
    const double middle_deg = screen_deg(ring_.middle_of(side));
    piece(middle_deg - kHalfSide_deg, middle_deg + kHalfSide_deg, kInner * outer_, outer_,
          theme_.panel);
  }
  wedges();
  for (std::size_t index = 0; index < kSides; ++index) side(index);
  if (on_right(parking_.neighbors)) expected_rig(true);
  if (on_left(parking_.neighbors)) expected_rig(false);
  clear_words();
  bands();
  norths();
  ui::draw_rig(canvas_, theme_, center_,
               shared_.findings.nose ? std::optional(Turn()) : std::nullopt,
               0.66f * outer_ / ui::kRigLength);
  counts();
  touch();
}

}  // namespace

void draw_ring(Ui& ui, Rect room, const Shared& shared, const ParkingState& parking) {
  RingPainter(ui, room, shared, parking).draw();
}

}  // namespace mastwise::screens
