#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

// The sheet for the deviation card of a heading sensor on the rig.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Column;
using ui::Face;
using words::fill;
using words::say;

struct CardHere {
  const DeviationCard& card;
  double horizontal_nt;
  UtcTime now;

  double deviation_deg(double read_deg) const {
    return card.deviation(Bearing<Magnetic>::degrees(read_deg)).clockwise_deg();
  }
  double sigma_deg(double read_deg) const {
    return deviation_sigma_deg(card, Bearing<Magnetic>::degrees(read_deg), horizontal_nt, now);
  }
};

std::optional<CardHere> card_here(const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.deviation_card) return std::nullopt;
  return CardHere{*found.deviation_card,
                  found.field ? found.field->horizontal_nt : found.deviation_card->horizontal_nt,
                  found.date};
}

void on_rig_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  canvas.outline({c.x - 26.0f, c.y - 12.0f, c.x + 26.0f, c.y + 12.0f}, color, 3.0f, 5.0f);
  canvas.disc({c.x + 14.0f, c.y}, 5.0f, color);
}

void on_antenna_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  canvas.line({c.x - 24.0f, c.y}, {c.x + 24.0f, c.y}, color, 3.0f);
  for (const float at : {-18.0f, -4.0f, 10.0f}) {
    canvas.line({c.x + at, c.y - 13.0f}, {c.x + at, c.y + 13.0f}, color, 3.0f);
  }
  canvas.disc({c.x + 19.0f, c.y}, 5.0f, color);
}

void draw_mount(Column& column, Ui& ui, Rect room, const Shared& shared) {
  column.heading(say("The sensor is fixed to"));
  const std::array options{ui::Option{"rig", say("The rig"), on_rig_picture},
                           ui::Option{"antenna", say("The antenna"), on_antenna_picture}};
  constexpr float kHeight = 104.0f;
  const auto& mount = shared.settings.sensor_mount;
  const float top = column.bottom() + Column::kGap;
  const auto touched =
      ui::segmented(ui, "mount", {room.left, top, room.right, top + kHeight}, options,
                    mount ? std::optional(static_cast<std::size_t>(*mount)) : std::nullopt);
  if (touched) ui.emit(act::ChooseSetting{"sensor_mount", options[*touched].key});
  column.space(Column::kGap + kHeight);
}

void draw_state(Column& column, const Shared& shared) {
  const auto& mount = shared.settings.sensor_mount;
  if (mount == SensorMount::Antenna) {
    column.line(say("On the antenna every turn has another deviation: no card can hold."));
    return;
  }
  const auto card = card_here(shared);
  const auto state =
      card ? state_of(card->card, card->horizontal_nt, card->now) : CardState::learning;
  switch (state) {
    case CardState::learning:
      column.plain(say("Not used yet: too little of the circle."), Face::TextBold);
      break;
    case CardState::holds:
      mount ? column.plain(say("It corrects the sensor."), Face::TextBold)
            : column.warning(say("Ready. Say what the sensor is fixed to."));
      break;
    case CardState::too_far:
      column.warning(say("Not used: it was learned where the earth's field differs too much."));
      break;
    case CardState::too_old:
      column.warning(say("Not used: it is too old."));
      break;
  }
  column.line(fill(say("{seen} of 8 parts of the circle, {count} straight stretches."),
                   {{"seen", std::to_string(card ? card->card.eighths_seen() : 0)},
                    {"count", std::to_string(shared.settings.sensor_stretches.size())}}));
  if (card && card->card.left_out > 0) {
    column.line(fill(say("{count} left out: steel beside the road."),
                     {{"count", std::to_string(card->card.left_out)}}));
  }
  const std::string speed = shared.settings.miles ? "25 mph" : "40 km/h";
  column.line(fill(say("It learns while you drive straight for 20 s at {speed} or more. A loop "
                       "around a town shows every direction."),
                   {{"speed", speed}}));
}

// The curve over the circle, with its error and the stretches.
void draw_curve(Ui& ui, Rect room, const CardHere& here,
                const std::vector<DrivenStretch>& stretches) {
  const ui::Theme& theme = ui.theme();
  Canvas& canvas = ui.canvas();
  constexpr int kStep_deg = 5;
  const double middle_deg = here.card.terms_deg[0];
  const auto off_middle = [&](double deviation_deg) {
    return Turn::clockwise_deg(deviation_deg - middle_deg).clockwise_deg();
  };
  double reach_deg = 2.0;
  for (int read = 0; read < 360; read += kStep_deg) {
    reach_deg =
        std::max(reach_deg, std::fabs(off_middle(here.deviation_deg(read))) + here.sigma_deg(read));
  }
  const auto at = [&](double read_deg, double off_deg) {
    const double up = std::clamp(off_deg / reach_deg, -1.0, 1.0);
    return Point{room.left + static_cast<float>(read_deg / 360.0) * room.width(),
                 room.center().y - static_cast<float>(up) * 0.5f * room.height()};
  };
  canvas.fill(room, theme.panel);
  std::vector<Point> curve;
  for (int read = 0; read <= 360; read += kStep_deg) {
    const double off_deg = off_middle(here.deviation_deg(read));
    curve.push_back(at(read, off_deg));
    if (read == 360) break;
    const double next_deg = off_middle(here.deviation_deg(read + kStep_deg));
    const double sigma_deg = here.sigma_deg(read),
                 next_sigma_deg = here.sigma_deg(read + kStep_deg);
    const std::array band{
        at(read, off_deg + sigma_deg), at(read + kStep_deg, next_deg + next_sigma_deg),
        at(read + kStep_deg, next_deg - next_sigma_deg), at(read, off_deg - sigma_deg)};
    canvas.solid(band, theme.lobe);
  }
  canvas.line(at(0.0, -middle_deg), at(360.0, -middle_deg), theme.second_ink, 2.0f);
  for (int side = 0; side <= 4; ++side) {
    const Point foot = at(90.0 * side, -reach_deg);
    canvas.line({foot.x, room.top}, foot, theme.rule, 1.5f);
    canvas.text({std::clamp(foot.x, room.left + 12.0f, room.right - 12.0f), room.bottom + 28.0f},
                words::octant(Bearing<True>::degrees(90.0 * side)), Face::Text, theme.second_ink,
                Align::Center);
  }
  for (const DrivenStretch& one : stretches) {
    canvas.disc(at(one.read.degrees(), off_middle(one.deviation_deg)), 4.0f, theme.second_ink);
  }
  canvas.polyline(curve, theme.ink, 4.0f);
  canvas.outline(room, theme.rule, 2.0f);
}

// East adds to the reading, west subtracts.
void draw_table(Column& column, const CardHere& here) {
  for (int eighth = 0; eighth < 8; ++eighth) {
    const double read_deg = 45.0 * eighth;
    column.pair(fmt::format("{} {}", words::octant(Bearing<True>::degrees(read_deg)),
                            words::whole_degrees(read_deg)),
                fmt::format("{} ± {:.1f}°",
                            words::declination(Declination::east_deg(here.deviation_deg(read_deg))),
                            here.sigma_deg(read_deg)));
  }
  std::string terms;
  for (std::size_t i = 0; i < DeviationCard::kTerms; ++i) {
    // Tenths; adding 0 leaves no minus before a zero.
    const double tenths = std::round(10.0 * here.card.terms_deg[i]) / 10.0 + 0.0;
    terms += fmt::format("{}{} {:+.1f}°", i == 0 ? "" : ", ", static_cast<char>('A' + i), tenths);
  }
  column.line(terms);
}

}  // namespace

void draw_sensor_sheet(Ui& ui, const Shared& shared) {
  const Rect view = ui::draw_sheet_head(ui, say("Deviation card"), Sheet::Nose);
  Rect page = view;
  page.top = ui.begin_page("sensor", view);
  auto [first, second] = ui::halves(ui, page);
  Column left(ui, first);
  draw_mount(left, ui, first, shared);
  draw_state(left, shared);
  if (left.button("forget stretches", say("Delete the card"), 0, 1,
                  !shared.settings.sensor_stretches.empty())) {
    ui.emit(act::ForgetStretches{});
  }
  if (ui.portrait()) {
    left.rule();
    second.top = left.bottom();
  }
  Column right(ui, second);
  right.heading(say("What to add to the sensor's reading"));
  if (const auto card = card_here(shared)) {
    constexpr float kHigh = 190.0f, kLabels = 40.0f;
    const float top = right.bottom() + 16.0f;
    draw_curve(ui, {second.left, top, second.right, top + kHigh}, *card,
               shared.settings.sensor_stretches);
    right.space(16.0f + kHigh + kLabels);
    draw_table(right, *card);
    right.line(say("East adds, west subtracts. One sigma of the fit, the place and the age."),
               Face::Fine);
  } else {
    right.line(
        say("Nothing to show yet: the card begins with 8 straight stretches in several "
            "directions."));
  }
  ui.end_page("sensor", page.top, std::max(left.bottom(), right.bottom()) + 24.0f);
}

}  // namespace mastwise::screens
