#include "app/logbook/draw_parts.hpp"
#include "app/look/chance_colors.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/texture.hpp"
#include "app/words/language.hpp"
#include "app/words/records.hpp"

#include <algorithm>
#include <array>

// What the record teaches: the share that came in against the forecast, by its classes.
namespace mastwise::screens::log {
namespace {

using learning::ReliabilityBin;
using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

// The limits of the classes, in percent; each class has its width of the axis.
constexpr std::array kLimits{0.0, 10.0, 40.0, 70.0, 90.0, 100.0};

class Plot {
 public:
  Plot(Ui& ui, Rect frame) : ui_(ui), frame_(frame) {}

  void draw_axes() const;
  // `square`: VHF's marks; UHF's are discs.
  void draw_series(const std::vector<ReliabilityBin>& bins, bool square) const;
  // What the marks and the height mean.
  void draw_legend() const;

 private:
  Point at(double chance, double share) const {
    return {frame_.left + static_cast<float>(chance / 100.0) * frame_.width(),
            frame_.bottom - static_cast<float>(share / 100.0) * frame_.height()};
  }
  float foot_share() const;
  void mark(Point center, bool square) const;

  Ui& ui_;
  Rect frame_;
};

void Plot::draw_axes() const {
  const ui::Theme& theme = ui_.theme();
  ui::Canvas& canvas = ui_.canvas();
  canvas.fill(frame_, theme.panel);
  for (const double share : {0.0, 50.0, 100.0}) {
    canvas.line(at(0.0, share), at(100.0, share), theme.rule, 1.5f);
    canvas.text({frame_.left - 10.0f, at(0.0, share).y + 9.0f},
                std::to_string(static_cast<int>(share)), Face::Text, theme.second_ink,
                Align::Right);
  }
  ui::dotted(canvas, at(0.0, 0.0), at(100.0, 100.0), theme.second_ink, 2.0f);
  canvas.line({frame_.left, frame_.top}, {frame_.left, frame_.bottom}, theme.ink, 3.0f);
  canvas.line({frame_.left, frame_.bottom}, {frame_.right, frame_.bottom}, theme.ink, 3.0f);
  for (std::size_t i = 0; i + 1 < kLimits.size(); ++i) {
    const Rect segment{at(kLimits[i], 0.0).x + 2.0f, frame_.bottom + 8.0f,
                       at(kLimits[i + 1], 0.0).x - 2.0f, frame_.bottom + 24.0f};
    canvas.fill(segment, ui::chance_color(i, ui_.look()), 4.0f);
    canvas.outline(segment, theme.ink, 2.0f, 4.0f);
  }
  canvas.text({frame_.right, frame_.bottom + 50.0f}, words::say("forecast"), Face::Text, theme.ink,
              Align::Right, foot_share());
}

// Of the letters below the frame, so that the bands and the axis's name are apart.
float Plot::foot_share() const {
  constexpr float kMarks = 84.0f;  // of both bands
  const std::string bands = std::string(words::say("UHF")) + words::say("VHF");
  return ui::share_of_both(ui_.canvas(), frame_.width() - kMarks, {bands, Face::Text},
                           {words::say("forecast"), Face::Text});
}

void Plot::mark(Point center, bool square) const {
  const ui::Theme& theme = ui_.theme();
  constexpr float kHalf = 8.0f;
  if (!square) return ui_.canvas().disc(center, kHalf, theme.ink);
  const Rect box{center.x - kHalf, center.y - kHalf, center.x + kHalf, center.y + kHalf};
  ui_.canvas().fill(box, theme.panel);
  ui_.canvas().outline(box, theme.ink, 3.0f);
}

void Plot::draw_series(const std::vector<ReliabilityBin>& bins, bool square) const {
  const ui::Theme& theme = ui_.theme();
  std::vector<Point> marks;
  for (const ReliabilityBin& bin : bins) {
    if (!bin.mean_chance_percent) continue;
    const double chance = *bin.mean_chance_percent;
    ui_.canvas().line(at(chance, bin.interval_percent->low), at(chance, bin.interval_percent->high),
                      theme.ink, 2.0f);
    marks.push_back(at(chance, *bin.steady_percent));
  }
  if (marks.size() > 1) ui_.canvas().polyline(marks, theme.ink, 2.5f);
  for (const Point& one : marks) mark(one, square);
}

void Plot::draw_legend() const {
  const ui::Theme& theme = ui_.theme();
  ui::Canvas& canvas = ui_.canvas();
  constexpr float kMark = 18.0f, kApart = 14.0f;
  const float baseline = frame_.bottom + 50.0f, share = foot_share();
  float x = frame_.left + 8.0f;
  for (const bool square : {false, true}) {
    const char* const words = words::say(square ? "VHF" : "UHF");
    mark({x, baseline - 9.0f}, square);
    canvas.text({x + kMark, baseline}, words, Face::Text, theme.ink, ui::Align::Left, share);
    x += kMark + share * canvas.text_width(words, Face::Text) + kApart;
  }
  const std::string came = words::say("% came in");
  const float width = canvas.text_width(came, Face::Text);
  canvas.fill(
      {frame_.left + 6.0f, frame_.top + 4.0f, frame_.left + width + 18.0f, frame_.top + 36.0f},
      theme.panel, 4.0f);
  canvas.text({frame_.left + 12.0f, frame_.top + 28.0f}, came, Face::Text, theme.ink);
}

std::string lesson_words(const LogbookState& logbook) {
  const Taught& taught = logbook.log.taught;
  if (logbook.found.lesson) {
    std::string words = words::lesson(*logbook.found.lesson);
    return words + (logbook.found.ask_inverter ? words::say(": is the inverter on?") : ".");
  }
  if (!taught.brier) return words::say("Touch what came in and what did not: both teach.");
  return words::say("So far the forecasts hold within chance.");
}

}  // namespace

void draw_lesson(Ui& ui, Rect area, const LogbookState& logbook) {
  const ui::Theme& theme = ui.theme();
  constexpr float kLine = 31.0f, kFigures = 56.0f, kBelow = 58.0f, kLeast = 72.0f, kMost = 300.0f;
  const float below = ui.paragraph({area.left, area.top + 27.0f}, area.width(), kLine,
                                   lesson_words(logbook), Face::TextBold, theme.ink);
  Rect frame{area.left + kFigures, below - 6.0f, area.right, area.bottom - kBelow};
  if (frame.height() < kLeast) return;
  frame.bottom = std::min(frame.bottom, frame.top + kMost);
  const Plot plot(ui, frame);
  plot.draw_axes();
  const Taught& taught = logbook.log.taught;
  plot.draw_series(taught.vhf, true);
  plot.draw_series(taught.uhf, false);
  plot.draw_legend();
}

}  // namespace mastwise::screens::log
