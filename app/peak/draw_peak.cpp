#include "app/peak/actions.hpp"
#include "app/peak/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// A sweep by touch: turn, wait, read; the fit shows the peak and the next heading to read.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kPeakPanelWidth = 424.0f;

std::string heading_words(const Sweep& sweep, Bearing<Dial> heading) {
  return words::whole_degrees(heading.degrees()) +
         (sweep.by == SweepBy::Compass ? " magnetic" : " on the handle");
}

std::string value_words(const Sweep& sweep, double value) {
  return sweep.scale == aim::Scale::decibel ? fmt::format("{:.0f} dB", value)
                                            : fmt::format("{:.0f}", value);
}

// Readings over headings, with the pattern as it was fitted to them.
class SweepPlot {
 public:
  SweepPlot(Ui& ui, Rect area, const Sweep& sweep)
      : canvas_(ui.canvas()), theme_(ui.theme()), area_(area), sweep_(sweep) {
    find_extent();
  }
  void draw();

 private:
  void find_extent();
  double from_middle_deg(Bearing<Dial> heading) const {
    return (heading - middle_).clockwise_deg();
  }
  Point at(double from_middle_deg, double value) const {
    const double along = 0.5 + 0.5 * from_middle_deg / half_deg_;
    const double up = (value - least_) / (most_ - least_);
    return {area_.left + static_cast<float>(along) * area_.width(),
            area_.bottom - static_cast<float>(up) * area_.height()};
  }
  void frame();
  void peak();
  void readings();

  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Sweep& sweep_;
  Bearing<Dial> middle_;
  double half_deg_ = 60.0, least_ = 0.0, most_ = 100.0;
};

void SweepPlot::find_extent() {
  middle_ = sweep_.fit ? sweep_.fit->peak : sweep_.heading;
  half_deg_ = std::max(half_deg_, std::fabs(from_middle_deg(sweep_.heading)) + 10.0);
  most_ = scale_most(sweep_.scale);
  bool first = true;
  for (const aim::Reading& reading : sweep_.readings) {
    half_deg_ = std::max(half_deg_, std::fabs(from_middle_deg(reading.heading)) + 10.0);
    if (sweep_.scale != aim::Scale::decibel || !reading.value) continue;
    least_ = first ? *reading.value - 5.0 : std::min(least_, *reading.value - 5.0);
    most_ = first ? *reading.value + 5.0 : std::max(most_, *reading.value + 5.0);
    first = false;
  }
  half_deg_ = std::min(half_deg_, 180.0);
}

void SweepPlot::frame() {
  canvas_.fill(area_, theme_.panel, 8.0f);
  constexpr int kStep = 30;
  const int first = static_cast<int>(std::ceil((middle_.degrees() - half_deg_) / kStep)) * kStep;
  for (int degrees = first; degrees <= middle_.degrees() + half_deg_; degrees += kStep) {
    const Point foot = at(degrees - middle_.degrees(), least_);
    canvas_.line({foot.x, area_.top}, foot, theme_.rule, 1.5f);
    canvas_.text({foot.x, area_.bottom + 24.0f}, std::to_string((degrees + 360) % 360) + "°",
                 Face::Small, theme_.second_ink, Align::Center);
  }
  canvas_.outline(area_, theme_.rule, 2.0f, 8.0f);
}

void SweepPlot::peak() {
  if (!sweep_.fit) return;
  const aim::SweepFit& fit = *sweep_.fit;
  const Point left = at(-fit.error95_deg, most_), right = at(fit.error95_deg, least_);
  canvas_.push_clip(area_);
  canvas_.fill({left.x, area_.top, right.x, area_.bottom}, theme_.lobe);
  canvas_.pop_clip();
  const Point foot = at(0.0, least_);
  canvas_.line({foot.x, area_.top}, foot, theme_.accent, 5.0f);
  if (fit.second_lobe) {
    const Point lobe = at(from_middle_deg(fit.second_lobe->heading), least_);
    for (float y = area_.top; y < area_.bottom; y += 18.0f) {
      canvas_.line({lobe.x, y}, {lobe.x, std::min(y + 9.0f, area_.bottom)}, theme_.warning, 3.0f);
    }
  }
}

void SweepPlot::readings() {
  for (const aim::Reading& reading : sweep_.readings) {
    const double across = from_middle_deg(reading.heading);
    if (reading.value) {
      const Point dot = at(across, *reading.value);
      canvas_.line(at(across, least_), dot, theme_.second_ink, 2.0f);
      canvas_.disc(dot, 9.0f, theme_.ink);
    } else {
      const Point foot = at(across, least_);
      canvas_.circle({foot.x, foot.y - 12.0f}, 9.0f, theme_.ink, 3.0f);
    }
  }
  const Point next = at(from_middle_deg(sweep_.heading), least_);
  const std::array marker{Point{next.x - 14.0f, area_.top - 4.0f},
                          Point{next.x + 14.0f, area_.top - 4.0f},
                          Point{next.x, area_.top + 18.0f}};
  canvas_.polygon(marker, theme_.accent);
}

void SweepPlot::draw() {
  frame();
  peak();
  readings();
}

std::string what_next(const Sweep& sweep) {
  if (sweep.readings.empty()) return "Turn there, wait 5 s, set the meter, read";
  const Turn turn = sweep.heading - sweep.readings.back().heading;
  if (turn.size_deg() < 0.5) return "Stay there, wait 5 s, read";
  return fmt::format("Turn {:.0f}° {}, wait 5 s, read", turn.size_deg(),
                     turn.clockwise_deg() > 0.0 ? "right" : "left");
}

// A number between a minus and a plus, finer inside and coarser outside.
struct Stepper {
  const char* name;
  std::string number;
  double fine, coarse;
};

// The touched step, or 0.
double step(Ui& ui, Rect row, const Stepper& stepper) {
  constexpr float kButton = 72.0f, kGap = 16.0f;
  const auto label = [](const char* sign, double by) { return fmt::format("{}{:.0f}", sign, by); };
  const auto button = [&](float left, const char* which, const std::string& text) {
    return ui.button(std::string(stepper.name) + " " + which,
                     {left, row.top, left + kButton, row.bottom}, text, ButtonLook::Plain);
  };
  double by = 0.0;
  if (button(row.left, "much less", label("−", stepper.coarse))) by = -stepper.coarse;
  if (button(row.left + kButton + kGap, "less", label("−", stepper.fine))) by = -stepper.fine;
  if (button(row.right - 2.0f * kButton - kGap, "more", label("+", stepper.fine))) {
    by = stepper.fine;
  }
  if (button(row.right - kButton, "much more", label("+", stepper.coarse))) by = stepper.coarse;
  ui.canvas().text({row.center().x, row.center().y + 14.0f}, stepper.number, Face::Cardinal,
                   ui.theme().ink, Align::Center);
  return by;
}

// For an antenna with a flat top: the middle between the headings where the picture fails.
void draw_edges(Ui& ui, Rect row, const Sweep& sweep) {
  constexpr float kGap = 16.0f;
  const auto label = [](const char* side, const std::optional<Bearing<Dial>>& edge) {
    return edge ? fmt::format("{} {}", side, words::whole_degrees(edge->degrees()))
                : std::string(side);
  };
  const float middle = row.center().x;
  if (ui.button("left edge", {row.left, row.top, middle - kGap / 2.0f, row.bottom},
                label("Fails left", sweep.left_edge), ButtonLook::Plain)) {
    ui.emit(act::MarkEdge{.right = false});
  }
  if (ui.button("right edge", {middle + kGap / 2.0f, row.top, row.right, row.bottom},
                label("Fails right", sweep.right_edge), ButtonLook::Plain)) {
    ui.emit(act::MarkEdge{.right = true});
  }
}

void draw_reading(Ui& ui, Rect area, const Sweep& sweep) {
  constexpr float kRow = 72.0f, kGap = 16.0f;
  float y = area.top + 22.0f;
  ui.canvas().text({area.left, y},
                   sweep.by == SweepBy::Compass ? "READ AT, MAGNETIC" : "READ AT, ON THE HANDLE",
                   Face::WordBold, ui.theme().second_ink);
  y += 14.0f;
  const double turn = step(ui, {area.left, y, area.right, y + kRow},
                           {"heading", words::whole_degrees(sweep.heading.degrees()), 5.0, 15.0});
  if (turn != 0.0) ui.emit(act::TurnSweep{turn});
  y += kRow + 32.0f;
  ui.canvas().text({area.left, y}, what_next(sweep), Face::Word, ui.theme().ink);
  y += 38.0f;
  ui.canvas().text({area.left, y}, "METER READING", Face::WordBold, ui.theme().second_ink);
  y += 14.0f;
  const double value =
      step(ui, {area.left, y, area.right, y + kRow},
           {"value", value_words(sweep, sweep.value), 1.0, scale_step(sweep.scale)});
  if (value != 0.0) ui.emit(act::SetMeter{value});
  y += kRow + kGap;
  const float third = (area.width() - 2.0f * kGap) / 3.0f;
  if (ui.button("no picture", {area.left, y, area.left + third, y + kRow}, "Nothing",
                ButtonLook::Plain)) {
    ui.emit(act::ReadMeter{.nothing = true});
  }
  if (ui.button("read", {area.left + third + kGap, y, area.right, y + kRow}, "Read it",
                ButtonLook::Filled)) {
    ui.emit(act::ReadMeter{.nothing = false});
  }
  y += kRow + kGap;
  draw_edges(ui, {area.left, y, area.right, y + kRow}, sweep);
}

void draw_set_up(Ui& ui, Rect area, const Sweep& sweep) {
  constexpr float kRow = 72.0f, kGap = 16.0f;
  const float third = (area.width() - 2.0f * kGap) / 3.0f;
  const auto slot = [&](int index) {
    const float left = area.left + static_cast<float>(index) * (third + kGap);
    return Rect{left, area.bottom - kRow, left + third, area.bottom};
  };
  const bool any = !sweep.readings.empty();
  if (ui.button("scale", slot(0), words::sentence(scale_words(sweep.scale)), ButtonLook::Plain,
                !any)) {
    ui.emit(act::NextScale{});
  }
  if (ui.button("drop last", slot(1), "Undo last", ButtonLook::Plain, any)) {
    ui.emit(act::DropReading{});
  }
  if (ui.button("keep sweep", slot(2), "Save", ButtonLook::Filled, result_of(sweep).has_value())) {
    ui.emit(act::KeepSweep{});
  }
}

std::string peak_words(const Sweep& sweep) {
  const aim::SweepFit& fit = *sweep.fit;
  return fmt::format("{} ± {:.0f}°", heading_words(sweep, fit.peak), std::ceil(fit.error95_deg));
}

std::string edge_words(const Sweep& sweep) {
  const aim::EdgeMiddle& edges = *sweep.between_edges;
  return fmt::format("{} ± {:.0f}°", heading_words(sweep, edges.middle),
                     std::ceil(edges.sigma_deg));
}

void draw_result(Ui& ui, Rect area, const Sweep& sweep) {
  Column column(ui, area);
  if (!sweep.fit) {
    if (sweep.between_edges) {
      column.figure(edge_words(sweep));
      column.line("In the middle between the two headings where the picture fails.");
      return;
    }
    column.line(sweep.readings.empty() ? "The peak shows after two readings."
                                       : words::sentence(sweep.why_no_fit));
    return;
  }
  const aim::SweepFit& fit = *sweep.fit;
  column.figure(peak_words(sweep));
  column.line(fit.enough ? "Close enough: this error costs less than half a decibel."
                         : fmt::format("Read at {} more heading{}.", fit.more_headings,
                                       fit.more_headings == 1 ? "" : "s"));
  if (fit.second_lobe) {
    column.warning(fmt::format("A reflection comes from {}, {:.0f} dB weaker.",
                               heading_words(sweep, fit.second_lobe->heading),
                               -fit.second_lobe->relative_db));
  } else if (sweep.between_edges) {
    std::string agreement = sweep.edge_trouble;
    if (sweep.edges_agree) agreement = words::agreement(*sweep.edges_agree);
    column.line(
        fmt::format("Between the edges {}. {}", edge_words(sweep), words::sentence(agreement)));
  } else if (!sweep.edge_trouble.empty()) {
    column.warning(words::sentence(sweep.edge_trouble));
  } else if (fit.other_face) {
    column.line(fmt::format("Or the other face, {}.", heading_words(sweep, *fit.other_face)));
  }
}

void draw_nothing(Ui& ui, Rect area, const Shared& shared) {
  Column column(ui, area);
  column.figure("Find the peak by the meter");
  column.line(
      "Turn the antenna in steps and enter the receiver's meter reading. A few readings give "
      "the best heading and its error, even with bars.");
  const bool ready = shared.findings.card && shared.findings.outlook;
  column.line(ready ? "It starts at the computed heading of " + words::title(*shared.stop.target) +
                          "."
                    : "First pick a station under Stations.");
  if (!ready) {
    if (column.button("find", "Stations", 0, 1, true, ButtonLook::Filled)) {
      ui.emit(act::Show{Place::Stations});
    }
    return;
  }
  if (column.button("begin sweep", "Turn by compass", 0, 2, true, ButtonLook::Filled)) {
    ui.emit(act::BeginSweep{SweepBy::Compass});
  }
  if (column.button("begin by handle", "Turn by handle", 1, 2)) {
    ui.emit(act::BeginSweep{SweepBy::Handle});
  }
}

}  // namespace

void draw_peak(Ui& ui, Rect area, const Shared& shared, const PeakState& peak) {
  if (!peak.sweep) {
    area.right = std::min(area.right, area.left + 640.0f);
    draw_nothing(ui, area, shared);
    return;
  }
  const Sweep& sweep = *peak.sweep;
  Rect chart = area, panel = area;
  if (ui.portrait()) {
    chart.bottom = area.top + 0.5f * area.height();
    panel.top = chart.bottom + ui::kMargin;
  } else {
    panel.left = area.right - kPeakPanelWidth;
    chart.right = panel.left - 2.0f * ui::kMargin;
    if (shared.settings.left_handed) {
      panel = {area.left, area.top, area.left + kPeakPanelWidth, area.bottom};
      chart = {panel.right + 2.0f * ui::kMargin, area.top, area.right, area.bottom};
    }
  }
  ui.canvas().text({chart.left, chart.top + 26.0f}, sweep.title, Face::Cardinal, ui.theme().ink);
  const Rect over{chart.right - 152.0f, chart.top, chart.right, chart.top + 68.0f};
  if (ui.button("end sweep", over, "Start over", ButtonLook::Plain))
    ui.emit(act::BeginSweep{sweep.by});
  constexpr float kResult = 168.0f;
  const Rect plot{chart.left, chart.top + 92.0f, chart.right, chart.bottom - kResult};
  SweepPlot(ui, plot, sweep).draw();
  draw_result(ui, {chart.left, plot.bottom + 34.0f, chart.right, chart.bottom}, sweep);
  draw_reading(ui, panel, sweep);
  draw_set_up(ui, panel, sweep);
}

}  // namespace mastwise::screens
