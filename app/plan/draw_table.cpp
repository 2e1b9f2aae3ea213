#include "app/plan/draw_table.hpp"

#include "app/plan/actions.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/mini_dial.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/signals.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

constexpr float kTableGap = 16.0f, kWeakRow = 64.0f, kEdge = 3.0f;
constexpr float kNarrow = 260.0f;  // a column whose number is above its dial, not beside it
constexpr float kLeastRow = 46.0f, kTwoLines = 62.0f;  // a cell of two lines has the word, too

class TableDrawing {
 public:
  TableDrawing(Ui& ui, Rect area, const Shared& shared, const PlanState& state)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        state_(state),
        table_(*state.table) {
    lay_out();
  }
  void draw();

 private:
  void lay_out();
  Rect column(std::size_t which) const { return which == 0 ? first_ : second_; }
  // The table's column that is drawn as the first or the second.
  std::size_t index(std::size_t which) const { return which == 0 ? 0 : table_.shown; }
  void head(std::size_t which);
  void turning_head();
  void other_turns(Rect rect);
  void rows();
  void row(float top, const PlanRow& row);
  void cell(Rect rect, const PlanCell& cell);
  void changes(Rect rect, const PlanRow& row);
  void weak();
  void weak_one(Rect rect, const WeakStation& weak);

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const PlanState& state_;
  const PlanTable& table_;
  Rect names_ = {}, first_ = {}, second_ = {}, third_ = {};  // columns from head to last row
  Rect body_ = {};                                           // where the rows scroll
  Rect weak_ = {};
  Rect strip_ = {};  // above the columns, instead of the third one
  bool has_third_ = false;
  std::size_t weak_count_ = 0;
  float cell_row_ = kLeastRow;
};

void TableDrawing::lay_out() {
  constexpr float kStrip = 72.0f;
  if (area_.width() <= 900.0f && table_.shown > 0) {
    strip_ = {area_.left, area_.top, area_.right, area_.top + kStrip};
    area_.top += kStrip + kTableGap;
  }
  const bool wide = area_.width() > 900.0f;
  const bool two = table_.shown > 0;
  has_third_ = wide && two;
  const float name = wide ? 0.165f * area_.width() : 0.3f * area_.width();
  const float third = has_third_ ? 0.24f * area_.width() : 0.0f;
  const float gaps = (two ? 2.0f : 1.0f) * kTableGap + (has_third_ ? kTableGap : 0.0f);
  const float each = (area_.width() - name - third - gaps) / (two ? 2.0f : 1.0f);
  // On a tall screen one below the other, as far as the rows leave room.
  const float rows_need =
      static_cast<float>(table_.rows.size()) * kLeastRow + (each < kNarrow ? 164.0f : 124.0f);
  const float room_below = area_.height() - rows_need - kTableGap - 12.0f;
  weak_count_ = std::min<std::size_t>(table_.weak.size(), area_.width() > 1150.0f ? 3 : 2);
  if (!wide && room_below < 2.0f * kWeakRow) weak_count_ = std::min<std::size_t>(weak_count_, 1);
  const float weak_rows = wide ? 1.0f : static_cast<float>(weak_count_);
  const float weak = weak_count_ == 0 ? 0.0f : weak_rows * kWeakRow + kTableGap;
  const float bottom = area_.bottom - weak;
  // First a head, then the rows, then a larger head, then rows of two lines.
  const float least_head = each < kNarrow ? 164.0f : 124.0f;
  constexpr float kMostHead = 184.0f;
  const auto count = static_cast<float>(std::max<std::size_t>(table_.rows.size(), 1));
  const float room = bottom - area_.top - 12.0f;
  const float head = std::clamp(room - count * kLeastRow, least_head, kMostHead);
  cell_row_ = std::clamp((room - head) / count, kLeastRow, kTwoLines);
  const float needed = count * cell_row_;
  const float end = std::min(bottom, area_.top + head + needed + 8.0f);
  names_ = {area_.left, area_.top, area_.left + name, end};
  first_ = {names_.right + kTableGap, area_.top, names_.right + kTableGap + each, end};
  if (two) {
    second_ = {first_.right + kTableGap, area_.top, first_.right + kTableGap + each, end};
    third_ = {second_.right + kTableGap, area_.top, area_.right, end};
  }
  body_ = {area_.left, area_.top + head, area_.right, end - 4.0f};
  weak_ = {area_.left, area_.bottom - weak + kTableGap, area_.right, area_.bottom};
}

// The mini dial and the number on the compass. Touched: the acts below are about this heading.
void TableDrawing::head(std::size_t which) {
  const Rect frame = column(which);
  const PlanColumn& planned = table_.columns[index(which)];
  const bool chosen = state_.chosen == index(which);
  const bool choosable = table_.columns.size() > 1;
  const Rect top{frame.left, frame.top, frame.right, body_.top - 4.0f};
  const std::string name = "turn " + std::to_string(index(which) + 1);
  if (choosable && ui_.touchable(name, top)) ui_.emit(act::ChooseTurn{index(which)});
  if (chosen) canvas_.fill(frame, theme_.panel, 14.0f);
  canvas_.outline(frame.inset(kEdge / 2.0f), chosen ? theme_.accent : theme_.rule,
                  chosen ? kEdge + 1.0f : kEdge - 1.0f, 14.0f);
  const auto magnetic = on_compass_here(shared_, planned.bearing);
  const std::string number =
      magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(planned.bearing);
  const std::string north = magnetic ? words::say("magnetic") : words::say("true");
  const bool narrow = top.width() < kNarrow;
  const float radius = narrow ? 0.5f * (top.height() - 76.0f) - 18.0f
                              : std::min(0.5f * top.height() - 24.0f, 0.19f * top.width());
  const Point center = narrow ? Point{top.center().x, top.bottom - radius - 18.0f}
                              : Point{top.left + radius + 24.0f, top.center().y};
  ui::draw_mini_dial(ui_, {.center = center,
                           .radius = radius,
                           .nose = shared_.findings.nose,
                           .heading = planned.bearing,
                           .slack = planned.slack});
  const float right = top.right - 16.0f;
  const float left = narrow ? top.left + 12.0f : center.x + radius + 20.0f;
  const float baseline = narrow ? top.top + 64.0f : top.center().y + 10.0f;
  const auto fits = [&](Face face) {
    return canvas_.text_width(number, face) <= right - 32.0f - left;
  };
  const Face face = fits(Face::Big) ? Face::Big : fits(Face::Second) ? Face::Second : Face::Matter;
  canvas_.text({right, baseline}, number, face, theme_.ink, Align::Right);
  ui::kite(canvas_, {right - canvas_.text_width(number, face) - 18.0f, baseline - 20.0f}, 12.0f,
           theme_.ink, !magnetic);
  // Without room for the word the kite tells alone.
  if (narrow) return;
  ui::text_within(canvas_, {right, baseline + 36.0f}, right - (center.x + radius + 14.0f), north,
                  Face::Text, theme_.ink, Align::Right);
}

// Which turn is shown beside the first, where there are several.
void TableDrawing::other_turns(Rect rect) {
  std::vector<ui::Option> options;
  for (std::size_t i = 1; i < table_.columns.size(); ++i) {
    options.push_back({std::to_string(i + 1), std::to_string(i + 1)});
  }
  const auto touched = ui::segmented(ui_, "turn shown", rect, options, table_.shown - 1);
  if (touched) ui_.emit(act::ShowTurn{*touched + 1});
}

// What turning again gains and loses.
void TableDrawing::turning_head() {
  const std::string gained = fmt::format("+{}", table_.gained);
  const std::string lost = table_.lost == 0 ? "0" : fmt::format("−{}", table_.lost);
  const bool several = table_.columns.size() > 2;
  if (!has_third_) {
    const float baseline = strip_.center().y + 14.0f;
    float x = strip_.left;
    const auto write = [&](const std::string& text, Face face, ui::Color color) {
      canvas_.text({x, baseline}, text, face, color);
      x += canvas_.text_width(text, face) + 12.0f;
    };
    write(gained, Face::Matter, theme_.ink);
    write(words::say("gained"), Face::Text, theme_.second_ink);
    write(lost, Face::Matter, theme_.ink);
    write(words::say("lost"), Face::Text, theme_.second_ink);
    if (several) other_turns({x + kTableGap, strip_.top, strip_.right, strip_.bottom});
    return;
  }
  const float left = third_.left, second = left + 0.5f * third_.width();
  if (several) {
    other_turns({left, area_.top, third_.right, area_.top + 68.0f});
  } else {
    canvas_.text({left, area_.top + 34.0f}, words::say("Turning again"), Face::Value, theme_.ink);
  }
  const float y = body_.top - 12.0f;
  const Face face = body_.top - area_.top > 150.0f ? Face::Matter : Face::Cardinal;
  canvas_.text({left, y - 32.0f}, gained, face, theme_.ink);
  canvas_.text({second, y - 32.0f}, lost, face, theme_.ink);
  canvas_.text({left, y}, words::say("gained"), Face::Text, theme_.second_ink);
  canvas_.text({second, y}, words::say("lost"), Face::Text, theme_.second_ink);
}

void TableDrawing::cell(Rect rect, const PlanCell& cell) {
  constexpr float kSide = 14.0f, kMostMark = 110.0f, kLeastMark = 64.0f, kOthers = 210.0f;
  const bool two_lines = cell_row_ >= kTwoLines;
  const float baseline = two_lines ? rect.top + 29.0f : rect.center().y + 10.0f;
  const ui::Color color = cell.comes_in ? theme_.ink : theme_.second_ink;
  const reception::ChanceWord word = reception::chance_word(cell.chance_percent);
  canvas_.text({rect.right - kSide, baseline}, words::chance_number(cell.chance_percent),
               Face::Value, color, Align::Right);
  const float number_left = rect.right - kSide - canvas_.text_width("100 %", Face::Value);
  const float mark_width = std::min(kMostMark, rect.width() - kOthers);
  const bool marked = two_lines || mark_width >= kLeastMark;
  Rect mark{number_left - mark_width - 12.0f, rect.center().y - 11.0f, number_left - 12.0f,
            rect.center().y + 11.0f};
  if (two_lines) {
    mark = {rect.left + kSide, rect.bottom - 22.0f, rect.left + kSide + kLeastMark,
            rect.bottom - 8.0f};
  }
  const float channel_end = marked && !two_lines ? mark.left : number_left;
  ui::text_within(canvas_, {rect.left + kSide, baseline}, channel_end - 12.0f - rect.left - kSide,
                  cell.channel, Face::Value, color);
  if (marked) ui::draw_chance_mark(ui_, mark, word);
  const std::string said = words::say(std::string(to_text(word)).c_str());
  const float room = rect.right - kSide - mark.right - 12.0f;
  if (two_lines && canvas_.text_width(said, Face::Text) <= room) {
    canvas_.text({rect.right - kSide, rect.bottom - 8.0f}, said, Face::Text, theme_.ink,
                 Align::Right);
  }
}

// "+14.1 75 %  −2.1 43 %"; without the chances where there is no room for all.
void TableDrawing::changes(Rect rect, const PlanRow& row) {
  constexpr float kBeside = 10.0f, kApart = 20.0f;
  const float baseline = rect.center().y + 9.0f;
  if (row.changes.empty()) {
    canvas_.text({rect.left, baseline}, words::say("same"), Face::Text, theme_.second_ink);
    return;
  }
  const auto channel_of = [](const PlanChange& change) {
    return (change.gained ? "+" : "−") + change.channel;
  };
  const auto chance_width = [&](const PlanChange& change) {
    return kBeside + canvas_.text_width(words::chance_number(change.chance_percent), Face::Text);
  };
  float whole = -kApart;
  for (const PlanChange& change : row.changes) {
    whole += canvas_.text_width(channel_of(change), Face::TextBold) + chance_width(change) + kApart;
  }
  const bool with_chances = whole <= rect.width();
  float x = rect.left;
  for (const PlanChange& change : row.changes) {
    const float width = canvas_.text_width(channel_of(change), Face::TextBold);
    if (x + width > rect.right) break;
    canvas_.text({x, baseline}, channel_of(change), Face::TextBold, theme_.ink);
    x += width;
    if (with_chances) {
      canvas_.text({x + kBeside, baseline}, words::chance_number(change.chance_percent), Face::Text,
                   theme_.second_ink);
      x += chance_width(change);
    }
    x += kApart;
  }
}

void TableDrawing::row(float top, const PlanRow& row) {
  const float bottom = top + cell_row_;
  canvas_.line({area_.left, top}, {area_.right, top}, theme_.rule, 1.5f);
  const Face face = row.wanted ? Face::TextBold : Face::Text;
  ui::text_within(canvas_, {names_.left, top + cell_row_ / 2.0f + 9.0f}, names_.width(), row.name,
                  face, row.wanted ? theme_.ink : theme_.second_ink);
  for (std::size_t which = 0; which < (table_.shown > 0 ? 2u : 1u); ++which) {
    const Rect frame = column(which);
    const Rect rect{frame.left, top, frame.right, bottom};
    const auto& content = row.cells[index(which)];
    if (content) {
      cell(rect, *content);
    } else {
      canvas_.text({rect.right - 14.0f, top + cell_row_ / 2.0f + 9.0f}, words::say("nothing"),
                   Face::Text, theme_.second_ink, Align::Right);
    }
  }
  if (has_third_) changes({third_.left, top, third_.right, bottom}, row);
}

void TableDrawing::rows() {
  const float height = static_cast<float>(table_.rows.size()) * cell_row_;
  float top = body_.top - ui_.begin_scroll("plan", body_, height);
  for (const PlanRow& each : table_.rows) {
    if (top + cell_row_ > body_.top && top < body_.bottom) row(top, each);
    top += cell_row_;
  }
  ui_.end_scroll();
}

void TableDrawing::weak_one(Rect rect, const WeakStation& weak) {
  const std::string number =
      weak.best_percent ? words::chance_number(*weak.best_percent) : std::string();
  float x = rect.left;
  const auto write = [&](const std::string& text, Face face) {
    const std::string shown = ui::shortened(canvas_, text, face, rect.right - x);
    canvas_.text({x, rect.top + 26.0f}, shown, face, theme_.ink);
    x += canvas_.text_width(shown, face) + 12.0f;
  };
  if (!weak.channel.empty()) write(weak.channel, Face::TextBold);
  if (!number.empty()) write(number, Face::TextBold);
  write(weak.name, Face::Text);
  if (!weak.why) return;
  const std::string why = words::brief_reason(*weak.why, shared_.settings.miles);
  ui::text_within(canvas_, {rect.left, rect.top + 56.0f}, rect.width(), why, Face::Text,
                  theme_.second_ink);
}

void TableDrawing::weak() {
  if (table_.weak.empty()) return;
  const bool wide = area_.width() > 900.0f;
  ui_.paragraph({weak_.left, weak_.top + 26.0f}, names_.width(), 30.0f, words::say("Too weak"),
                Face::TextBold, theme_.ink);
  const float left = names_.right + kTableGap;
  const float room = weak_.right - left;
  for (std::size_t i = 0; i < weak_count_; ++i) {
    const auto at = static_cast<float>(i);
    const float width =
        wide ? (room + kTableGap) / static_cast<float>(weak_count_) - kTableGap : room;
    const float x = wide ? left + at * (width + kTableGap) : left;
    const float top = wide ? weak_.top : weak_.top + at * kWeakRow;
    weak_one({x, top, x + width, top + kWeakRow}, table_.weak[i]);
  }
}

void TableDrawing::draw() {
  if (!table_.columns.empty()) {
    head(0);
    if (table_.shown > 0) head(1);
    if (table_.shown > 0) turning_head();
  }
  rows();
  weak();
}

}  // namespace

void draw_plan_table(Ui& ui, Rect area, const Shared& shared, const PlanState& state) {
  if (state.table->columns.empty() && state.table->rows.empty() && state.table->weak.empty()) {
    draw_empty_table(ui, area);
    return;
  }
  TableDrawing(ui, area, shared, state).draw();
}

void draw_empty_table(Ui& ui, Rect area) {
  constexpr int kRows = 6, kDots = 40;
  constexpr float kEmptyHead = 136.0f, kEmptyRow = 52.0f, kRadius = 46.0f;
  const ui::Color ink = ui.theme().second_ink;
  for (int row = 0; row <= kRows; ++row) {
    const float y = area.top + kEmptyHead + static_cast<float>(row) * kEmptyRow;
    if (y > area.bottom) break;
    for (int dot = 0; dot <= kDots; ++dot) {
      const float x = area.left + area.width() * static_cast<float>(dot) / kDots;
      ui.canvas().disc({x, y}, 2.0f, ink);
    }
  }
  for (const float share : {0.33f, 0.67f}) {
    const Point center{area.left + share * area.width(), area.top + kEmptyHead / 2.0f};
    for (int degrees = 0; degrees < 360; degrees += 12) {
      ui.canvas().disc(ui::around(center, kRadius, degrees), 2.0f, ink);
    }
  }
}

}  // namespace mastwise::screens
