#include "app/stations/draw_station_row.hpp"

#include "app/shared/actions.hpp"
#include "app/stations/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <array>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

// Where the columns of a row begin and end.
struct Columns {
  float name_end, channel_end, chance, chance_end, reason, reason_end;
};

// The baselines of its two lines.
float upper_line(const Rect& rect) {
  return rect.top + 0.43f * rect.height();
}
float lower_line(const Rect& rect) {
  return rect.top + 0.81f * rect.height();
}

constexpr float kPin = 76.0f, kNarrow = 500.0f;

Columns columns_of(const Rect& rect) {
  constexpr float kChannel = 128.0f, kChance = 176.0f, kGap = 24.0f, kWithReason = 720.0f;
  const float inner = rect.right - kPin - rect.left - 12.0f;
  if (inner < kNarrow) {
    // Without the large channel and the reason.
    constexpr float kNarrowChance = 150.0f;
    const float end = rect.right - kPin - 8.0f, chance = end - kNarrowChance;
    return {chance - 16.0f, chance - 16.0f, chance, end, end, end};
  }
  const bool with_reason = inner >= kWithReason;
  const float name = with_reason ? std::max(176.0f, 0.22f * inner)
                                 : std::min(300.0f, inner - kChannel - kChance - kGap - 40.0f);
  Columns columns{};
  columns.name_end = rect.left + 16.0f + name;
  columns.channel_end = columns.name_end + kChannel;
  columns.chance = columns.channel_end + kGap;
  columns.chance_end = columns.chance + kChance;
  columns.reason_end = rect.right - kPin - 8.0f;
  columns.reason = with_reason ? columns.chance_end + kGap : columns.reason_end;
  return columns;
}

// A nail over the ground, or driven in.
void draw_nail(Canvas& canvas, Point c, Color color, bool driven) {
  const float head = driven ? c.y - 6.0f : c.y - 20.0f;
  const std::array cap{Point{c.x - 10.0f, head}, Point{c.x + 10.0f, head},
                       Point{c.x + 7.0f, head + 10.0f}, Point{c.x - 7.0f, head + 10.0f}};
  const std::array shaft{Point{c.x - 3.5f, head + 10.0f}, Point{c.x + 3.5f, head + 10.0f},
                         Point{c.x, head + 32.0f}};
  if (driven) {
    canvas.polygon(cap, color);
    canvas.polygon(shaft, color);
  } else {
    canvas.polyline(cap, color, 2.5f, true);
    canvas.polyline(shaft, color, 2.5f, true);
  }
  const float ground = c.y + 14.0f;
  canvas.line({c.x - 18.0f, ground}, {c.x - 7.0f, ground}, color, 3.0f);
  canvas.line({c.x + 7.0f, ground}, {c.x + 18.0f, ground}, color, 3.0f);
}

// Pinned stations are in every turn plan of this stop, pinned networks in those of all stops.
void draw_pin(Ui& ui, Rect rect, const RowView& view, const Shared& shared) {
  const StationKey key = key_of(view.row.station);
  const std::string name = view.brings.empty()
                               ? "pin " + view.row.station.call_sign + " " + view.row.station.id
                               : "pin network " + view.brings;
  const bool pinned =
      view.brings.empty() ? is_pinned(shared.stop, key) : is_pinned(shared.settings, view.brings);
  if (ui.touchable(name, rect, true, "stations")) {
    ui.emit(view.brings.empty() ? Action(act::PinStation{key})
                                : Action(act::PinNetwork{view.brings}));
  }
  draw_nail(ui.canvas(), rect.center(), ui.theme().accent, pinned);
}

void draw_chance(Ui& ui, const Rect& rect, const Columns& columns,
                 const reception::Outlook& outlook) {
  const ui::Theme& theme = ui.theme();
  const std::string number = words::chance_number(outlook);
  const float baseline = rect.center().y - 2.0f;
  float x = columns.chance;
  if (!number.empty()) {
    ui.canvas().text({x, baseline}, number, Face::Cardinal, theme.ink);
    x += ui.canvas().text_width(number, Face::Cardinal) + 12.0f;
  }
  // Where the whole word has no room, the number and its segments say the same.
  const std::string word = words::chance_word(outlook);
  const float room = columns.reason - x;
  if (!outlook.chance_percent || ui.canvas().text_width(word, Face::Text) <= room) {
    ui::text_within(ui.canvas(), {x, baseline}, room, word, Face::Text, theme.ink);
  }
  if (!outlook.chance_percent) return;
  ui::draw_chance_mark(
      ui, {columns.chance, rect.center().y + 10.0f, columns.chance_end, rect.center().y + 26.0f},
      reception::chance_word(*outlook.chance_percent));
}

// Its own heading and distance, as a compass reads it where that is known.
void draw_heading(Ui& ui, Point at, float width, const reception::Outlook& outlook,
                  const Shared& shared) {
  const auto magnetic = on_compass_here(shared, outlook.bearing);
  const ui::Theme& theme = ui.theme();
  ui::kite(ui.canvas(), {at.x + 9.0f, at.y - 9.0f}, 11.0f, theme.ink, !magnetic);
  const std::string text =
      (magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(outlook.bearing)) + ", " +
      words::whole_distance(outlook.distance_m, shared.settings.miles);
  ui::text_within(ui.canvas(), {at.x + 26.0f, at.y}, width - 26.0f, text, Face::Text, theme.ink);
}

void draw_reason(Ui& ui, const Rect& rect, const Columns& columns, const RowView& view,
                 const Shared& shared) {
  const float width = columns.reason_end - columns.reason;
  if (width <= 0.0f || !view.row.outlook) return;
  Canvas& canvas = ui.canvas();
  const Color ink = ui.theme().ink;
  const float upper = upper_line(rect), lower = lower_line(rect);
  const auto say = [&](float y, const std::string& words) {
    ui::text_within(canvas, {columns.reason, y}, width, words, Face::Text, ink);
  };
  if (view.own_heading) draw_heading(ui, {columns.reason, upper}, width, *view.row.outlook, shared);
  if (view.row.reasons.empty()) return;
  const words::Brief brief = words::brief(view.row.reasons.front(), shared.settings.miles);
  if (view.own_heading) return say(lower, brief.what);
  if (!brief.cost.empty() && canvas.text_width(brief.what, Face::Text) <= width) {
    say(upper, brief.what);
    return say(lower, brief.cost);
  }
  const auto lines = ui.wrapped(brief.what, width, Face::Text);
  for (std::size_t i = 0; i < std::min<std::size_t>(lines.size(), 2); ++i) {
    say(i == 0 ? upper : lower, std::string(lines[i]));
  }
}

std::string virtual_channel(const Station& station) {
  return station.programs.empty() ? std::string() : station.programs.front().virtual_channel;
}

}  // namespace

void draw_station_row(Ui& ui, Rect rect, const RowView& view, const Shared& shared) {
  const Station& station = view.row.station;
  const std::string name = "station " + station.call_sign + " " + station.id;
  const Rect touched{rect.left, rect.top, rect.right - kPin, rect.bottom};
  if (ui.touchable(name, touched, true, "stations")) ui.emit(act::SelectStation{key_of(station)});
  Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const bool chosen = shared.stop.target && key_of(*shared.stop.target) == key_of(station);
  const bool lit = chosen || ui.pressed(name);
  if (lit) canvas.fill(touched.inset(3.0f), theme.lobe, 10.0f);
  // The lobe's color alone would not tell which row is the target.
  if (chosen) {
    canvas.fill({rect.left + 3.0f, rect.top + 12.0f, rect.left + 10.0f, rect.bottom - 12.0f},
                theme.ink, 3.0f);
  }
  const Columns columns = columns_of(rect);
  const float left = rect.left + 16.0f, room = columns.name_end - left;
  ui::text_within(canvas, {left, upper_line(rect)}, room, words::carries(station), Face::Value,
                  theme.ink);
  const std::string channel = virtual_channel(station);
  const bool narrow = columns.channel_end == columns.name_end;
  const std::string known =
      (narrow && !channel.empty() ? channel + " · " : std::string()) + station.call_sign;
  const std::string with_rf = known + " · RF " + to_text(station.rf_channel);
  // A narrow row has no room for both channels.
  const bool both = !narrow || canvas.text_width(with_rf, Face::Text) <= room;
  const std::string& sign = both ? with_rf : known;
  ui::text_within(canvas, {left, lower_line(rect)}, room, sign, Face::Text,
                  second_ink_on_row(theme, lit));
  const float wide = canvas.text_width(channel, Face::Second);
  if (!narrow)
    canvas.text({columns.channel_end, rect.center().y + 18.0f}, channel,
                wide > columns.channel_end - columns.name_end ? Face::Cardinal : Face::Second,
                theme.ink, Align::Right);
  if (view.row.outlook) draw_chance(ui, rect, columns, *view.row.outlook);
  draw_reason(ui, rect, columns, view, shared);
  draw_pin(ui, {rect.right - kPin, rect.top, rect.right, rect.bottom}, view, shared);
}

}  // namespace mastwise::screens
