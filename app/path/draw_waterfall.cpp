#include "app/path/draw_waterfall.hpp"

#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/signals.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using reception::SignalBudget;
using reception::SignalLoss;
using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;

constexpr float kStepRow = 33.0f, kStepBar = 27.0f, kMarginRoom = 88.0f, kHalfCapital = 9.0f;

class Waterfall {
 public:
  Waterfall(ui::Ui& ui, Rect area, const SignalBudget& budget, std::span<const WaterfallRow> rows,
            bool miles);
  Rect draw();

 private:
  float x(double level_db) const {
    const double inside = std::clamp(level_db, least_db_, most_db_);
    return bars_.left +
           static_cast<float>((inside - least_db_) / (most_db_ - least_db_)) * bars_.width();
  }
  void tower(float top);
  void row(float top, const WaterfallRow& row);
  Rect answer(float top);
  // A bar broken where it leaves the scale.
  void broken(Rect bar, ui::Color color);
  void value(float top, const WaterfallRow& row);

  ui::Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_, bars_;
  const SignalBudget& budget_;
  bool miles_;
  std::span<const WaterfallRow> rows_;
  double least_db_ = 0.0, most_db_ = 1.0;  // of the scale
};

Waterfall::Waterfall(ui::Ui& ui, Rect area, const SignalBudget& budget,
                     std::span<const WaterfallRow> rows, bool miles)
    : ui_(ui),
      canvas_(ui.canvas()),
      theme_(ui.theme()),
      area_(area),
      bars_(area),
      budget_(budget),
      miles_(miles),
      rows_(rows) {
  bars_.left = area.left + std::min(324.0f, 0.42f * area.width());
  // The first rows leave the scale: what is left after the distance decides.
  double highest = budget.margin_db;
  for (const WaterfallRow& row : rows_) {
    least_db_ = std::min(least_db_, row.after_db);
    highest = std::max(highest, row.after_db);
  }
  for (const auto& model_db : {budget.margin_p1812_db, budget.margin_itm_db}) {
    least_db_ = std::min(least_db_, model_db.value_or(0.0));
    highest = std::max(highest, model_db.value_or(0.0));
  }
  if (least_db_ < 0.0) least_db_ -= 0.06 * (highest - least_db_);
  most_db_ = std::max(highest, 10.0) + 0.14 * (std::max(highest, 10.0) - least_db_);
}

void Waterfall::broken(Rect bar, ui::Color color) {
  canvas_.fill(bar, color);
  const float middle = bar.right - std::min(46.0f, 0.55f * bar.width());
  const std::array teeth{Point{middle, bar.top}, Point{middle + 12.0f, bar.top},
                         Point{middle + 4.0f, bar.center().y},
                         Point{middle - 8.0f, bar.center().y}};
  canvas_.solid(teeth, theme_.paper);
  const std::array lower{Point{middle - 8.0f, bar.center().y}, Point{middle + 4.0f, bar.center().y},
                         Point{middle + 12.0f, bar.bottom}, Point{middle, bar.bottom}};
  canvas_.solid(lower, theme_.paper);
}

void Waterfall::tower(float top) {
  const float baseline = top + kStepBar / 2.0f + kHalfCapital;
  canvas_.text({area_.left, baseline},
               words::fill(words::say("Tower, {power}"), {{"power", words::power(budget_.erp_kw)}}),
               Face::TextBold, theme_.ink);
  broken({x(0.0), top, bars_.right, top + kStepBar}, theme_.accent);
  // Up to the break.
  const float room = bars_.right - 70.0f - x(0.0) - 14.0f;
  for (const char* phrase :
       {"{decibel} dB above what the TV needs", "{decibel} dB to lose", "{decibel} dB"}) {
    const std::string words =
        words::fill(words::say(phrase), {{"decibel", fmt::format("{:.0f}", budget_.tower_db)}});
    if (canvas_.text_width(words, Face::TextBold) > room) continue;
    canvas_.text({x(0.0) + 14.0f, baseline}, words, Face::TextBold, theme_.on_accent);
    return;
  }
}

void Waterfall::value(float top, const WaterfallRow& row) {
  const std::string words = words::signed_db(-row.shown_db());
  const float baseline = top + kStepBar / 2.0f + kHalfCapital;
  const float width = canvas_.text_width(words, Face::TextBold);
  const float left = x(std::min(row.before_db, row.after_db));
  const float right = x(std::max(row.before_db, row.after_db));
  // Beside the bar, where neither the zero nor the edge is in the way.
  const float zero = x(0.0);
  const bool crosses = zero > right && zero < right + width + 16.0f;
  const bool on_right = right + width + 8.0f < bars_.right && !crosses;
  const bool over_zero = left - width - 16.0f > zero;
  if (over_zero || !on_right) {
    canvas_.text({left - 8.0f, baseline}, words, Face::TextBold, theme_.ink, Align::Right);
  } else {
    canvas_.text({right + 8.0f, baseline}, words, Face::TextBold, theme_.ink);
  }
}

void Waterfall::row(float top, const WaterfallRow& row) {
  const bool ridge = row.step && (row.step->what == SignalLoss::ridge ||
                                  row.step->what == SignalLoss::earth_curve);
  const std::string label =
      row.step ? words::signal_step(*row.step, miles_) : std::string(words::say("All the rest"));
  const Face face = ridge ? Face::TextBold : Face::Text;
  ui::text_within(canvas_, {area_.left, top + kStepBar / 2.0f + kHalfCapital},
                  bars_.left - area_.left - 12.0f, label, face,
                  ridge ? theme_.warning : theme_.ink);
  const float zero = x(0.0), before = x(row.before_db), after = x(row.after_db);
  const float left_over = std::min(before, after);
  if (left_over > zero) canvas_.fill({zero, top, left_over, top + kStepBar}, theme_.lobe);
  const Rect taken{std::min(before, after), top,
                   std::max(std::max(before, after), left_over + 3.0f), top + kStepBar};
  const ui::Color color = ridge                  ? theme_.warning
                          : row.decibel() >= 0.0 ? theme_.ink
                                                 : theme_.accent;
  if (row.before_db > most_db_) {
    broken(taken, color);
  } else {
    canvas_.fill(taken, color);
  }
  value(top, row);
}

// The margin as the answer, with what each model alone says.
Rect Waterfall::answer(float top) {
  constexpr float kBand = 44.0f;
  const bool spare = budget_.margin_db >= 0.0;
  const ui::Color color = spare ? theme_.accent : theme_.warning;
  const std::string words = words::margin(budget_.margin_db);
  const float room = bars_.left - area_.left - 8.0f;
  const Face face = canvas_.text_width(words, Face::Matter) <= room     ? Face::Matter
                    : canvas_.text_width(words, Face::Cardinal) <= room ? Face::Cardinal
                                                                        : Face::Value;
  canvas_.text({area_.left, top + kBand / 2.0f + 14.0f}, words, face, color);
  const float zero = x(0.0), margin = x(budget_.margin_db);
  canvas_.fill({std::min(zero, margin), top, std::max(zero, margin), top + kBand}, color);
  Rect free{std::max(zero, margin) + 32.0f, top, area_.right, area_.bottom};
  if (!budget_.margin_p1812_db || !budget_.margin_itm_db) return free;
  struct Mark {
    const char* model;
    double margin_db;
  };
  std::array marks{Mark{"ITM", *budget_.margin_itm_db}, Mark{"P.1812", *budget_.margin_p1812_db}};
  if (marks[0].margin_db > marks[1].margin_db) std::swap(marks[0], marks[1]);
  const float low = x(marks[0].margin_db), high = x(marks[1].margin_db);
  const float middle = top + kBand / 2.0f;
  canvas_.line({low, middle}, {high, middle}, theme_.paper, 10.0f);
  canvas_.line({low, middle}, {high, middle}, theme_.ink, 4.0f);
  for (const float at : {low, high}) {
    canvas_.line({at, top - 4.0f}, {at, top + kBand + 4.0f}, theme_.paper, 10.0f);
    canvas_.line({at, top - 4.0f}, {at, top + kBand + 4.0f}, theme_.ink, 5.0f);
  }
  const auto label = [](const Mark& mark) {
    return fmt::format("{} {}{:.0f}", mark.model, mark.margin_db < -0.5 ? "−" : "",
                       std::fabs(mark.margin_db));
  };
  // Both labels stay on the area, and apart.
  const std::string first = label(marks[0]), second = label(marks[1]);
  const float first_width = canvas_.text_width(first, Face::TextBold);
  const float second_width = canvas_.text_width(second, Face::TextBold);
  constexpr float kApart = 24.0f;
  float second_left = std::min(high - 4.0f, area_.right - second_width);
  float first_left = std::min(low + 4.0f - first_width, second_left - kApart - first_width);
  if (first_left < area_.left) {
    first_left = area_.left;
    second_left = std::max(second_left, first_left + first_width + kApart);
  }
  const float baseline = top + kBand + 32.0f;
  canvas_.text({first_left, baseline}, first, Face::TextBold, theme_.ink);
  canvas_.text({second_left, baseline}, second, Face::TextBold, theme_.ink);
  free.left = std::max({free.left, high + 32.0f, second_left + second_width + 32.0f});
  return free;
}

Rect Waterfall::draw() {
  float top = area_.top;
  tower(top);
  top += kStepRow;
  for (const WaterfallRow& each : rows_) {
    row(top, each);
    top += kStepRow;
  }
  top += 4.0f;
  const Rect free = answer(top);
  canvas_.line({x(0.0), area_.top - 4.0f}, {x(0.0), top + 48.0f}, theme_.ink, 4.0f);
  return free;
}

}  // namespace

float waterfall_height(std::size_t rows) {
  return kMarginRoom + kStepRow * static_cast<float>(rows + 1);
}

std::size_t waterfall_rows(float height) {
  return static_cast<std::size_t>(
      std::max(2.0f, std::floor((height - kMarginRoom) / kStepRow) - 1.0f));
}

Rect draw_waterfall(ui::Ui& ui, Rect area, const SignalBudget& budget,
                    std::span<const WaterfallRow> rows, bool miles) {
  return Waterfall(ui, area, budget, rows, miles).draw();
}

}  // namespace mastwise::screens
