#include "app/peak/actions.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// A sweep by touch: turn, wait, read; the fit shows the peak and the next heading to read.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kPanel = 440.0f, kPeakAct = 72.0f, kPeakGap = 16.0f;
constexpr float kPeakHead = 144.0f, kSentenceLine = 30.0f, kCaption = 26.0f;

std::string plus_minus(double degrees) {
  return fmt::format("± {:.0f}°", std::ceil(degrees));
}

// The station's direction and its error, as large as the answer is.
void draw_answer(Ui& ui, Rect head, const Sweep& sweep) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const auto result = result_of(sweep);
  const float line = head.top + 134.0f;
  std::string state;
  bool done = false;
  if (sweep.fit) {
    done = sweep.fit->enough;
    state = done ? words::say("Close enough")
                 : words::fill(sweep.fit->more_headings == 1 ? words::say("{number} more reading")
                                                             : words::say("{number} more readings"),
                               {{"number", std::to_string(sweep.fit->more_headings)}});
  }
  const float share = ui::share_of_both(canvas, head.width(), {sweep.title, Face::Cardinal},
                                        {state, Face::TextBold});
  canvas.text({head.left, head.top + 26.0f}, sweep.title, Face::Cardinal, theme.ink, Align::Left,
              share);
  canvas.text({head.right, head.top + 26.0f}, state, Face::TextBold,
              done ? theme.accent : theme.ink, Align::Right, share);
  if (!result) {
    canvas.text({head.left, line}, words::say("No peak yet"), Face::Matter, theme.ink);
    return;
  }
  const std::string number = words::whole_degrees(result->peak.degrees());
  canvas.text({head.left, line}, number, Face::Answer, theme.ink);
  float x = head.left + canvas.text_width(number, Face::Answer) + 18.0f;
  if (sweep.by == SweepBy::Compass) {
    ui::kite(canvas, {x + 10.0f, line - 68.0f}, 14.0f, theme.ink, false);
    ui::text_within(canvas, {x + 30.0f, line - 59.0f}, head.right - x - 30.0f,
                    words::say("magnetic"), Face::Text, theme.ink);
  } else {
    ui::text_within(canvas, {x, line - 59.0f}, head.right - x, dial_word(sweep.by), Face::Text,
                    theme.ink);
  }
  canvas.text({x, line}, plus_minus(result->error95_deg), Face::Matter, theme.ink);
}

struct Sentence {
  std::string words = {};
  bool warning = false;
};

// The one thing to say about the readings.
Sentence sentence_of(const Sweep& sweep, bool live) {
  if (sweep.no_meter || !sweep.fit) {
    if (!sweep.edge_trouble.empty()) return {words::sentence(sweep.edge_trouble), true};
    if (sweep.between_edges) {
      return {words::say("In the middle between the two headings where the picture fails.")};
    }
    if (sweep.no_meter) {
      return {words::say("Turn until the picture fails, on both sides. The middle is the peak.")};
    }
    if (live) return {words::say("Turn the antenna slowly over the station and back.")};
    return {
        sweep.readings.size() < 2
            ? words::say("Turn there, wait 5 s. Touch the plot as high as the meter reads, or use "
                         "the keys.")
            : words::sentence(sweep.why_no_fit)};
  }
  if (sweep.fit->second_lobe) {
    return {words::fill(words::say("A reflection comes from {heading}."),
                        {{"heading", on_dial(sweep.by, sweep.fit->second_lobe->heading)}}),
            true};
  }
  if (sweep.between_edges) {
    const std::string agreement =
        sweep.edges_agree ? words::agreement(*sweep.edges_agree) : sweep.edge_trouble;
    return {words::fill(words::say("Between the edges {heading}. {agreement}"),
                        {{"heading", on_dial(sweep.by, sweep.between_edges->middle)},
                         {"agreement", words::sentence(agreement)}})};
  }
  if (!sweep.edge_trouble.empty()) return {words::sentence(sweep.edge_trouble), true};
  if (sweep.fit->other_face) {
    return {words::fill(words::say("Or the other face, {heading}."),
                        {{"heading", on_dial(sweep.by, *sweep.fit->other_face)}})};
  }
  if (live) return {words::say("The readings are taken as the antenna turns.")};
  return {sweep.fit->enough ? words::say("Turn to the peak, or read on.")
                            : words::say("Turn there, wait 5 s, then read the meter.")};
}

// What the curve rests on.
std::string caption_of(const Sweep& sweep, const Shared& shared) {
  std::string words;
  if (sweep.by != SweepBy::Handle && shared.findings.card) {
    const AimCard& card = *shared.findings.card;
    words = words::fill(
        words::say("Computed {degrees}. "),
        {{"degrees", sweep.by == SweepBy::Compass ? words::whole_degrees(card.bearing_magnetic)
                                                  : words::whole_degrees(card.bearing_true)}});
  }
  if (!sweep.fit || sweep.no_meter) return words;
  return words + words::fill(words::say("{count} readings, {band} pattern, {error} at 95 %"),
                             {{"count", std::to_string(sweep.readings.size())},
                              {"band", words::say(to_text(sweep.band))},
                              {"error", plus_minus(result_of(sweep)->error95_deg)}});
}

void draw_chart(Ui& ui, Rect chart, const PeakState& peak, const Shared& shared) {
  const Sweep& sweep = *peak.sweep;
  draw_answer(ui, {chart.left, chart.top, chart.right, chart.top + kPeakHead}, sweep);
  const bool live = reads_itself(peak, shared.receiver, shared.now);
  const Sentence sentence = sentence_of(sweep, live);
  // Two lines, so that the plot rarely changes its size.
  const std::size_t lines =
      std::max<std::size_t>(2, ui.wrapped(sentence.words, chart.width(), Face::Text).size());
  const Rect plot{
      chart.left, chart.top + kPeakHead + 4.0f, chart.right,
      chart.bottom - ui.line(kSentenceLine, Face::Text) * static_cast<float>(lines) - kCaption};
  draw_sweep_plot(ui, plot, peak);
  const std::string caption = caption_of(sweep, shared);
  ui::text_within(ui.canvas(), {chart.left, plot.bottom + 22.0f}, chart.width(), caption,
                  Face::Fine, ui.theme().second_ink);
  ui.paragraph({chart.left, plot.bottom + kCaption + 26.0f}, chart.width(), kSentenceLine,
               sentence.words, Face::Text, sentence.warning ? ui.theme().warning : ui.theme().ink);
}

void draw_undo(Ui& ui, Rect rect, const Sweep& sweep, bool live) {
  if (ui.button("drop last", rect, words::say("Undo"), ButtonLook::Plain,
                !live && !sweep.readings.empty())) {
    ui.emit(act::DropReading{});
  }
}

void draw_over(Ui& ui, Rect rect) {
  if (ui.button("end sweep", rect, words::say("Start over"), ButtonLook::Plain)) {
    ui.emit(act::EndSweep{});
  }
}

// The next act once the peak is close enough.
void draw_keep(Ui& ui, Rect rect, const Sweep& sweep) {
  const auto result = result_of(sweep);
  const std::string label =
      result ? words::fill(words::say("Keep {degrees} {error}"),
                           {{"degrees", words::whole_degrees(result->peak.degrees())},
                            {"error", plus_minus(result->error95_deg)}})
             : std::string(words::say("Keep"));
  const bool enough = sweep.fit ? sweep.fit->enough : sweep.between_edges.has_value();
  if (ui.button("keep sweep", rect, label, enough ? ButtonLook::Filled : ButtonLook::Plain,
                result.has_value())) {
    ui.emit(act::KeepSweep{});
  }
}

void draw_panel(Ui& ui, const ReadingPanel& panel, const Shared& shared, const PeakState& peak) {
  if (reads_itself(peak, shared.receiver, shared.now)) {
    draw_live_panel(ui, panel.area, shared, peak);
  } else {
    draw_reading_panel(ui, panel, shared, peak);
  }
}

void draw_upright(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  const Rect acts{area.left, area.bottom - kPeakAct - 8.0f, area.right, area.bottom - 8.0f};
  const float panel_top = acts.top - kPeakGap - reading_panel_height(false);
  draw_chart(ui, {area.left, area.top, area.right, panel_top - kPeakGap}, peak, shared);
  draw_panel(ui, {{area.left, panel_top, area.right, acts.top - kPeakGap}, false}, shared, peak);
  const float part = (acts.width() - 2.0f * kPeakGap) / 4.0f;
  draw_undo(ui, {acts.left, acts.top, acts.left + part, acts.bottom}, sweep,
            reads_itself(peak, shared.receiver, shared.now));
  const float over = acts.left + part + kPeakGap;
  draw_over(ui, {over, acts.top, over + part + 16.0f, acts.bottom});
  draw_keep(ui, {over + part + 16.0f + kPeakGap, acts.top, acts.right, acts.bottom}, sweep);
}

void draw_wide(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  const Sweep& sweep = *peak.sweep;
  area.bottom -= 8.0f;
  Rect panel{area.right - kPanel, area.top, area.right, area.bottom};
  Rect chart{area.left, area.top, panel.left - 2.0f * ui::kMargin, area.bottom};
  if (shared.settings.left_handed) {
    panel = {area.left, area.top, area.left + kPanel, area.bottom};
    chart = {panel.right + 2.0f * ui::kMargin, area.top, area.right, area.bottom};
  }
  const float rule =
      shared.settings.left_handed ? panel.right + ui::kMargin : panel.left - ui::kMargin;
  ui.canvas().line({rule, area.top - ui::kMargin}, {rule, area.bottom}, ui.theme().rule, 1.5f);
  const float acts = area.bottom - kPeakAct;
  draw_chart(ui, {chart.left, chart.top, chart.right, acts - 8.0f}, peak, shared);
  draw_undo(ui, {chart.left, acts, chart.left + 152.0f, area.bottom}, sweep,
            reads_itself(peak, shared.receiver, shared.now));
  draw_over(ui, {chart.left + 152.0f + kPeakGap, acts, chart.left + 360.0f, area.bottom});
  const bool tall = reading_panel_height(true) + kPeakAct + kPeakGap <= panel.height();
  draw_panel(ui, {{panel.left, panel.top, panel.right, acts - kPeakGap}, tall}, shared, peak);
  draw_keep(ui, {panel.left, acts, panel.right, area.bottom}, sweep);
}

}  // namespace

std::string dial_word(SweepBy by) {
  switch (by) {
    case SweepBy::Compass:
      return words::say("magnetic");
    case SweepBy::Handle:
      return words::say("on the handle");
    case SweepBy::Sensor:
      break;
  }
  return words::say("true");
}

std::string on_dial(SweepBy by, Bearing<Dial> heading) {
  return words::whole_degrees(heading.degrees()) + " " + dial_word(by);
}

void draw_peak(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  if (!peak.sweep) {
    draw_before_sweep(ui, area, shared, peak);
  } else if (ui.portrait()) {
    draw_upright(ui, area, shared, peak);
  } else {
    draw_wide(ui, area, shared, peak);
  }
}

}  // namespace mastwise::screens
