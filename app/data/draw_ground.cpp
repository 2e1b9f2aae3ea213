#include "app/data/draw_ground.hpp"

#include "app/ui/kite.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/texture.hpp"
#include "app/words/ahead.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

// The ground on board and missing around the stop and the way, true north up.
namespace mastwise::screens::import {
namespace {

using map::PlanePoint;
using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

constexpr float kLegend = 44.0f;

class GroundMap {
 public:
  GroundMap(Ui& ui, Rect frame, const Shared& shared, const Intake& data)
      : canvas_(ui.canvas()), theme_(ui.theme()), frame_(frame), shared_(shared), data_(data) {
    fit();
  }
  void draw();

 private:
  void fit();
  Point at(PlanePoint point) const {
    return {frame_.center().x + static_cast<float>((point.east_m - middle_.east_m) * scale_),
            frame_.center().y - static_cast<float>((point.north_m - middle_.north_m) * scale_)};
  }
  using Quad = std::array<Point, 4>;  // from the south-west corner, counterclockwise
  Quad square(const GroundSquare& square) const;
  void hatched(const Quad& quad);
  void squares();
  void way();
  void label(Point at, const std::string& words, Face face);
  void scale_bar();

  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect frame_;
  const Shared& shared_;
  const Intake& data_;
  PlanePoint middle_{};
  double scale_ = 0.0;  // units a meter
  std::vector<Rect> labels_;
};

// What is near fills the frame; squares reach beyond it.
void GroundMap::fit() {
  const GroundAround& around = *data_.answer->around;
  double west = 1e12, east = -1e12, south = 1e12, north = -1e12;
  for (const GroundLine& line : around.reach) {
    for (const PlanePoint& point : line) {
      west = std::min(west, point.east_m);
      east = std::max(east, point.east_m);
      south = std::min(south, point.north_m);
      north = std::max(north, point.north_m);
    }
  }
  constexpr float kMargin = 28.0f;
  middle_ = {(west + east) / 2.0, (south + north) / 2.0};
  scale_ = std::min((frame_.width() - 2.0f * kMargin) / (east - west),
                    (frame_.height() - 2.0f * kMargin) / (north - south));
}

GroundMap::Quad GroundMap::square(const GroundSquare& one) const {
  return {at(one.corners[0]), at(one.corners[1]), at(one.corners[2]), at(one.corners[3])};
}

// Slanted lines from edge to edge: a clip has upright sides, and meridians lean on the plane.
void GroundMap::hatched(const Quad& quad) {
  const auto within = [&](float east, float north) {
    const auto mix = [&](float Point::*part) {
      const float south_edge = quad[0].*part + east * (quad[1].*part - quad[0].*part);
      const float north_edge = quad[3].*part + east * (quad[2].*part - quad[3].*part);
      return south_edge + north * (north_edge - south_edge);
    };
    return Point{mix(&Point::x), mix(&Point::y)};
  };
  constexpr float kApart = 15.0f;
  const float step = kApart / std::max(1.0f, quad[1].x - quad[0].x);
  // How much farther east than south, as parts of the sides.
  for (float ahead = step / 2.0f - 1.0f; ahead < 1.0f; ahead += step) {
    const float from = std::max(0.0f, ahead), to = std::min(1.0f, 1.0f + ahead);
    canvas_.line(within(from, 1.0f - (from - ahead)), within(to, 1.0f - (to - ahead)),
                 theme_.second_ink, 1.8f);
  }
}

void GroundMap::squares() {
  const auto& squares = data_.answer->around->squares;
  for (const GroundSquare& one : squares) {
    const Quad quad = square(one);
    if (one.held == SquareHeld::Held) canvas_.solid(quad, theme_.lobe);
    canvas_.polyline(quad, theme_.rule, 1.5f, true);
  }
  for (const GroundSquare& one : squares) {
    if (one.held != SquareHeld::Missing || one.near_km2 == 0.0) continue;
    const Quad quad = square(one);
    hatched(quad);
    canvas_.polyline(quad, theme_.ink, 2.5f, true);
  }
}

void GroundMap::label(Point at, const std::string& words, Face face) {
  constexpr float kHeight = 34.0f, kApart = 24.0f, kPad = 6.0f;
  const float width = canvas_.text_width(words, face) + 2.0f * kPad;
  const std::array places{
      Rect{at.x + kApart, at.y - kHeight / 2.0f, at.x + kApart + width, at.y + kHeight / 2.0f},
      Rect{at.x - kApart - width, at.y - kHeight / 2.0f, at.x - kApart, at.y + kHeight / 2.0f},
      Rect{at.x - width / 2.0f, at.y + kApart, at.x + width / 2.0f, at.y + kApart + kHeight},
      Rect{at.x - width / 2.0f, at.y - kApart - kHeight, at.x + width / 2.0f, at.y - kApart}};
  for (const Rect& place : places) {
    if (place.left < frame_.left || place.right > frame_.right || place.top < frame_.top ||
        place.bottom > frame_.bottom) {
      continue;
    }
    const bool taken = std::any_of(labels_.begin(), labels_.end(), [&](const Rect& other) {
      return place.left < other.right && other.left < place.right && place.top < other.bottom &&
             other.top < place.bottom;
    });
    if (taken) continue;
    labels_.push_back(place);
    canvas_.fill(place, theme_.panel, 6.0f);
    canvas_.text({place.left + kPad, place.center().y + 9.0f}, words, face, theme_.ink);
    return;
  }
}

void GroundMap::way() {
  const GroundAround& around = *data_.answer->around;
  for (const GroundLine& line : around.reach) {
    canvas_.line(at(line[0]), at(line[1]), theme_.accent, 3.5f);
  }
  for (std::size_t i = 1; i < around.way.size(); ++i) {
    const Point from = at(around.way[i - 1]), to = at(around.way[i]);
    canvas_.line(from, to, theme_.panel, 10.0f);
    canvas_.line(from, to, theme_.ink, 4.0f);
  }
  for (std::size_t i = 0; i < around.way.size(); ++i) {
    const Point here = at(around.way[i]);
    constexpr float kDot = 10.0f;
    if (i == 0) {
      constexpr float kRig = 0.26f, kGround = 26.0f;
      canvas_.disc(here, kGround, theme_.panel);
      const std::optional<Turn> nose =
          shared_.findings.nose ? std::optional(shared_.findings.nose->nose() - Bearing<True>())
                                : std::nullopt;
      ui::draw_rig(canvas_, theme_, here, nose, kRig);
    } else {
      canvas_.disc(here, kDot, theme_.panel);
      canvas_.circle(here, kDot, theme_.ink, 4.0f);
    }
    const float room = i == 0 ? 22.0f : kDot;
    labels_.push_back({here.x - room, here.y - room, here.x + room, here.y + room});
  }
  const auto& asked = data_.answer->question.way;
  label(at(around.way.front()), words::say("Here"), Face::TextBold);
  for (std::size_t i = 1; i < std::min(asked.size(), around.way.size()); ++i) {
    const places::NearPlace* near = near_place_of(shared_, asked[i]);
    if (near == nullptr) continue;
    label(at(around.way[i]), words::place_title(*near, shared_.settings.miles), Face::Text);
  }
}

void GroundMap::scale_bar() {
  const bool miles = shared_.settings.miles;
  constexpr double kRound = 50.0;
  const double length_m = kRound * words::distance_unit_m(miles);
  const auto length = static_cast<float>(length_m * scale_);
  const std::string words = words::whole_distance(length_m, miles);
  const float width = std::max(length, canvas_.text_width(words, Face::Text)) + 16.0f;
  const Rect box{frame_.right - width - 8.0f, frame_.bottom - 52.0f, frame_.right - 8.0f,
                 frame_.bottom - 8.0f};
  canvas_.fill(box, theme_.panel, 6.0f);
  canvas_.text({box.center().x, box.top + 26.0f}, words, Face::Text, theme_.ink, Align::Center);
  canvas_.line({box.center().x - length / 2.0f, box.bottom - 8.0f},
               {box.center().x + length / 2.0f, box.bottom - 8.0f}, theme_.ink, 4.0f);
  labels_.push_back(box);
}

void GroundMap::draw() {
  canvas_.fill(frame_, theme_.panel, 12.0f);
  canvas_.push_clip(frame_);
  squares();
  scale_bar();
  const Point north{frame_.right - 32.0f, frame_.top + 34.0f};
  canvas_.disc(north, 26.0f, theme_.panel);
  ui::kite(canvas_, north, 20.0f, theme_.ink, true);
  way();
  canvas_.pop_clip();
  canvas_.outline(frame_, theme_.rule, 2.0f, 12.0f);
}

// Swatches with what they mean, as many as fit.
void draw_legend(Ui& ui, Rect row, const Shared& shared) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  constexpr float kSwatch = 36.0f, kApart = 24.0f;
  float x = row.left;
  const float y = row.center().y;
  const auto words = [&](const std::string& text) {
    x += kSwatch + 10.0f;
    canvas.text({x, y + 9.0f}, text, Face::Text, theme.ink);
    x += canvas.text_width(text, Face::Text) + kApart;
  };
  const auto swatch = [&] { return Rect{x, y - 13.0f, x + kSwatch, y + 13.0f}; };
  canvas.fill(swatch(), theme.lobe);
  canvas.outline(swatch(), theme.rule, 2.0f);
  words(words::say("on board"));
  ui::hatch(canvas, swatch(), theme.second_ink, 9.0f, 1.8f);
  canvas.outline(swatch(), theme.ink, 2.5f);
  words(words::say("missing"));
  const std::string reach = words::whole_distance(kNearGround_m, shared.settings.miles);
  if (x + kSwatch + 10.0f + canvas.text_width(reach, Face::Text) > row.right) return;
  canvas.line({x, y + 6.0f}, {x + kSwatch, y - 6.0f}, theme.accent, 4.0f);
  words(reach);
}

}  // namespace

void draw_ground(Ui& ui, Rect area, const Shared& shared, const Intake& data) {
  const ui::Theme& theme = ui.theme();
  Rect frame = area;
  frame.bottom = area.bottom - kLegend;
  const Rect legend{area.left, frame.bottom + 4.0f, area.right, area.bottom};
  if (data.answer && data.answer->around) {
    GroundMap(ui, frame, shared, data).draw();
    draw_legend(ui, legend, shared);
    return;
  }
  ui.canvas().fill(frame, theme.panel, 12.0f);
  ui::dotted(ui.canvas(), frame.inset(1.0f), theme.second_ink, 2.0f);
  const char* const words = !data.answer                ? "Looking at the disk"
                            : data.question.way.empty() ? "Position unknown. Set it under Here."
                                                        : "The ground cannot be shown here.";
  ui.paragraph({frame.center().x, frame.center().y}, frame.width() - 48.0f, 30.0f,
               words::say(words), Face::Text, theme.ink, Align::Center);
}

}  // namespace mastwise::screens::import
