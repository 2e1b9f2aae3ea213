#include "app/parking/draw_sectors.hpp"

#include "app/ui/rig_symbol.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Theme;
using ui::Ui;
using words::fill;
using words::say;

constexpr float kLabelLine = 30.0f, kLabelGap = 8.0f, kLabelOut = 26.0f, kBand = 13.0f;
constexpr float kSideRoom = 136.0f, kEndRoom = 70.0f;

// Words beside the ring, at the middle of their arc.
struct ArcLabel {
  double middle_deg = 0.0;
  std::vector<std::string> lines = {};
  bool free = false;
  float top = 0.0f;  // of its first line
  float height() const { return kLabelLine * static_cast<float>(lines.size()); }
};

double middle_deg(const HeadingArc& arc) {
  return fold_circle_deg(arc.from.degrees() + arc.length_deg / 2.0);
}

std::string nose_words(const Shared& shared, const ParkingState& parking) {
  if (parking.neighbors == Neighbors::none || parking.answer->rows[*parking.row].sectors.empty()) {
    return say("Any nose heading will do.");
  }
  if (parking.noses.empty()) {
    return say("At any nose heading a neighbor is in the way. Look for a pad with a free side.");
  }
  std::string ranges = arc_words(shared, parking.noses.front());
  if (parking.noses.size() > 1) {
    ranges = fill(say("{one}, or {other}"),
                  {{"one", ranges}, {"other", arc_words(shared, parking.noses[1])}});
  }
  if (shared.findings.nose && !parking.right_blocks && !parking.left_blocks) {
    return fill(say("The nose is right: neighbors stand outside. Good from {ranges}."),
                {{"ranges", ranges}});
  }
  return fill(say("Nose from {ranges} keeps neighbors outside."), {{"ranges", ranges}});
}

constexpr float kCaptionLine = 32.0f;

const char* degrees_words(const Shared& shared) {
  return shared.findings.field ? say("Degrees are magnetic; true north is up")
                               : say("Degrees are true");
}

// Its letters grow as long as that leaves the ring its room.
float caption_share(const Canvas& canvas) {
  constexpr float kMost = 1.15f;
  return canvas.letters() <= kMost ? 1.0f : canvas.usual_share(Face::Text);
}

// Of the room's height.
float caption_height(Ui& ui, float width, const Shared& shared, const ParkingState& parking) {
  constexpr float kLeast = 140.0f;
  const float share = caption_share(ui.canvas());
  float height = 44.0f;
  const auto add = [&](std::string_view words, Face face) {
    height += ui.line(kCaptionLine, face, share) *
              static_cast<float>(ui.wrapped(words, width / share, face).size());
  };
  add(say("Keep the colored sectors clear."), Face::TextBold);
  add(nose_words(shared, parking), Face::Text);
  add(degrees_words(shared), Face::Text);
  return std::max(kLeast, height - kCaptionLine);
}

class SectorPainter {
 public:
  SectorPainter(Ui& ui, Rect room, const Shared& shared, const ParkingState& parking)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        room_{room.left, room.top, room.right,
              room.bottom - caption_height(ui, room.width(), shared, parking)},
        shared_(shared),
        parking_(parking),
        center_(room_.center()),
        radius_(std::min(room_.width() / 2.0f - kSideRoom, room_.height() / 2.0f - kEndRoom)) {}

  void draw();

 private:
  Point at(double bearing_deg, float radius) const {
    return ui::around(center_, radius, bearing_deg);
  }
  void band(const HeadingArc& arc, float radius, Color color, float width) const {
    const auto from = static_cast<float>(arc.from.degrees());
    canvas_.arc(center_, radius, from, from + static_cast<float>(arc.length_deg), color, width);
  }
  void ring() const;
  void sector(const KeptSector& sector) const;
  void free_sector(const HeadingArc& arc) const;
  void rigs() const;
  void labels() const;
  void caption() const;
  ArcLabel label(const KeptSector& sector) const;
  void place(std::vector<ArcLabel>& side) const;
  void write(const ArcLabel& label) const;

  Ui& ui_;
  Canvas& canvas_;
  const Theme& theme_;
  Rect room_;
  const Shared& shared_;
  const ParkingState& parking_;
  Point center_;
  float radius_;
};

void SectorPainter::ring() const {
  const std::array<const char*, 4> cardinals{say("N"), say("E"), say("S"), say("W")};
  canvas_.circle(center_, radius_, theme_.rule, 2.0f);
  for (int degrees = 0; degrees < 360; degrees += 10) {
    const bool cardinal = degrees % 90 == 0, hour = degrees % 30 == 0;
    const float length = cardinal ? 18.0f : hour ? 12.0f : 6.0f;
    canvas_.line(at(degrees, radius_ - 2.0f - length), at(degrees, radius_ - 2.0f), theme_.ink,
                 hour ? 3.0f : 1.5f);
    constexpr float kLeastForLetters = 58.0f;
    if (!cardinal || radius_ < kLeastForLetters) continue;
    const Point middle = at(degrees, radius_ - 34.0f);
    canvas_.text({middle.x, middle.y + 8.5f}, cardinals[static_cast<std::size_t>(degrees / 90)],
                 Face::TextBold, theme_.ink, Align::Center, canvas_.usual_share(Face::TextBold));
  }
}

void SectorPainter::sector(const KeptSector& sector) const {
  constexpr double kStep_deg = 2.0;
  std::vector<Point> outline;
  const int steps = std::max(1, static_cast<int>(std::ceil(sector.arc.length_deg / kStep_deg)));
  for (int i = 0; i <= steps; ++i) {
    outline.push_back(at(sector.arc.from.degrees() + sector.arc.length_deg * i / steps, radius_));
  }
  outline.push_back(center_);
  canvas_.fan(center_, outline, theme_.lobe);
  for (const SectorStation& station : sector.stations) {
    canvas_.line(center_, at(station.bearing.degrees(), radius_), theme_.accent, 3.0f);
  }
  band(sector.arc, radius_ + 3.0f + kBand / 2.0f, theme_.accent, kBand);
}

// A thin arc with stops at its ends.
void SectorPainter::free_sector(const HeadingArc& arc) const {
  constexpr float kEnd = 8.0f;
  const float radius = radius_ + 3.0f + kBand / 2.0f;
  band(arc, radius, theme_.second_ink, 2.0f);
  for (const double end_deg :
       {arc.from.degrees() + 1.0, arc.from.degrees() + arc.length_deg - 1.0}) {
    canvas_.line(at(end_deg, radius - kEnd), at(end_deg, radius + kEnd), theme_.second_ink, 2.0f);
  }
}

void SectorPainter::rigs() const {
  constexpr float kLength = 165.0f;  // of the symbol at scale 1
  constexpr float kShare = 0.4f, kBeside = 8.0f / 9.0f, kNoses = 0.62f;
  const float scale = kShare * radius_ / kLength;
  for (const HeadingArc& arc : parking_.noses) {
    if (!arc.all_round()) band(arc, kNoses * radius_, theme_.ink, 7.0f);
  }
  if (!parking_.drawn) {
    ui::draw_rig(canvas_, theme_, center_, std::nullopt, scale);
    return;
  }
  const Bearing<True> nose = parking_.drawn->nose();
  const Turn turned = nose - Bearing<True>::degrees(0.0);
  const auto neighbor = [&](double side_deg, bool blocks) {
    Theme theme = theme_;
    theme.ink = blocks ? theme_.warning : theme_.second_ink;
    const Point middle = at(nose.degrees() + side_deg, kBeside * kShare * radius_);
    ui::draw_rig(canvas_, theme, middle, turned, 0.8f * scale);
    if (!blocks) return;
    // Struck out, so that the color does not tell it alone.
    const float reach = 0.36f * kShare * radius_;
    for (const double off_deg : {30.0, 150.0, 210.0, 330.0}) {
      canvas_.line(middle, ui::around(middle, reach, nose.degrees() + off_deg), theme_.warning,
                   5.0f);
    }
  };
  if (on_right(parking_.neighbors)) neighbor(90.0, parking_.right_blocks);
  if (on_left(parking_.neighbors)) neighbor(-90.0, parking_.left_blocks);
  ui::draw_rig(canvas_, theme_, center_, turned, scale);
}

// The networks of a sector, then where it lies.
ArcLabel SectorPainter::label(const KeptSector& sector) const {
  constexpr std::size_t kMost = 3;
  std::vector<std::string> names;
  for (const SectorStation& station : sector.stations) {
    const std::string& name = station.carries.empty() ? station.title : station.carries;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  if (names.size() > kMost) {
    const std::size_t more = names.size() - kMost + 1;
    names.resize(kMost - 1);
    names.push_back(fill(say("{number} more"), {{"number", std::to_string(more)}}));
  }
  names.push_back(arc_words(shared_, sector.arc));
  return {.middle_deg = middle_deg(sector.arc), .lines = std::move(names)};
}

// Where each label would like to be, and then apart from the one above and within the room.
void SectorPainter::place(std::vector<ArcLabel>& side) const {
  for (ArcLabel& label : side) {
    const double up = std::cos(label.middle_deg * std::numbers::pi / 180.0);
    const float middle = at(label.middle_deg, radius_ + kLabelOut).y;
    // At the top a label ends at its arc, at the bottom it begins there.
    label.top = middle - label.height() * static_cast<float>(0.5 + 0.5 * up);
  }
  std::sort(side.begin(), side.end(),
            [](const ArcLabel& a, const ArcLabel& b) { return a.top < b.top; });
  float free_from = room_.top;
  for (ArcLabel& label : side) {
    label.top = std::max(label.top, free_from);
    free_from = label.top + label.height() + kLabelGap;
  }
  float free_to = room_.bottom;
  for (auto label = side.rbegin(); label != side.rend(); ++label) {
    label->top = std::min(label->top, free_to - label->height());
    free_to = label->top - kLabelGap;
  }
}

void SectorPainter::write(const ArcLabel& label) const {
  const bool right = label.middle_deg < 180.0;
  // Beside the ring at this height, as it may have been moved.
  const float nearest = std::clamp(center_.y, label.top, label.top + label.height());
  const float off = std::fabs(nearest - center_.y), out = radius_ + kLabelOut;
  const float half = off < out ? std::sqrt(out * out - off * off) : 0.0f;
  const float x = center_.x + (right ? half + 4.0f : -half - 4.0f);
  const float width = right ? room_.right - x : x - room_.left;
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    const bool last = i + 1 == label.lines.size();
    const Face face = last ? Face::Text : Face::TextBold;
    const Point point{x, label.top + kLabelLine * static_cast<float>(i) + 23.0f};
    ui::text_within(canvas_, point, width, label.lines[i], face,
                    last || label.free ? theme_.second_ink : theme_.ink,
                    right ? Align::Left : Align::Right);
  }
}

void SectorPainter::labels() const {
  std::vector<ArcLabel> right, left;
  const auto add = [&](ArcLabel label) {
    (label.middle_deg < 180.0 ? right : left).push_back(std::move(label));
  };
  for (const KeptSector& sector : parking_.answer->rows[*parking_.row].sectors) add(label(sector));
  if (!parking_.free.empty() && !parking_.free.front().all_round()) {
    const HeadingArc& widest = parking_.free.front();
    add({.middle_deg = middle_deg(widest),
         .lines = {say("Free"), arc_words(shared_, widest)},
         .free = true});
  }
  for (std::vector<ArcLabel>* side : {&right, &left}) {
    place(*side);
    for (const ArcLabel& label : *side) write(label);
  }
}

// What the picture shows.
void SectorPainter::caption() const {
  const float share = caption_share(canvas_);
  float y = room_.bottom + 30.0f;
  const auto write = [&](std::string_view words, Face face, Color color) {
    y = ui_.paragraph({center_.x, y}, room_.width(), kCaptionLine, words, face, color,
                      Align::Center, share);
  };
  write(say("Keep the colored sectors clear."), Face::TextBold, theme_.ink);
  write(nose_words(shared_, parking_), Face::Text, theme_.ink);
  write(degrees_words(shared_), Face::Text, theme_.second_ink);
}

void SectorPainter::draw() {
  canvas_.disc(center_, radius_, theme_.panel);
  const auto& sectors = parking_.answer->rows[*parking_.row].sectors;
  for (const KeptSector& one : sectors) sector(one);
  if (!sectors.empty() && !parking_.free.empty()) free_sector(parking_.free.front());
  ring();
  rigs();
  labels();
  if (!sectors.empty()) caption();
}

}  // namespace

std::string arc_words(const Shared& shared, const HeadingArc& arc) {
  const auto words = [&](Bearing<True> bearing) {
    const auto magnetic = on_compass_here(shared, bearing);
    return magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(bearing);
  };
  return fill(say("{from} to {to}"),
              {{"from", words(arc.from)},
               {"to", words(Bearing<True>::degrees(arc.from.degrees() + arc.length_deg))}});
}

void draw_sectors(Ui& ui, Rect room, const Shared& shared, const ParkingState& parking) {
  SectorPainter(ui, room, shared, parking).draw();
}

}  // namespace mastwise::screens
