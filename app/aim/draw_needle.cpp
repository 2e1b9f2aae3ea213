#include "app/aim/draw.hpp"
#include "app/aim/draw_globe.hpp"
#include "app/shared/actions.hpp"
#include "app/shared/stored_names.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

// The sheet for the needle of a compass: how the field dips, what the needle was made for, how to
// hold it, and where no compass works.
namespace mastwise::screens {
namespace {

using ui::Canvas;
using ui::Color;
using ui::Column;
using ui::Face;
using words::fill;
using words::say;

constexpr float kNeedleStroke = 3.0f;

// A compass from the side, its needle on the pivot.
void compass_from_side(Canvas& canvas, Point pivot, float tilt_deg, float needle_deg, Color color) {
  constexpr float kHalf = 74.0f, kHigh = 30.0f, kNeedle = 62.0f;
  const auto turned = [&](float x, float y, float degrees) {
    const float angle = degrees * 3.14159265f / 180.0f;
    return Point{pivot.x + x * std::cos(angle) - y * std::sin(angle),
                 pivot.y + x * std::sin(angle) + y * std::cos(angle)};
  };
  const std::array housing{
      turned(-kHalf, -kHigh / 2.0f, tilt_deg), turned(kHalf, -kHigh / 2.0f, tilt_deg),
      turned(kHalf, kHigh / 2.0f, tilt_deg), turned(-kHalf, kHigh / 2.0f, tilt_deg)};
  canvas.polyline(housing, color, kNeedleStroke, true);
  canvas.line(turned(0.0f, kHigh / 2.0f, tilt_deg), pivot, color, kNeedleStroke);
  canvas.line(turned(-kNeedle, 0.0f, needle_deg), turned(kNeedle, 0.0f, needle_deg), color, 5.0f);
}

// A needle that touches the level housing, and the housing tilted until the needle is free.
float draw_holding(Ui& ui, Rect area, float y) {
  constexpr float kHigh = 96.0f, kTilt_deg = 13.0f;
  const Point first{area.left + 0.25f * area.width(), y + kHigh / 2.0f};
  const Point second{area.left + 0.75f * area.width(), first.y};
  compass_from_side(ui.canvas(), first, 0.0f, kTilt_deg, ui.theme().warning);
  compass_from_side(ui.canvas(), second, kTilt_deg, kTilt_deg, ui.theme().ink);
  const float middle = area.center().x;
  ui.canvas().line({middle - 16.0f, first.y}, {middle + 8.0f, first.y}, ui.theme().second_ink,
                   kNeedleStroke);
  const std::array head{Point{middle + 18.0f, first.y}, Point{middle + 6.0f, first.y - 7.0f},
                        Point{middle + 6.0f, first.y + 7.0f}};
  ui.canvas().polygon(head, ui.theme().second_ink);
  return y + kHigh;
}

const char* zone_label(NeedleZone zone) {
  switch (zone) {
    case NeedleZone::northern:
      return say("Northern");
    case NeedleZone::equator:
      return say("Equator");
    case NeedleZone::southern:
      return say("Southern");
    case NeedleZone::anywhere:
      return say("Any");
  }
  return "";
}

void draw_made_for(Column& column, Ui& ui, Rect room, const Shared& shared) {
  column.heading(say("For which zone was your needle made?"));
  std::vector<ui::Option> options;
  for (const NeedleZone zone : kNeedleZones) {
    options.push_back(
        {std::string(kStoredNames<NeedleZone>[static_cast<std::size_t>(zone)]), zone_label(zone)});
  }
  const auto& made_for = shared.settings.needle;
  const float top = column.bottom() + Column::kGap;
  const auto touched =
      ui::segmented(ui, "made for", {room.left, top, room.right, top + Column::kButton}, options,
                    made_for ? std::optional(static_cast<std::size_t>(*made_for)) : std::nullopt);
  if (touched) ui.emit(act::ChooseSetting{"needle", options[*touched].key});
  column.space(Column::kGap + Column::kButton);
  column.line(
      made_for
          ? say("The compass or its box says so.")
          : say("The compass or its box says so. Until you choose, the northern zone counts."));
}

void draw_weak_zones(Column& column, Ui& ui, Rect room, const Shared& shared, const AimState& aim) {
  column.heading(say("Where no compass works"));
  const auto& field = shared.findings.field;
  const auto& position = shared.findings.position;
  if (!field || !position || !aim.weak) {
    column.line(say("Set the position first."));
    return;
  }
  const float radius = std::min(190.0f, 0.42f * room.width());
  const float top = column.bottom() + 16.0f;
  draw_globe(ui, {room.center().x, top + radius}, radius, *position, aim.weak->around_poles);
  column.space(16.0f + 2.0f * radius + 16.0f);
  column.pair(say("Horizontal field here"), words::field_strength(field->horizontal_nt));
  column.line(
      say("Filled: below 2,000 nT no compass works. Ring around it: below 6,000 nT a compass is "
          "slow and may be wrong."));
  column.line(say("Both by the World Magnetic Model 2025."), Face::Fine);
}

}  // namespace

void draw_needle_sheet(Ui& ui, const Shared& shared, const AimState& aim) {
  const Rect view = draw_sheet_head(ui, say("The needle"), Sheet::Ways);
  Rect page = view;
  page.top = ui.begin_page("needle", view);
  auto [first, second] = ui::halves(ui, page);
  Column left(ui, first);
  if (const auto& field = shared.findings.field) {
    const auto& made_for = shared.settings.needle;
    const NeedleHere here = needle_here(made_for, field->inclination_deg);
    left.heading(say("The field here"));
    left.figure(words::sentence(words::dip(field->inclination_deg)));
    left.line(words::sentence(words::needle_zone(here.zone)));
    const std::string swing = words::needle_swing(made_for, here);
    here.swing == NeedleSwing::free ? left.plain(swing) : left.warning(swing);
    left.rule();
  }
  draw_made_for(left, ui, first, shared);
  left.rule();
  left.heading(say("How to hold it"));
  left.space(draw_holding(ui, first, left.bottom()) - left.bottom());
  left.plain(say(
      "Hold it level, away from phone and keys. If the needle touches, lower the edge below its "
      "low end until it swings free."));
  left.plain(say("Tap the housing and let the needle come to rest twice at the same number."));
  if (!ui.portrait()) {
    Column right(ui, second);
    draw_weak_zones(right, ui, second, shared, aim);
    ui.end_page("needle", page.top, std::max(left.bottom(), right.bottom()) + 24.0f);
    return;
  }
  left.rule();
  draw_weak_zones(left, ui, first, shared, aim);
  ui.end_page("needle", page.top, left.bottom() + 24.0f);
}

}  // namespace mastwise::screens
