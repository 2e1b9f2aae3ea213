#include "app/peak/actions.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/signals.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

// Readings over headings: the antenna's pattern through them with its band of doubt, the peak, a
// reflection, and where to read next.
namespace mastwise::screens {
namespace {

using aim::CurvePoint;
using ui::Align;
using ui::Face;

constexpr float kValues = 60.0f, kDegrees = 42.0f, kLabels = 46.0f;  // beside, below, above

class SweepPlot {
 public:
  SweepPlot(Ui& ui, Rect area, const Sweep& sweep)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        plot_{area.left + kValues, area.top + kLabels, area.right - 16.0f, area.bottom - kDegrees},
        sweep_(sweep) {
    find_extent();
  }
  void draw();
  // A finger in the plot sets the next reading by its height, and its lift takes it.
  void touch();

 private:
  void find_extent();
  double off_deg(Bearing<Dial> heading) const { return (heading - middle_).clockwise_deg(); }
  bool inside(double off_deg) const { return std::fabs(off_deg) <= half_deg_; }
  float x(double off_deg) const {
    return plot_.center().x + static_cast<float>(0.5 * off_deg / half_deg_) * plot_.width();
  }
  float y(double value) const {
    const double up = (std::clamp(value, least_, most_) - least_) / (most_ - least_);
    return plot_.bottom - static_cast<float>(up) * plot_.height();
  }
  double value_of(float y) const {
    const double up = std::clamp((plot_.bottom - y) / plot_.height(), 0.0f, 1.0f);
    return std::round(least_ + up * (most_ - least_));
  }
  Point at(double off_deg, double value) const { return {x(off_deg), y(value)}; }
  std::vector<CurvePoint> curve_here() const;
  double value_at(Bearing<Dial> heading) const;
  void frame();
  void band();
  void readings();
  void peak();
  void reflection();
  void next();
  void edges();
  void dashed(float at_x, float top, ui::Color color, float width);

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_, plot_;
  const Sweep& sweep_;
  Bearing<Dial> middle_;
  double half_deg_ = 60.0, least_ = 0.0, most_ = 100.0;
};

void SweepPlot::find_extent() {
  const auto result = result_of(sweep_);
  middle_ = result ? result->peak : sweep_.heading;
  const auto include = [&](Bearing<Dial> heading) {
    half_deg_ = std::max(half_deg_, std::fabs(off_deg(heading)) + 8.0);
  };
  include(sweep_.heading);
  for (const auto& edge : {sweep_.left_edge, sweep_.right_edge}) {
    if (edge) include(*edge);
  }
  most_ = scale_most(sweep_.scale);
  const bool decibels = sweep_.scale == aim::Scale::decibel;
  bool first = true;
  for (const aim::Reading& reading : sweep_.readings) {
    include(reading.heading);
    if (!decibels || !reading.value) continue;
    least_ = first ? *reading.value : std::min(least_, *reading.value);
    most_ = first ? *reading.value : std::max(most_, *reading.value);
    first = false;
  }
  if (decibels) {
    least_ = 5.0 * std::floor((least_ - 4.0) / 5.0);
    most_ = 5.0 * std::ceil((most_ + 4.0) / 5.0);
  }
  if (sweep_.fit && sweep_.fit->second_lobe) include(sweep_.fit->second_lobe->heading);
  half_deg_ = std::min(half_deg_, 180.0);
}

std::vector<CurvePoint> SweepPlot::curve_here() const {
  std::vector<CurvePoint> here;
  for (const CurvePoint& point : sweep_.curve) {
    if (inside(off_deg(point.heading))) here.push_back(point);
  }
  std::sort(here.begin(), here.end(), [&](const CurvePoint& a, const CurvePoint& b) {
    return off_deg(a.heading) < off_deg(b.heading);
  });
  return here;
}

double SweepPlot::value_at(Bearing<Dial> heading) const {
  const auto nearest = std::min_element(
      sweep_.curve.begin(), sweep_.curve.end(), [&](const CurvePoint& a, const CurvePoint& b) {
        return (a.heading - heading).size_deg() < (b.heading - heading).size_deg();
      });
  return nearest == sweep_.curve.end() ? sweep_.value : nearest->value;
}

void SweepPlot::frame() {
  canvas_.fill(area_, theme_.panel, 12.0f);
  if (!sweep_.no_meter) {
    const int wished = sweep_.scale == aim::Scale::bars_of_5 ? 5 : plot_.height() > 260.0f ? 4 : 2;
    const bool crowded = plot_.height() < canvas_.em(Face::Text) * static_cast<float>(wished);
    const int steps = crowded ? 1 : wished;
    for (int i = 0; i <= steps; ++i) {
      const double value = least_ + (most_ - least_) * i / steps;
      const float line = y(value);
      if (i > 0) canvas_.line({plot_.left, line}, {plot_.right, line}, theme_.rule, 1.5f);
      canvas_.text({plot_.left - 8.0f, line + 9.0f}, fmt::format("{:.0f}", value), Face::Text,
                   theme_.second_ink, Align::Right);
    }
  }
  canvas_.line({plot_.left, plot_.bottom}, {plot_.right, plot_.bottom}, theme_.ink, 3.0f);
  // As close as the numbers leave room.
  constexpr float kBetween = 4.0f;
  const float apart = plot_.width() * 15.0f / static_cast<float>(half_deg_);
  const int step = canvas_.text_width("330°", Face::Text) + kBetween > apart ? 60 : 30;
  const double from = middle_.degrees() - half_deg_, to = middle_.degrees() + half_deg_;
  for (int degrees = static_cast<int>(std::ceil(from / step)) * step; degrees <= to;
       degrees += step) {
    const float foot = x(degrees - middle_.degrees());
    canvas_.line({foot, plot_.bottom}, {foot, plot_.bottom + 7.0f}, theme_.ink, 3.0f);
    const std::string words = std::to_string((degrees + 720) % 360) + "°";
    const float half = canvas_.text_width(words, Face::Text) / 2.0f;
    if (foot - half < area_.left || foot + half > area_.right) continue;
    canvas_.text({foot, plot_.bottom + 32.0f}, words, Face::Text, theme_.ink, Align::Center);
  }
}

void SweepPlot::band() {
  const std::vector<CurvePoint> here = curve_here();
  std::vector<Point> line;
  for (std::size_t i = 0; i < here.size(); ++i) {
    const double off = off_deg(here[i].heading);
    line.push_back(at(off, here[i].value));
    if (i == 0) continue;
    const double before = off_deg(here[i - 1].heading);
    const std::array strip{at(before, here[i - 1].high), at(off, here[i].high),
                           at(off, here[i].low), at(before, here[i - 1].low)};
    canvas_.solid(strip, theme_.lobe);
  }
  if (line.size() > 1) canvas_.polyline(line, theme_.accent, 4.0f);
}

void SweepPlot::readings() {
  for (std::size_t i = 0; i < sweep_.readings.size(); ++i) {
    const aim::Reading& reading = sweep_.readings[i];
    const double off = off_deg(reading.heading);
    if (!inside(off)) continue;
    const Point foot{x(off), plot_.bottom};
    if (reading.value) {
      const Point dot = at(off, *reading.value);
      canvas_.line(foot, dot, theme_.ink, 3.0f);
      canvas_.disc(dot, sweep_.live ? 7.0f : 10.0f, theme_.ink);
      if (i + 1 == sweep_.readings.size()) canvas_.circle(dot, 16.0f, theme_.ink, 2.5f);
    } else {
      // Nothing at all: a cross on the axis.
      canvas_.line({foot.x - 8.0f, foot.y - 16.0f}, {foot.x + 8.0f, foot.y}, theme_.ink, 4.0f);
      canvas_.line({foot.x - 8.0f, foot.y}, {foot.x + 8.0f, foot.y - 16.0f}, theme_.ink, 4.0f);
    }
  }
}

void SweepPlot::dashed(float at_x, float top, ui::Color color, float width) {
  for (float from = top; from < plot_.bottom; from += 16.0f) {
    canvas_.line({at_x, from}, {at_x, std::min(from + 9.0f, plot_.bottom)}, color, width);
  }
}

// A line with the error of 95 % as its cap.
void SweepPlot::peak() {
  const auto result = result_of(sweep_);
  if (!result) return;
  const float cap = plot_.top - 12.0f, middle = x(0.0);
  const float half = std::max(14.0f, x(std::min(result->error95_deg, half_deg_)) - middle);
  canvas_.line({middle, cap}, {middle, plot_.bottom}, theme_.accent, 4.0f);
  canvas_.line({middle - half, cap}, {middle + half, cap}, theme_.accent, 8.0f);
  const std::string words = words::fill(
      words::say("peak {degrees}"), {{"degrees", words::whole_degrees(result->peak.degrees())}});
  canvas_.text({middle, area_.top + 25.0f}, words, Face::TextBold, theme_.accent, Align::Center);
}

void SweepPlot::reflection() {
  if (!sweep_.fit || !sweep_.fit->second_lobe) return;
  const aim::SecondLobe& lobe = *sweep_.fit->second_lobe;
  const double off = off_deg(lobe.heading);
  dashed(x(off), plot_.top + 66.0f, theme_.warning, 3.5f);
  const bool left = off < 0.0;
  const std::string level = fmt::format("{}, {} dB", words::whole_degrees(lobe.heading.degrees()),
                                        words::signed_db(std::lround(lobe.relative_db)));
  const float width = std::max(canvas_.text_width(level, Face::Text),
                               canvas_.text_width(words::say("reflection"), Face::TextBold));
  // Beside the peak's line.
  const float peak_x = x(0.0);
  const float middle = left ? std::min(x(off), peak_x - 14.0f - width / 2.0f)
                            : std::max(x(off), peak_x + 14.0f + width / 2.0f);
  const float centered =
      std::clamp(middle, area_.left + width / 2.0f + 8.0f, area_.right - width / 2.0f - 8.0f);
  canvas_.text({centered, plot_.top + 26.0f}, words::say("reflection"), Face::TextBold,
               theme_.warning, Align::Center);
  canvas_.text({centered, plot_.top + 56.0f}, level, Face::Text, theme_.warning, Align::Center);
}

// A hollow mark where the next reading is expected, and a pointer at the heading.
void SweepPlot::next() {
  const double off = off_deg(sweep_.heading);
  if (!inside(off)) return;
  const Point foot{x(off), plot_.bottom};
  const std::array pointer{Point{foot.x, foot.y - 2.0f}, Point{foot.x - 14.0f, foot.y - 26.0f},
                           Point{foot.x + 14.0f, foot.y - 26.0f}};
  canvas_.polygon(pointer, theme_.accent);
  if (sweep_.no_meter) return;
  const Point mark = at(off, value_at(sweep_.heading));
  for (float from = mark.y + 18.0f; from < foot.y - 30.0f; from += 12.0f) {
    canvas_.disc({foot.x, from}, 2.5f, theme_.accent);
  }
  canvas_.disc(mark, 12.0f, theme_.panel);
  canvas_.circle(mark, 12.0f, theme_.accent, 4.0f);
}

// Good between the two, as far as both are known.
void SweepPlot::edges() {
  const auto& left = sweep_.left_edge;
  const auto& right = sweep_.right_edge;
  if (left && right) {
    const double from = off_deg(*left);
    const double width = fold_circle_deg(right->degrees() - left->degrees());
    const Rect good{x(from), plot_.top, x(std::min(from + width, half_deg_)), plot_.bottom};
    if (good.right > good.left) {
      if (sweep_.no_meter) canvas_.fill(good, theme_.lobe);
    }
  }
  const auto mark = [&](const std::optional<Bearing<Dial>>& edge, bool is_left) {
    if (!edge) return;
    const float at_x = x(off_deg(*edge));
    dashed(at_x, plot_.top, theme_.ink, 3.5f);
    if (!sweep_.no_meter) return;
    const std::string words = words::say("fails");
    canvas_.text({at_x + (is_left ? -10.0f : 10.0f), plot_.top + 26.0f}, words, Face::TextBold,
                 theme_.ink, is_left ? Align::Right : Align::Left);
  };
  mark(left, true);
  mark(right, false);
}

void SweepPlot::draw() {
  frame();
  if (!sweep_.no_meter) band();
  edges();
  peak();
  if (!sweep_.no_meter) {
    readings();
    reflection();
  }
  next();
}

void SweepPlot::touch() {
  using touch::Gesture;
  for (const Gesture& gesture : ui_.gestures_in(plot_)) {
    if (gesture.kind != Gesture::Kind::Drag && gesture.kind != Gesture::Kind::Tap) continue;
    if (gesture.phase == Gesture::Phase::Cancel) continue;
    const double value = value_of(gesture.current_px.y / canvas_.px_per_unit());
    ui_.emit(act::SetMeter{value - sweep_.value});
    if (gesture.phase == Gesture::Phase::End) ui_.emit(act::ReadMeter{.nothing = false});
  }
}

}  // namespace

void draw_sweep_plot(Ui& ui, Rect area, const PeakState& peak) {
  SweepPlot plot(ui, area, *peak.sweep);
  plot.draw();
  // While they are taken by themselves a finger would add a reading that nobody meant.
  if (!peak.turning && !peak.sweep->no_meter && !peak.sweep->live) plot.touch();
}

}  // namespace mastwise::screens
