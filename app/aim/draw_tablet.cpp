#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/standing_choice.hpp"
#include "app/words/language.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/motion/enough.hpp"

#include <array>
#include <cmath>
#include <string>

#include <fmt/format.h>

// The sheet for the tablet's own compass: what it says, why it may not, and how it learns.
namespace mastwise::screens {
namespace {

using motion::TabletState;
using ui::Column;
using ui::Face;
using words::fill;
using words::say;

std::string degrees(double value) {
  return fmt::format("{:.0f}", value);
}

// Why there is nothing to show yet; empty when the sensors speak and the field here is known.
std::string no_sensors(const Shared& shared) {
  const Link& link = shared.tablet_link;
  if (link.state == Link::State::Lost)
    return say("This tablet has no motion sensor that can be read.");
  using Kind = motion::Sample::Kind;
  const bool level = shared.tablet.mean(Kind::acceleration, shared.now).has_value();
  if (!level) return say("Waiting for the tablet's sensors.");
  if (!shared.tablet.mean(Kind::field, shared.now)) {
    return say("This tablet has no magnetometer that can be read.");
  }
  if (!shared.findings.field) return say("Set the position first.");
  return {};
}

// How many directions of the field were seen, as so many strokes.
void draw_seen(Ui& ui, Rect row, std::size_t seen) {
  const float step = row.width() / static_cast<float>(motion::kPatches);
  for (std::size_t i = 0; i < motion::kPatches; ++i) {
    const float left = row.left + static_cast<float>(i) * step;
    const Rect one{left + 2.0f, row.top, left + step - 2.0f, row.bottom};
    if (i < seen) {
      ui.canvas().fill(one, ui.theme().ink);
    } else {
      ui.canvas().outline(one, ui.theme().rule, 2.0f);
    }
  }
}

// A turn by this much, clockwise, with its arrow.
void turn_arrow(Ui& ui, ui::Point center, float radius, float from_deg, float to_deg) {
  constexpr float kWide = 5.0f, kHead = 11.0f;
  ui::Canvas& canvas = ui.canvas();
  canvas.arc(center, radius, from_deg, to_deg, ui.theme().accent, kWide);
  constexpr float kLong_deg = 103.0f;  // of a head 1.8 times as long as wide, at radius one
  const float neck_deg = to_deg + kLong_deg * kHead / radius;
  const std::array head{ui::around(center, radius, neck_deg),
                        ui::around(center, radius - kHead, to_deg),
                        ui::around(center, radius + kHead, to_deg)};
  canvas.polygon(head, ui.theme().accent);
}

// From above: a person turns once around with the tablet before them.
void draw_turn(Ui& ui, ui::Point center) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Color ink = ui.theme().ink;
  canvas.disc(center, 15.0f, ink);
  for (const float side : {-1.0f, 1.0f}) {
    const ui::Point shoulder{center.x + side * 24.0f, center.y + 2.0f};
    canvas.line(center, shoulder, ink, 12.0f);
    canvas.line(shoulder, {center.x + side * 16.0f, center.y - 44.0f}, ink, 5.0f);
  }
  canvas.line({center.x - 30.0f, center.y - 46.0f}, {center.x + 30.0f, center.y - 46.0f}, ink,
              9.0f);
  turn_arrow(ui, center, 76.0f, 24.0f, 318.0f);
}

// The tablet itself, tumbled.
void draw_tumble(Ui& ui, ui::Point center) {
  constexpr float kHalfWide = 50.0f, kHalfHigh = 31.0f;
  const auto tablet = [&](double turned_deg, ui::Color color, float width) {
    const auto corner = [&](float x, float y) {
      return ui::around(ui::around(center, x, turned_deg + 90.0), y, turned_deg);
    };
    const std::array corners{corner(-kHalfWide, -kHalfHigh), corner(kHalfWide, -kHalfHigh),
                             corner(kHalfWide, kHalfHigh), corner(-kHalfWide, kHalfHigh)};
    ui.canvas().polyline(corners, color, width, true);
  };
  tablet(64.0, ui.theme().rule, 3.0f);
  tablet(32.0, ui.theme().rule, 3.0f);
  tablet(0.0, ui.theme().ink, 5.0f);
  turn_arrow(ui, center, 76.0f, -50.0f, 38.0f);
  turn_arrow(ui, center, 76.0f, 130.0f, 218.0f);
}

// How it learns, drawn.
void draw_turn_and_tumble(Column& column, Ui& ui, Rect room) {
  constexpr float kHigh = 200.0f;
  const float y = column.bottom() + 0.5f * kHigh;
  draw_turn(ui, {room.left + 0.27f * room.width(), y});
  draw_tumble(ui, {room.left + 0.73f * room.width(), y});
  column.space(kHigh);
}

void draw_learning(Column& column, Ui& ui, Rect room, const Shared& shared) {
  constexpr float kHigh = 28.0f;
  column.plain(
      say("Walk well clear of steel. Turn once around yourself while you tumble the "
          "tablet every way, for a minute."));
  const auto& fit = shared.tablet_iron.fit;
  const float top = column.bottom() + Column::kGap;
  draw_seen(ui, {room.left, top, room.right, top + kHigh}, fit ? fit->patches : 0);
  column.space(Column::kGap + kHigh + 8.0f);
  column.line(fill(say("{seen} of {all} directions seen; {needed} are enough."),
                   {{"seen", std::to_string(fit ? fit->patches : 0)},
                    {"all", std::to_string(motion::kPatches)},
                    {"needed", std::to_string(motion::kPatchesNeeded)}}));
}

// The heading, or why there is none and what to do.
void draw_answer(Column& column, Ui& ui, Rect room, const Shared& shared) {
  const motion::TabletReading& tablet = shared.findings.tablet;
  const MagneticField& here = *shared.findings.field;
  switch (tablet.state) {
    case TabletState::silent:
      return column.line(say("Waiting for the tablet's sensors."));
    case TabletState::learning:
      return draw_learning(column, ui, room, shared);
    case TabletState::moving:
      return column.plain(say("Hold it still."), Face::TextBold);
    case TabletState::flat:
      return column.plain(say("Hold it up before you, as to take a picture."), Face::TextBold);
    case TabletState::field_weak:
      return column.warning(say("No compass works here: the earth's field is too weak."));
    case TabletState::strength_off:
      return column.warning(
          fill(say("No heading: the field is {measured}, and {model} is right here. Walk away from "
                   "steel."),
               {{"measured", words::field_strength(tablet.strength_nt)},
                {"model", words::field_strength(here.total_nt)}}));
    case TabletState::dip_off:
      return column.warning(
          fill(say("No heading: the field dips {measured}°, and {model}° is right here. Walk away "
                   "from steel."),
               {{"measured", degrees(tablet.dip_deg)}, {"model", degrees(here.inclination_deg)}}));
    case TabletState::holds:
      break;
  }
  if (!tablet.heading) return;
  column.figure(
      fill(say("{degrees} magnetic"), {{"degrees", words::whole_degrees(*tablet.heading)}}));
  column.line(fill(say("± {degrees}° by the tablet alone."),
                   {{"degrees", fmt::format("{:.1f}", tablet.sigma_deg)}}));
}

void draw_field(Column& column, const Shared& shared) {
  const motion::TabletReading& tablet = shared.findings.tablet;
  const MagneticField& here = *shared.findings.field;
  column.heading(say("The field, measured and by the model"));
  column.pair(say("Strength"), fill(say("{measured}, model {model}"),
                                    {{"measured", words::field_strength(tablet.strength_nt)},
                                     {"model", words::field_strength(here.total_nt)}}));
  column.pair(say("Dip"), fill(say("{measured}, model {model}"),
                               {{"measured", degrees(tablet.dip_deg) + "°"},
                                {"model", degrees(here.inclination_deg) + "°"}}));
  column.line(
      fill(say("Beyond {percent} % or {degrees}° it gives no heading. Steel to the east or west "
               "passes both, so where you stand counts, too."),
           {{"percent", degrees(100.0 * motion::kStrength)},
            {"degrees", degrees(motion::kDip_deg)}}),
      Face::Fine);
}

void draw_standing(Column& column, Ui& ui, Rect room, const Shared& shared) {
  column.heading(say("Where do you hold it?"));
  const bool miles = shared.settings.miles;
  const float top = column.bottom() + Column::kGap;
  const float height = ui::standing_choice_height(ui, room.width(), miles);
  const auto touched = ui::standing_choice(ui, "hold", {room.left, top, room.right, top + height},
                                           miles, shared.stop.standing);
  if (touched) ui.emit(act::StandAt{*touched});
  column.space(Column::kGap + height);
  const auto& standing = shared.stop.standing;
  if (!standing) {
    column.plain(say("Say where, or the dial does not follow it."));
  } else if (refuses_compass(*standing)) {
    column.warning(say("Not used there: the rig's steel turns it."));
  }
}

void draw_acts(Column& column, Ui& ui, const Shared& shared) {
  const bool in_use = shared.settings.pointing == PointingMethod::tablet_magnetometer;
  if (in_use) {
    column.line(say("The way you point: on Aim the dial follows the tablet."));
  } else if (column.button("use tablet", say("Point by the tablet"), 0, 1, true,
                           ui::ButtonLook::Filled)) {
    ui.emit(act::ChoosePointing{PointingMethod::tablet_magnetometer});
  }
  if (column.button("forget tablet", say("Learn it anew"), 0, 1)) {
    ui.emit(act::ForgetTablet{});
  }
}

}  // namespace

void draw_tablet_sheet(Ui& ui, const Shared& shared) {
  const Rect view = draw_sheet_head(ui, say("The tablet as a compass"), Sheet::Ways);
  Rect page = view;
  page.top = ui.begin_page("tablet", view);
  auto [first, second] = ui::halves(ui, page);
  Column left(ui, first);
  const std::string missing = no_sensors(shared);
  if (missing.empty()) {
    draw_answer(left, ui, first, shared);
  } else {
    left.plain(missing, Face::TextBold);
    left.line(say("Use a compass in the hand, or another way."));
  }
  left.rule();
  draw_standing(left, ui, first, shared);
  if (ui.portrait()) {
    left.rule();
    second.top = left.bottom();
  }
  Column right(ui, second);
  const bool learns = shared.findings.tablet.state == TabletState::learning;
  if (missing.empty() && learns) draw_turn_and_tumble(right, ui, second);
  if (missing.empty() && !learns) draw_field(right, shared);
  if (!shared.settings.tablet_points.empty()) draw_acts(right, ui, shared);
  ui.end_page("tablet", page.top, std::max(left.bottom(), right.bottom()) + 24.0f);
}

}  // namespace mastwise::screens
