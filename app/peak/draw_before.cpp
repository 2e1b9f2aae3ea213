#include "app/peak/actions.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/arrow.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

// Before a sweep: three steps, drawn, and what to turn and to read by.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kChoice = 72.0f, kSpace = 16.0f, kStart = 88.0f, kMeter = 264.0f;

// The rig on its ring, with the antenna at several headings.
void draw_turning(Ui& ui, Rect area) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const float radius = 0.5f * std::min(area.height(), 0.8f * area.width()) - 12.0f;
  const Point center{area.center().x - 0.08f * area.width(), area.center().y};
  canvas.circle(center, radius, theme.rule, 2.5f);
  for (int degrees = 0; degrees < 360; degrees += 30) {
    canvas.line(ui::around(center, 0.9f * radius, degrees), ui::around(center, radius, degrees),
                theme.ink, 2.0f);
  }
  ui::draw_rig(canvas, theme, center, Turn(), 1.05f * radius / ui::kRigLength);
  for (const double aside_deg : {-30.0, -15.0, 15.0, 30.0}) {
    const double at = 98.0 + aside_deg;
    canvas.line(ui::around(center, 0.42f * radius, at), ui::around(center, 0.88f * radius, at),
                theme.rule, 5.0f);
    canvas.disc(ui::around(center, 0.92f * radius, at), 0.06f * radius, theme.rule);
  }
  ui::draw_arrow(canvas, center, ui::around(center, 0.95f * radius, 98.0), theme.ink,
                 0.07f * radius);
  canvas.disc(center, 0.07f * radius, theme.ink);
  for (const double side : {-1.0, 1.0}) {
    const double from = 98.0 + side * 12.0, to = 98.0 + side * 30.0;
    canvas.arc(center, 1.18f * radius, static_cast<float>(std::min(from, to)),
               static_cast<float>(std::max(from, to)), theme.accent, 6.0f);
    ui::draw_arrow(canvas, ui::around(center, 1.18f * radius, to - side * 1.0),
                   ui::around(center, 1.19f * radius, to + side * 11.0), theme.accent, 5.0f);
  }
}

// A television with its meter, and a watch.
void draw_waiting(Ui& ui, Rect area) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const float width = 0.56f * area.width(), height = std::min(0.62f * area.height(), 0.72f * width);
  const Rect screen{area.left + 0.03f * area.width(), area.center().y - height / 2.0f - 8.0f,
                    area.left + 0.03f * area.width() + width,
                    area.center().y + height / 2.0f - 8.0f};
  canvas.outline(screen, theme.ink, 5.0f, 8.0f);
  const float middle = screen.center().x;
  canvas.line({middle, screen.bottom}, {middle, screen.bottom + 14.0f}, theme.ink, 5.0f);
  canvas.line({middle - 0.2f * width, screen.bottom + 14.0f},
              {middle + 0.2f * width, screen.bottom + 14.0f}, theme.ink, 5.0f);
  canvas.text({middle, screen.top + 0.5f * height}, "58",
              height > 110.0f ? Face::Second : Face::Cardinal, theme.ink, Align::Center);
  const Rect meter{screen.left + 0.12f * width, screen.bottom - 0.34f * height,
                   screen.right - 0.12f * width, screen.bottom - 0.18f * height};
  canvas.outline(meter, theme.ink, 3.0f, 4.0f);
  canvas.fill({meter.left, meter.top, meter.left + 0.58f * meter.width(), meter.bottom}, theme.ink,
              4.0f);
  const float radius = std::min(0.15f * area.width(), 0.24f * area.height());
  const Point watch{area.right - radius - 8.0f, area.center().y + 14.0f};
  canvas.sector(watch, radius - 4.0f, 0.0f, 150.0f, theme.accent, 1.0f);
  canvas.circle(watch, radius, theme.ink, 4.0f);
  canvas.line({watch.x, watch.y - radius - 8.0f}, {watch.x, watch.y - radius}, theme.ink, 6.0f);
  canvas.text({watch.x, watch.y - radius - 16.0f}, "5 s", Face::Value, theme.ink, Align::Center);
}

// Readings with the pattern of an antenna of 60 degrees through them.
void draw_finding(Ui& ui, Rect area) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const Rect plot = area.inset(14.0f);
  const auto pattern = gear::Pattern::directional(60.0, 14.0);
  const auto point = [&](double off_deg) {
    const double up =
        0.12 + 0.72 * (1.0 + pattern.relative_db(Turn::clockwise_deg(off_deg)) / 14.0);
    return Point{plot.left + static_cast<float>((off_deg + 110.0) / 200.0) * plot.width(),
                 plot.bottom - static_cast<float>(up) * plot.height()};
  };
  std::vector<Point> curve;
  for (double off_deg = -108.0; off_deg <= 88.0; off_deg += 4.0) curve.push_back(point(off_deg));
  canvas.polyline(curve, theme.accent, 4.0f);
  for (const double off_deg : {-92.0, -60.0, -28.0, 6.0, 22.0, 46.0, 78.0}) {
    const Point dot = point(off_deg);
    canvas.line({dot.x, plot.bottom}, dot, theme.ink, 3.0f);
    canvas.disc(dot, 8.0f, theme.ink);
  }
  canvas.line({plot.left, plot.bottom}, {plot.right, plot.bottom}, theme.ink, 3.0f);
  const Point top = point(0.0);
  canvas.line({top.x, plot.top + 18.0f}, {top.x, plot.bottom}, theme.accent, 4.0f);
  canvas.line({top.x - 14.0f, plot.top + 18.0f}, {top.x + 14.0f, plot.top + 18.0f}, theme.accent,
              8.0f);
}

struct Step {
  const char* number;
  const char* title;
  const char* about;
  void (*draw)(Ui&, Rect);
};
constexpr std::array kSteps{Step{"1", "Turn", "15° a step", draw_turning},
                            Step{"2", "Wait, read", "the TV's meter", draw_waiting},
                            Step{"3", "Enter it", "see the peak", draw_finding}};

void draw_step(Ui& ui, Rect card, const Step& step) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  canvas.fill(card, theme.panel, 12.0f);
  const float grown = canvas.em_grown(Face::Text), below = 84.0f + grown;
  const bool beside = card.width() > 1.6f * card.height();
  Rect picture = card.inset(14.0f);
  Point words{card.left + 22.0f, card.bottom - below + 44.0f};
  if (beside) {
    picture.right = card.left + 0.46f * card.width();
    words = {picture.right + 24.0f, card.center().y + 6.0f};
  } else {
    picture.bottom = card.bottom - below;
  }
  step.draw(ui, picture);
  canvas.text({words.x, words.y + 16.0f}, step.number, Face::Big, theme.accent);
  const float left = words.x + 60.0f;
  const float room = card.right - 10.0f - left;
  ui::text_within(canvas, {left, words.y - 6.0f - 0.2f * grown}, room, words::say(step.title),
                  Face::Value, theme.ink);
  ui::text_within(canvas, {left, words.y + 24.0f + 0.8f * grown}, room, words::say(step.about),
                  Face::Text, theme.ink);
}

void draw_steps(Ui& ui, Rect area) {
  const auto count = static_cast<float>(kSteps.size());
  constexpr float kApart = 20.0f;
  for (std::size_t i = 0; i < kSteps.size(); ++i) {
    const auto at = static_cast<float>(i);
    if (ui.portrait()) {
      const float height = (area.height() - (count - 1.0f) * kApart) / count;
      const float top = area.top + at * (height + kApart);
      draw_step(ui, {area.left, top, area.right, top + height}, kSteps[i]);
    } else {
      const float width = (area.width() - (count - 1.0f) * kApart) / count;
      const float left = area.left + at * (width + kApart);
      draw_step(ui, {left, area.top, left + width, area.bottom}, kSteps[i]);
    }
  }
}

void draw_turn_by(Ui& ui, Rect rect, const PeakState& peak) {
  const std::array options{ui::Option{"compass", words::say("Compass")},
                           ui::Option{"handle", words::say("Handle")},
                           ui::Option{"sensor", words::say("Sensor")}};
  const auto touched =
      ui::segmented(ui, "turn by", rect, options, static_cast<std::size_t>(peak.by));
  if (touched) ui.emit(act::ChooseTurnBy{static_cast<SweepBy>(*touched)});
}

void draw_meters(Ui& ui, Rect rect, const PeakState& peak) {
  const std::array options{
      ui::Option{"quality", words::say("0 to 100")}, ui::Option{"db", words::say("dB")},
      ui::Option{"bars", words::say("5 bars")}, ui::Option{"bars10", words::say("10 bars")},
      ui::Option{"none", words::say("No meter")}};
  const auto touched =
      ui::segmented(ui, "meter shows", rect, options, static_cast<std::size_t>(peak.meter));
  if (touched) ui.emit(act::ChooseMeter{static_cast<Meter>(*touched)});
}

// Both choices with their labels.
void draw_sweep_choices(Ui& ui, Rect area, const PeakState& peak) {
  constexpr float kLabel = 32.0f;
  const auto label = [&](float left, float top, const char* words) {
    ui.canvas().text({left, top + 22.0f}, words::say(words), Face::Text, ui.theme().second_ink);
  };
  label(area.left, area.top, "Turn by");
  if (ui.portrait()) {
    draw_turn_by(ui, {area.left, area.top + kLabel, area.right, area.top + kLabel + kChoice}, peak);
    const float second = area.top + kLabel + kChoice + kSpace;
    label(area.left, second, "Meter shows");
    draw_meters(ui, {area.left, second + kLabel, area.right, second + kLabel + kChoice}, peak);
    return;
  }
  const float split = area.left + 0.38f * area.width();
  const float top = area.top + kLabel;
  draw_turn_by(ui, {area.left, top, split - kSpace, top + kChoice}, peak);
  label(split + kSpace, area.top, "Meter shows");
  draw_meters(ui, {split + kSpace, top, area.right, top + kChoice}, peak);
}

std::string start_label(const Shared& shared, SweepBy by) {
  switch (by) {
    case SweepBy::Compass:
      return words::fill(
          words::say("Start at {degrees} magnetic"),
          {{"degrees", words::whole_degrees(shared.findings.card->bearing_magnetic)}});
    case SweepBy::Handle:
      return words::say("Start with the handle");
    case SweepBy::Sensor:
      break;
  }
  return words::say("Start with the sensor");
}

std::string start_note(const Shared& shared, const PeakState& peak, bool ready) {
  if (!shared.findings.position) return words::say("Set your position first, under Here.");
  if (!ready) return words::say("Pick a station first.");
  if (peak.by == SweepBy::Sensor && (!shared.findings.facing || shared.findings.facing_by_tablet)) {
    return words::say("No heading sensor: the sweep waits for one.");
  }
  const bool speaks = peak.line.state(shared.now) == aim::MeterState::speaking;
  if (peak.by == SweepBy::Sensor && speaks) {
    return words::say("Sensor and meter read as the antenna turns.");
  }
  if (peak.meter == Meter::none && !speaks) {
    return words::say("The peak is the middle between two headings where the picture fails.");
  }
  return words::say("The peak shows after 2 readings.");
}

// Begins at the computed heading, or leads to the stations.
void draw_start(Ui& ui, Rect row, const Shared& shared, const PeakState& peak) {
  const bool ready = shared.findings.card && shared.findings.outlook;
  const std::string note = start_note(shared, peak, ready);
  const float width = std::min(0.46f * row.width(), 504.0f);
  const bool upright = ui.portrait();
  Rect act{upright ? row.left : row.right - width, row.bottom - kStart, row.right, row.bottom};
  Rect words{row.left, act.top, act.left - kSpace, act.bottom};
  if (upright) {
    words = {row.left, row.top, row.right, act.top - kSpace};
  } else if (shared.settings.left_handed) {
    act = {row.left, act.top, row.left + width, act.bottom};
    words = {act.right + kSpace, act.top, row.right, act.bottom};
  }
  const auto lines = static_cast<float>(ui.wrapped(note, words.width(), Face::Text).size());
  ui.paragraph(
      {words.left, words.center().y + 9.0f - 0.5f * ui.line(32.0f, Face::Text) * (lines - 1.0f)},
      words.width(), 32.0f, note, Face::Text, ui.theme().ink);
  if (!ready) {
    const bool placed = shared.findings.position.has_value();
    if (ui.button("find", act, placed ? words::say("Pick a station") : words::say("Set position"),
                  ButtonLook::Filled)) {
      ui.emit(act::Show{placed ? Place::Stations : Place::Here});
    }
    return;
  }
  if (ui.button("begin sweep", act, start_label(shared, peak.by), ButtonLook::Filled)) {
    ui.emit(act::BeginSweep{peak.by});
  }
}

}  // namespace

void draw_before_sweep(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  const ui::Theme& theme = ui.theme();
  const std::string title = words::say("Find the peak");
  ui.canvas().text({area.left, area.top + 48.0f}, title, Face::Matter, theme.ink);
  const Rect meter{area.right - kMeter, area.top, area.right, area.top + kChoice};
  const std::string state =
      shared.settings.meter.empty() ? words::say("By hand") : meter_words(peak, shared.now);
  if (ui::slip(ui, "meter line", meter, words::say("Meter"), state)) {
    ui.emit(act::OpenSheet{Sheet::Meter});
  }
  if (shared.stop.target) {
    const float right = meter.left - 24.0f;
    const float room = right - area.left - 24.0f - ui.canvas().text_width(title, Face::Matter);
    const std::string target = words::title(*shared.stop.target);
    const Face face =
        ui.canvas().text_width(target, Face::Cardinal) <= room ? Face::Cardinal : Face::Value;
    ui::text_within(ui.canvas(), {right, area.top + 48.0f}, room, target, face, theme.ink,
                    Align::Right);
  }
  area.bottom -= 8.0f;
  const bool upright = ui.portrait();
  const float start = kStart + (upright ? 64.0f : 0.0f);
  const float choices = upright ? 2.0f * (32.0f + kChoice) + kSpace : 32.0f + kChoice;
  const Rect row{area.left, area.bottom - start, area.right, area.bottom};
  const Rect choose{area.left, row.top - kSpace - choices, area.right, row.top - kSpace};
  draw_steps(ui, {area.left, area.top + kChoice + 12.0f, area.right, choose.top - 8.0f});
  draw_sweep_choices(ui, choose, peak);
  draw_start(ui, row, shared, peak);
}

}  // namespace mastwise::screens
