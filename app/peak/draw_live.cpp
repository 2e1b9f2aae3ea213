#include "app/peak/actions.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// A sweep that reads itself: what to do next and how fast, and where its meter is chosen.
namespace mastwise::screens {
namespace {

using aim::LiveAdvice;
using aim::MeterKind;
using ui::Align;
using ui::Face;

struct Advice {
  std::string words, under;
  bool warning = false;
};

Advice advice_of(const Sweep& sweep) {
  const Turn turn = sweep.hint.turn;
  const std::string degrees = words::whole_degrees(turn.size_deg());
  const std::string side =
      turn.clockwise_deg() > 0.0 ? words::say("to the right") : words::say("to the left");
  switch (sweep.hint.advice) {
    case LiveAdvice::begin:
    case LiveAdvice::slowly:
      break;
    case LiveAdvice::too_fast:
      return {words::say("Too fast"), words::say("the meter cannot follow"), true};
    case LiveAdvice::back:
      return {words::fill(words::say("Back {degrees}"), {{"degrees", degrees}}), side};
    case LiveAdvice::go_on:
      return {words::fill(words::say("Go on {degrees}"), {{"degrees", degrees}}), side};
    case LiveAdvice::peak:
      if (turn.size_deg() < 2.0) return {words::say("Stay there"), words::say("at the peak")};
      return {words::fill(words::say("Peak in {degrees}"), {{"degrees", degrees}}), side};
  }
  return {words::say("Turn slowly"), words::say("over the station and back")};
}

// How fast the antenna turns, against what the meter can follow.
void draw_rate(Ui& ui, Rect rect, double rate_dps, double fastest_dps) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const auto at = [&](double dps) {
    const double part = std::clamp(dps / (2.0 * fastest_dps), 0.0, 1.0);
    return rect.left + static_cast<float>(part) * rect.width();
  };
  const Rect bar{rect.left, rect.bottom - 30.0f, rect.right, rect.bottom - 8.0f};
  canvas.fill({bar.left, bar.top, at(fastest_dps), bar.bottom}, theme.lobe, 4.0f);
  canvas.outline(bar, theme.ink, 2.5f, 4.0f);
  canvas.line({at(fastest_dps), bar.top - 8.0f}, {at(fastest_dps), bar.bottom + 8.0f}, theme.ink,
              3.0f);
  const float here = at(std::fabs(rate_dps));
  const std::array pointer{Point{here, bar.top + 4.0f}, Point{here - 13.0f, bar.top - 20.0f},
                           Point{here + 13.0f, bar.top - 20.0f}};
  const bool fast = std::fabs(rate_dps) > fastest_dps;
  canvas.polygon(pointer, fast ? theme.warning : theme.accent);
  const std::string words = words::fill(words::say("{rate}° a second, at most {most}°"),
                                        {{"rate", fmt::format("{:.1f}", std::fabs(rate_dps))},
                                         {"most", fmt::format("{:.1f}", fastest_dps)}});
  const bool wide =
      canvas.usual_share(Face::Text) * canvas.text_width(words, Face::Text) > rect.width();
  ui::text_within(canvas, {rect.left, rect.top + 24.0f}, rect.width(), words,
                  wide ? Face::Fine : Face::Text, fast ? theme.warning : theme.ink);
}

std::string kind_words(const aim::MeterReading& reading) {
  switch (*reading.kind) {
    case MeterKind::snr_db:
      return words::fill(words::say("SNR {level} dB"),
                         {{"level", fmt::format("{:.1f}", reading.value)}});
    case MeterKind::quality_percent:
      return fmt::format("{:.0f} %", reading.value);
    case MeterKind::level_dbuv:
      return fmt::format("{:.1f} dBµV", reading.value);
    case MeterKind::bars_of_5:
      return fmt::format("{:.0f} / 5", reading.value);
    case MeterKind::bars_of_10:
      break;
  }
  return fmt::format("{:.0f} / 10", reading.value);
}

// "Tuner 0" for "dvb:0"; else the device's label, or its name.
std::string meter_label(const MeterChoice& choice) {
  constexpr std::string_view kTuner = "dvb:";
  if (choice.name.empty()) return words::say("Read by you, typed by hand");
  if (choice.name.starts_with(kTuner)) {
    return words::fill(words::say("TV tuner {number}"),
                       {{"number", choice.name.substr(kTuner.size())}});
  }
  return choice.label.empty() ? choice.name : choice.label;
}

}  // namespace

std::string meter_words(const PeakState& peak, Monotonic now) {
  switch (peak.line.state(now)) {
    case aim::MeterState::silent:
    case aim::MeterState::stale:
      return words::say("silent");
    case aim::MeterState::unreadable:
      return words::say("unreadable");
    case aim::MeterState::speaking:
      break;
  }
  const auto latest = peak.line.latest(now);
  return latest && latest->kind ? kind_words(*latest) : std::string(words::say("no lock"));
}

void draw_live_panel(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const Advice advice = advice_of(sweep);
  const ui::Color color = advice.warning ? theme.warning : theme.ink;
  const bool large = canvas.text_width(advice.words, Face::Second) <= area.width();
  canvas.text({area.left, area.top + 48.0f}, advice.words, large ? Face::Second : Face::Cardinal,
              color);
  const float under = canvas.usual_share(Face::Text) * canvas.text_width(advice.under, Face::Text);
  ui::text_within(canvas, {area.left, area.top + 88.0f}, area.width(), advice.under,
                  under > area.width() ? Face::Fine : Face::Text, color);

  constexpr float kRate = 96.0f, kMeterRow = 84.0f;
  const Rect rate{area.left, area.bottom - kMeterRow - kRate, area.right, area.bottom - kMeterRow};
  // Beside the words where they leave room, else below them.
  const Rect below{area.left, area.top + 104.0f, area.right, rate.top - 12.0f};
  const Rect beside{area.right - (rate.top - area.top), area.top, area.right, rate.top};
  const Rect dial = area.width() > 2.0f * beside.width() ? beside : below;
  const float radius = std::min(0.5f * dial.height(), 0.5f * dial.width()) - 18.0f;
  const bool turns = sweep.hint.turn.size_deg() > 0.0;
  draw_turn_dial(ui, dial.center(), radius, shared, sweep, sweep.heading,
                 turns ? std::optional(sweep.heading + sweep.hint.turn) : std::nullopt);
  draw_rate(ui, rate, sweep.live->rate_dps(shared.now).value_or(0.0), sweep.live->fastest_dps());

  const float line = area.bottom - 40.0f;
  const std::string reads = meter_words(peak, shared.now), where = on_dial(sweep.by, sweep.heading);
  const float share =
      ui::share_of_both(canvas, area.width(), {reads, Face::Cardinal}, {where, Face::Value});
  canvas.text({area.left, line}, reads, Face::Cardinal, theme.ink, Align::Left, share);
  canvas.text({area.right, line}, where, Face::Value, theme.ink, Align::Right, share);
  const std::size_t gusts = sweep.live->gusts();
  if (gusts > 0) {
    canvas.text(
        {area.left, area.bottom - 8.0f},
        words::fill(words::say("{count} left out as gusts"), {{"count", std::to_string(gusts)}}),
        Face::Text, theme.second_ink);
  }
}

void draw_meter_sheet(Ui& ui, const Shared& shared, const PeakState& peak) {
  constexpr float kRow = 76.0f;
  const Rect view = draw_sheet_head(ui, words::say("Where do the readings come from?"));
  Rect area = view;
  area.top = ui.begin_page("meter", view);
  const std::string& now = shared.settings.meter;
  std::vector<MeterChoice> choices{{}};
  choices.insert(choices.end(), peak.meters.begin(), peak.meters.end());
  const bool listed = std::any_of(choices.begin(), choices.end(),
                                  [&](const MeterChoice& one) { return one.name == now; });
  if (!listed) choices.push_back({.name = now});
  float top = area.top + 8.0f;
  for (const MeterChoice& choice : choices) {
    const bool chosen = choice.name == now;
    const bool lost = peak.line_link.state == Link::State::Lost;
    const std::string remark = !chosen || now.empty() ? std::string()
                               : lost                 ? std::string(words::say("not connected"))
                                                      : meter_words(peak, shared.now);
    const std::string name =
        choice.name.empty() ? std::string("meter by hand") : "meter " + choice.name;
    const Rect row{area.left, top, area.right, top + kRow};
    if (ui::choice_row(ui, name, row, meter_label(choice), remark, chosen, "meters")) {
      ui.emit(act::ConnectMeter{choice.name});
    }
    top = row.bottom;
  }
  const bool lost = !now.empty() && peak.line_link.state == Link::State::Lost;
  const std::string note =
      lost ? words::sentence(peak.line_link.name)
           : std::string(words::say("A TV tuner in this machine, or a meter that sends lines like "
                                    "SNR 21.4 dB. With a heading sensor on the antenna the sweep "
                                    "then reads itself."));
  const float end = ui.paragraph({area.left, top + 44.0f}, area.width(), 32.0f, note, Face::Text,
                                 lost ? ui.theme().warning : ui.theme().second_ink);
  ui.end_page("meter", area.top, end + 16.0f);
}

}  // namespace mastwise::screens
