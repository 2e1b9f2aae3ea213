#include "app/plan/actions.hpp"
#include "app/plan/draw.hpp"
#include "app/plan/draw_table.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/signals.hpp"
#include "app/words/units.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

// The turn plan: the answer as its title, networks against headings, what no heading brings, and
// the acts at the bottom.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kUnderMark = 8.0f;  // the mark of the practice area is above the head
constexpr float kPlanAct = 72.0f, kPlanGap = 16.0f;

std::string number_word(std::size_t number) {
  constexpr std::array kWords{"no",  "one",   "two",   "three", "four", "five",
                              "six", "seven", "eight", "nine",  "ten"};
  return number < kWords.size() ? words::say(kWords[number]) : std::to_string(number);
}

std::string turns_word(std::size_t turns) {
  return turns == 1 ? words::say("One turn")
                    : words::fill(words::say("{number} turns"),
                                  {{"number", words::sentence(number_word(turns))}});
}

// "One turn, all six networks"; "One turn for QBPA 6.1" where nothing is pinned.
std::string plan_title(const Shared& shared, const PlanState& state) {
  if (!state.table) {
    if (!shared.findings.position) return words::say("Position unknown");
    return words::say("Computing the plan");
  }
  const PlanTable& table = *state.table;
  const std::size_t turns = table.columns.size() - (table.again ? 1 : 0);
  if (table.nothing_pinned && !shared.stop.target) return words::say("Nothing to plan for yet");
  if (turns == 0) return words::say("No heading brings it in");
  const std::string by = turns_word(turns);
  if (table.nothing_pinned) {
    return words::fill(words::say("{turns} for {station}"),
                       {{"turns", by}, {"station", words::title(*shared.stop.target)}});
  }
  const char* kind = state.plan_for == PlanFor::Networks ? "networks"
                     : state.plan_for == PlanFor::All    ? "stations"
                                                         : "pinned";
  if (table.brought == table.wanted && table.wanted == 1) {
    return words::fill(words::say("{turns}, and it is in"), {{"turns", by}});
  }
  const char* phrase = table.brought == table.wanted ? "{turns}, all {number} {kind}"
                                                     : "{turns}, {number} of {all} {kind}";
  return words::fill(words::say(phrase), {{"turns", by},
                                          {"number", number_word(table.brought)},
                                          {"all", number_word(table.wanted)},
                                          {"kind", words::say(kind)}});
}

// "24° magnetic", as the compass shows it, else true.
std::string heading_words(const Shared& shared, Bearing<True> bearing) {
  const auto magnetic = on_compass_here(shared, bearing);
  return magnetic ? words::whole_degrees(*magnetic) + " " + words::say("magnetic")
                  : words::whole_degrees(bearing) + " " + words::say("true");
}

struct Remark {
  std::string words = {};
  ui::Color color = {};
  Face face = Face::Text;
};

// The one sentence under the title: what went wrong, what was saved, or what the figures allow for.
Remark plan_remark(const ui::Theme& theme, const Shared& shared, const PlanState& state) {
  if (!shared.trouble.empty()) {
    return {words::sentence(shared.trouble), theme.warning, Face::TextBold};
  }
  if (!state.paper_file.empty()) {
    const std::size_t name = state.paper_file.rfind('/') + 1;
    return {words::fill(words::say("Saved as {file} in {folder}"),
                        {{"file", state.paper_file.substr(name)},
                         {"folder", state.paper_file.substr(0, name)}}),
            theme.accent, Face::TextBold};
  }
  if (!shared.findings.position) return {words::say("Set it under Here."), theme.second_ink};
  if (shared.stations && !shared.stations->trouble.empty()) {
    return {words::sentence(shared.stations->trouble), theme.warning, Face::TextBold};
  }
  if (!state.table) {
    const std::size_t measured = shared.stations ? shared.stations->measured : 0;
    const std::size_t all = shared.stations ? shared.stations->all : 0;
    if (all == 0) return {words::say("The stations come first."), theme.second_ink};
    return {words::fill(words::say("{measured} of {all} stations"),
                        {{"measured", std::to_string(measured)}, {"all", std::to_string(all)}}),
            theme.second_ink};
  }
  if (state.table->nothing_pinned) {
    return {shared.stop.target ? words::say("Nothing is pinned, so this is for your station alone.")
                               : words::say("Pin stations or pick one, under Stations."),
            theme.warning, Face::TextBold};
  }
  constexpr double kWorthSaying_percent = 2.0;
  if (state.chosen < state.table->columns.size() &&
      !state.table->columns[state.chosen].remarks.empty() &&
      state.table->columns[state.chosen].remarks.front().gain_percent >= kWorthSaying_percent) {
    const PlanColumn& column = state.table->columns[state.chosen];
    const PlanRemark& first = column.remarks.front();
    if (first.on_null) {
      return {words::on_null(first.station, first.interferer, heading_words(shared, column.bearing),
                             first.gain_percent, first.loses),
              theme.ink};
    }
    return {words::aimed_beside(first.station, first.interferer, first.gain_percent),
            theme.second_ink};
  }
  if (shared.findings.position_stale) {
    return {words::say("From the last position of the receiver"), theme.second_ink};
  }
  const bool proved = !shared.stations->plan || shared.stations->plan->fewest_proved;
  if (!proved) return {words::say("Fewer turns may be enough."), theme.second_ink};
  return {words::fill(words::say("Chances allow for aiming {degrees}° off"),
                      {{"degrees", fmt::format("{:.0f}", shared.findings.heading_error_deg)}}),
          theme.second_ink};
}

void draw_choices(Ui& ui, Rect rect, const PlanState& state) {
  const std::array options{ui::Option{"pinned", words::say("Pinned")},
                           ui::Option{"networks", words::say("Networks")},
                           ui::Option{"all", words::say("All")}};
  const auto touched =
      ui::segmented(ui, "plan for", rect, options, static_cast<std::size_t>(state.plan_for));
  if (touched) ui.emit(act::ChoosePlan{static_cast<PlanFor>(*touched)});
}

// Title, remark, choices and the way back; returns the room below.
Rect draw_plan_head(Ui& ui, const Shared& shared, const PlanState& state) {
  constexpr float kBack = 136.0f, kChoices = 444.0f;
  const ui::Theme& theme = ui.theme();
  Rect page = ui.screen().inset(ui::kMargin);
  page.top += kUnderMark;
  const Rect close{page.right - kBack, page.top, page.right, page.top + kPlanAct};
  ui.back_is("close sheet");
  if (ui.button("close sheet", close, words::say("Back"), ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::None});
  }
  const Remark remark = plan_remark(theme, shared, state);
  const float mark = close.left - kPlanGap - ui::kGuideMark;
  ui::guide_button(ui, Guide::Plan, {mark, page.top, mark + ui::kGuideMark, close.bottom});
  Rect choices{mark - kPlanGap - kChoices, page.top, mark - kPlanGap, close.bottom};
  float title_right = choices.left - kPlanGap, y = page.top + 52.0f;
  if (ui.portrait()) {
    title_right = mark - kPlanGap;
    // Below the remark, however many lines that takes.
    const float lines =
        static_cast<float>(ui.wrapped(remark.words, page.width(), remark.face).size());
    const float top = close.bottom + 26.0f + ui.line(30.0f, remark.face) * lines;
    choices = {page.left, top, page.right, top + kPlanAct};
  }
  draw_choices(ui, choices, state);
  const std::string title = plan_title(shared, state);
  const auto fits = [&](Face face) {
    return ui.canvas().text_width(title, face) <= title_right - page.left;
  };
  const Face face = fits(Face::Matter)     ? Face::Matter
                    : fits(Face::Cardinal) ? Face::Cardinal
                                           : Face::Value;
  ui::text_within(ui.canvas(), {page.left, y}, title_right - page.left, title, face, theme.ink);
  y = ui.portrait() ? close.bottom + 36.0f : page.top + 98.0f;
  const float room = page.width();
  const float bottom =
      ui.paragraph({page.left, y}, room, 30.0f, remark.words, remark.face, remark.color);
  return {page.left, ui.portrait() ? choices.bottom + kPlanGap : bottom - 12.0f, page.right,
          page.bottom};
}

std::string aim_words(const Shared& shared, Bearing<True> bearing) {
  const auto magnetic = on_compass_here(shared, bearing);
  return words::fill(
      magnetic ? words::say("Aim at {degrees} magnetic") : words::say("Aim at {degrees} true"),
      {{"degrees", magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(bearing)}});
}

// The acts, the next one under the thumb; returns their top.
float draw_plan_acts(Ui& ui, Rect page, const Shared& shared, const PlanState& state) {
  const bool any = state.table && state.chosen < state.table->columns.size();
  const PlanColumn* column = any ? &state.table->columns[state.chosen] : nullptr;
  const std::string number = std::to_string(state.chosen + 1);
  const bool two_rows = ui.portrait();
  const float lower = page.bottom - kPlanAct;
  const float upper = two_rows ? lower - kPlanGap - kPlanAct : lower;
  // In the order from the thumb: aim, scan, floor, paper.
  std::array<Rect, 4> slots;
  if (two_rows) {
    const float half = (page.width() - kPlanGap) / 2.0f;
    const Rect left{page.left, lower, page.left + 0.36f * page.width(), lower + kPlanAct};
    slots[0] = {left.right + kPlanGap, lower, page.right, lower + kPlanAct};
    slots[2] = left;
    slots[1] = {page.left, upper, page.left + half, upper + kPlanAct};
    slots[3] = {page.left + half + kPlanGap, upper, page.right, upper + kPlanAct};
  } else {
    constexpr std::array kShares{0.31f, 0.25f, 0.2f, 0.24f};
    const float room = page.width() - 3.0f * kPlanGap;
    float right = page.right;
    for (std::size_t i = 0; i < slots.size(); ++i) {
      const float width = kShares[i] * room;
      slots[i] = {right - width, lower, right, lower + kPlanAct};
      right -= width + kPlanGap;
    }
  }
  if (shared.settings.left_handed) {
    for (Rect& slot : slots) {
      const float left = page.left + page.right - slot.right;
      slot = {left, slot.top, left + slot.width(), slot.bottom};
    }
  }
  const std::string aim =
      column != nullptr ? aim_words(shared, column->bearing) : std::string(words::say("Aim"));
  const bool can_aim = column != nullptr && column->aim_at.has_value();
  const bool nothing = state.table && state.table->nothing_pinned && !shared.stop.target;
  const bool placed = shared.findings.position.has_value();
  if (nothing || !placed) {
    const std::string mend = placed ? words::say("Pick a station") : words::say("Set position");
    if (ui.button("find", slots[0], mend, ButtonLook::Filled)) {
      ui.emit(act::OpenSheet{Sheet::None});
      ui.emit(act::Show{placed ? Place::Stations : Place::Here});
    }
  } else if (ui.button("aim step " + number, slots[0], aim, ButtonLook::Filled, can_aim)) {
    ui.emit(act::AimTurn{*column->aim_at, column->bearing});
  }
  if (ui.button("scan step " + number, slots[1], words::say("Channels to scan"), ButtonLook::Plain,
                can_aim)) {
    ui.emit(act::ScanStep{state.chosen});
  }
  if (ui::slip(ui, "plan floor", slots[2], {},
               words::fill(words::say("{chance} % and up"),
                           {{"chance", fmt::format("{:.0f}", kPlanFloors[state.floor])}}))) {
    ui.emit(act::NextPlanFloor{});
  }
  if (ui.button("paper card", slots[3], words::say("Paper card"), ButtonLook::Plain,
                shared.findings.card.has_value())) {
    ui.emit(act::SavePaper{});
  }
  return upper;
}

}  // namespace

void draw_plan_sheet(Ui& ui, const Shared& shared, const PlanState& state) {
  const Rect below = draw_plan_head(ui, shared, state);
  const float acts = draw_plan_acts(ui, below, shared, state);
  const Rect room{below.left, below.top, below.right, acts - kPlanGap};
  if (state.table) {
    draw_plan_table(ui, room, shared, state);
  } else {
    draw_empty_table(ui, room);
  }
}

}  // namespace mastwise::screens
