#include "app/peak/actions.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/arrow.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// Where to turn next, the keys for heading and meter, and the acts of one reading.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kKey = 72.0f, kKeyGap = 16.0f, kTurnBlock = 128.0f;

// The turn from the last heading that was read or marked.
std::optional<Turn> next_turn(const Sweep& sweep) {
  if (sweep.no_meter || sweep.readings.empty()) return std::nullopt;
  return sweep.heading - sweep.readings.back().heading;
}

// Where the dial's zero is on the ring, and whether the rig can be drawn in it.
struct Ring {
  double zero_deg = 0.0;  // clockwise from the top
  bool rig = false;
};

// With the rig's nose up where it is known; a compass heading is as far from the target's compass
// number as its true bearing is from the target.
Ring ring_of(const Shared& shared, const Sweep& sweep) {
  const Findings& found = shared.findings;
  if (sweep.by == SweepBy::Handle || !found.card) return {};
  if (sweep.by == SweepBy::Sensor) {
    if (!found.nose) return {};
    return {.zero_deg = -found.nose->nose().degrees(), .rig = true};
  }
  const double zero_true_deg =
      found.card->bearing_true.degrees() - found.card->bearing_magnetic.degrees();
  if (!found.nose) return {.zero_deg = zero_true_deg};
  return {.zero_deg = zero_true_deg - found.nose->nose().degrees(), .rig = true};
}

}  // namespace

void draw_turn_dial(Ui& ui, Point center, float radius, const Shared& shared, const Sweep& sweep,
                    std::optional<Bearing<Dial>> from, std::optional<Bearing<Dial>> to) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const Ring ring = ring_of(shared, sweep);
  canvas.disc(center, radius, theme.panel);
  canvas.circle(center, radius, theme.rule, 2.5f);
  for (int degrees = 0; degrees < 360; degrees += 30) {
    const double at = ring.zero_deg + degrees;
    canvas.line(ui::around(center, 0.9f * radius, at), ui::around(center, radius, at), theme.ink,
                2.0f);
  }
  if (ring.rig) ui::draw_rig(canvas, theme, center, Turn(), 0.95f * radius / ui::kRigLength);
  const auto place = [&](Bearing<Dial> heading) { return ring.zero_deg + heading.degrees(); };
  if (from) {
    ui::draw_arrow(canvas, center, ui::around(center, 0.86f * radius, place(*from)), theme.ink,
                   6.0f);
  }
  if (from && to && (*to - *from).size_deg() > 2.0) {
    const Turn turn = *to - *from;
    const double start = place(*from) + std::min(0.0, turn.clockwise_deg());
    canvas.arc(center, radius + 9.0f, static_cast<float>(start),
               static_cast<float>(start + turn.size_deg()), theme.accent, 6.0f);
  }
  if (to) {
    ui::draw_arrow(canvas, center, ui::around(center, 0.86f * radius, place(*to)), theme.accent,
                   6.0f);
  }
  canvas.disc(center, 8.0f, theme.ink);
}

namespace {

// "Turn left 29°" with the dial, and the heading as a value to set.
void draw_turn(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  const ui::Theme& theme = ui.theme();
  const float radius = std::min(0.5f * area.height() - 14.0f, 84.0f);
  const bool begun = !sweep.no_meter && !sweep.readings.empty();
  draw_turn_dial(ui, {area.right - radius - 14.0f, area.center().y}, radius, shared, sweep,
                 begun ? std::optional(sweep.readings.back().heading) : std::nullopt,
                 sweep.heading);
  const float right = area.right - 2.0f * radius - 40.0f;
  const auto turn = next_turn(sweep);
  std::string words, degrees;
  if (!turn) {
    words = sweep.no_meter ? words::say("Turn slowly") : words::say("Turn there");
  } else if (turn->size_deg() < 0.5) {
    words = words::say("Stay there");
  } else {
    words = turn->clockwise_deg() > 0.0 ? words::say("Turn right") : words::say("Turn left");
    degrees = words::whole_degrees(turn->size_deg());
  }
  const bool tall = area.height() > 190.0f;
  if (!tall && !degrees.empty()) words += " " + degrees;
  const bool large = ui.canvas().text_width(words, Face::Cardinal) <= right - area.left;
  ui.canvas().text({area.left, area.top + 32.0f}, words, large ? Face::Cardinal : Face::Value,
                   theme.ink);
  if (tall && !degrees.empty()) {
    ui.canvas().text({area.left, area.top + 106.0f}, degrees, Face::Big, theme.accent);
  }
  const Rect slip{area.left, area.bottom - kKey, right, area.bottom};
  if (sweep.no_meter) {
    ui.paragraph({area.left, area.top + 66.0f}, slip.width(), 30.0f,
                 words::say("until the picture fails"), Face::Text, theme.ink);
    return;
  }
  const std::string value =
      words::whole_degrees(sweep.heading.degrees()) + " " +
      (sweep.by == SweepBy::Handle ? words::say("handle") : dial_word(sweep.by));
  if (ui::slip(ui, "turn to", slip, {}, value)) ui.emit(act::SwitchTurning{});
}

// What the meter shows; without one, the picture tells.
void draw_meter_choice(Ui& ui, Rect rect, const Sweep& sweep) {
  constexpr std::array kLabels{"0 to 100", "dB", "5 bars", "10 bars"};
  const Meter scale = meter_of(sweep.scale);
  const std::array options{
      ui::Option{"scale", words::say(kLabels[static_cast<std::size_t>(scale)])},
      ui::Option{"none", words::say("No meter")}};
  const auto touched = ui::segmented(ui, "meter", rect, options, sweep.no_meter ? 1 : 0);
  if (touched) ui.emit(act::ChooseMeter{*touched == 1 ? Meter::none : scale});
}

// The keys change the reading, or the heading.
struct Keys {
  const char* name;
  std::string number;
  double fine, coarse;
};

// The four keys around the number; the touched step, or 0.
double draw_keys(Ui& ui, Rect area, bool tall, const Keys& keys) {
  const float width = tall ? 96.0f : std::min(112.0f, (area.width() - 176.0f) / 4.0f - kKeyGap);
  const auto label = [](const char* sign, double by) { return fmt::format("{}{:.0f}", sign, by); };
  const float second = area.top + kKey + kKeyGap;
  struct Key {
    const char* which;
    double by;
    Rect rect;
  };
  const auto at = [&](float left, float top) { return Rect{left, top, left + width, top + kKey}; };
  const float right = area.right - width, inner = width + kKeyGap;
  const std::array all{
      Key{"much less", -keys.coarse, tall ? at(area.left, second) : at(area.left, area.top)},
      Key{"less", -keys.fine, tall ? at(area.left, area.top) : at(area.left + inner, area.top)},
      Key{"more", keys.fine, tall ? at(right, area.top) : at(right - inner, area.top)},
      Key{"much more", keys.coarse, tall ? at(right, second) : at(right, area.top)}};
  double by = 0.0;
  for (const Key& key : all) {
    const std::string words = label(key.by < 0.0 ? "−" : "+", std::fabs(key.by));
    if (ui.button(std::string(keys.name) + " " + key.which, key.rect, words, ButtonLook::Plain)) {
      by = key.by;
    }
  }
  const float middle = tall ? area.top + kKey + kKeyGap / 2.0f : area.top + kKey / 2.0f;
  const float room = area.width() - (tall ? 2.0f : 4.0f) * inner - 8.0f;
  // The face of figures has no letters and no minus.
  const bool figures = keys.number.find_first_not_of("0123456789°") == std::string::npos;
  const auto fits = [&](Face face) { return ui.canvas().text_width(keys.number, face) <= room; };
  const bool answer = tall && figures && fits(Face::Answer);
  const bool big = tall && figures && fits(Face::Big);
  const Face face = answer ? Face::Answer : big ? Face::Big : Face::Matter;
  const float drop = answer ? 42.0f : big ? 24.0f : 15.0f;
  ui.canvas().text({area.center().x, middle + drop}, keys.number, face, ui.theme().ink,
                   Align::Center);
  return by;
}

std::string reading_words(const Sweep& sweep) {
  const std::string number = fmt::format("{:.0f}", sweep.value);
  const std::string minus = sweep.value < -0.5 ? "−" + number.substr(1) : number;
  return sweep.scale == aim::Scale::decibel ? minus + " dB" : minus;
}

// For an antenna with a flat top, or without a meter: where the picture fails.
void draw_edge_acts(Ui& ui, Rect row, const Sweep& sweep) {
  const float middle = row.center().x;
  const auto label = [](const char* side, const std::optional<Bearing<Dial>>& edge) {
    return edge ? std::string(side) + " " + words::whole_degrees(edge->degrees())
                : std::string(side);
  };
  if (ui.button("left edge", {row.left, row.top, middle - kKeyGap / 2.0f, row.bottom},
                label(words::say("Fails left"), sweep.left_edge),
                sweep.left_edge ? ButtonLook::Plain : ButtonLook::Filled)) {
    ui.emit(act::MarkEdge{.right = false});
  }
  if (ui.button("right edge", {middle + kKeyGap / 2.0f, row.top, row.right, row.bottom},
                label(words::say("Fails right"), sweep.right_edge),
                sweep.left_edge && !sweep.right_edge ? ButtonLook::Filled : ButtonLook::Plain)) {
    ui.emit(act::MarkEdge{.right = true});
  }
}

void draw_reading_acts(Ui& ui, Rect row, const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  if (sweep.no_meter) return draw_edge_acts(ui, row, sweep);
  if (peak.turning) {
    const std::string words =
        words::fill(words::say("Read at {degrees}"),
                    {{"degrees", words::whole_degrees(sweep.heading.degrees())}});
    if (ui.button("heading set", row, words, ButtonLook::Filled)) ui.emit(act::SwitchTurning{});
    return;
  }
  const float split = row.left + 0.33f * row.width();
  if (ui.button("no picture", {row.left, row.top, split - kKeyGap / 2.0f, row.bottom},
                words::say("Nothing"), ButtonLook::Plain)) {
    ui.emit(act::ReadMeter{.nothing = true});
  }
  const bool enough = sweep.fit && sweep.fit->enough;
  if (ui.button("read", {split + kKeyGap / 2.0f, row.top, row.right, row.bottom},
                words::say("Read it"), enough ? ButtonLook::Plain : ButtonLook::Filled)) {
    ui.emit(act::ReadMeter{.nothing = false});
  }
}

}  // namespace

float reading_panel_height(bool tall) {
  return kTurnBlock + 4.0f * kKeyGap + 2.0f * kKey + (tall ? 2.0f * kKey + kKeyGap : kKey);
}

void draw_reading_panel(Ui& ui, const ReadingPanel& panel, const Shared& shared,
                        const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  const Rect& area = panel.area;
  // What is left over goes to the turn: it is looked at from afar.
  const float spare = std::max(0.0f, area.height() - reading_panel_height(panel.tall) + kKeyGap);
  float y = area.top;
  const float block = kTurnBlock + std::min(spare, 92.0f);
  draw_turn(ui, {area.left, y, area.right, y + block}, shared, peak);
  y += block + kKeyGap;
  draw_meter_choice(ui, {area.left, y, area.right, y + kKey}, sweep);
  y += kKey + kKeyGap;
  const bool heading = peak.turning || sweep.no_meter;
  const Keys keys = heading
                        ? Keys{"heading", words::whole_degrees(sweep.heading.degrees()), 5.0, 15.0}
                        : Keys{"value", reading_words(sweep), 1.0, scale_step(sweep.scale)};
  const double by = draw_keys(ui, {area.left, y, area.right, area.bottom}, panel.tall, keys);
  if (by != 0.0 && heading) ui.emit(act::TurnSweep{by});
  if (by != 0.0 && !heading) ui.emit(act::SetMeter{by});
  y += (panel.tall ? 2.0f * kKey + kKeyGap : kKey) + kKeyGap;
  draw_reading_acts(ui, {area.left, y, area.right, y + kKey}, peak);
}

}  // namespace mastwise::screens
