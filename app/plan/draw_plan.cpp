#include "app/plan/actions.hpp"
#include "app/plan/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

// The turn plan as steps: the heading, the stations it brings in and those it leaves out.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

struct PlanChoice {
  PlanFor plan_for;
  const char* label;
};
constexpr std::array kChoices{PlanChoice{PlanFor::Pinned, "All pinned"},
                              PlanChoice{PlanFor::Networks, "Every network"},
                              PlanChoice{PlanFor::All, "All that is likely"}};

std::string stations_words(const std::vector<PlanStation>& stations) {
  std::string words;
  for (const PlanStation& station : stations) {
    if (!words.empty()) words += ",  ";
    words += station.title + " " + words::chance_number(station.chance_percent);
  }
  return words;
}

// Draws the steps from the top down on a scrolling page.
class Steps {
 public:
  Steps(Ui& ui, Rect page, const Shared& shared, const PlanState& plan)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        shared_(shared),
        plan_(plan),
        page_(page),
        y_(page.top) {}

  float bottom() const { return y_; }
  void paper_card();
  void step(std::size_t index, const PlanStep& step);
  void words(const std::string& text, ui::Color color, Face face = Face::Word) {
    y_ = ui_.paragraph({page_.left, y_ + 30.0f}, page_.width(), 28.0f, text, face, color) - 28.0f;
  }

 private:
  std::string heading(Bearing<True> bearing) const {
    const auto magnetic = on_compass_here(shared_, bearing);
    if (!magnetic) return words::whole_degrees(bearing) + " true";
    return words::whole_degrees(*magnetic) + " magnetic";
  }

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  const Shared& shared_;
  const PlanState& plan_;
  Rect page_;
  float y_;
};

void Steps::step(std::size_t index, const PlanStep& step) {
  constexpr float kAct = 136.0f, kButton = Column::kButton, kGap = Column::kGap;
  const float top = y_ + 12.0f;
  canvas_.text({page_.left, top + 46.0f}, std::to_string(index + 1), Face::Second,
               theme_.second_ink);
  const float text = page_.left + 64.0f, right = page_.right - 2.0f * (kAct + kGap);
  canvas_.text({text, top + 34.0f}, heading(step.bearing), Face::Cardinal, theme_.ink);
  canvas_.text({text, top + 64.0f},
               words::whole_degrees(step.bearing) + " true. " + words::slack(step.slack),
               Face::Small, theme_.second_ink);
  const std::string number = std::to_string(index + 1);
  if (ui_.button("scan step " + number, {right + kGap, top, right + kGap + kAct, top + kButton},
                 "Channels", ButtonLook::Plain)) {
    ui_.emit(act::ScanStep{index});
  }
  if (ui_.button("aim step " + number, {page_.right - kAct, top, page_.right, top + kButton}, "Aim",
                 ButtonLook::Filled, !step.brings.empty())) {
    ui_.emit(act::SelectStation{step.brings.front().key});
  }
  y_ = top + kButton - 4.0f;
  page_.left = text;
  words("Brings  " + stations_words(step.brings), theme_.ink, Face::WordBold);
  if (!step.loses.empty()) words("Leaves out  " + stations_words(step.loses), theme_.second_ink);
  for (const PlanRemark& remark : step.remarks) {
    words(words::aimed_beside(remark.station, remark.interferer, remark.gain_percent), theme_.ink);
  }
  page_.left = text - 64.0f;
  y_ += 24.0f;
  canvas_.line({page_.left, y_}, {page_.right, y_}, theme_.rule, 1.5f);
}

std::string plan_state(const Shared& shared) {
  if (!shared.stations || !shared.stations->plan) {
    return shared.findings.position ? "Computing the paths."
                                    : "Position unknown. Set it under Here.";
  }
  const Plan& plan = *shared.stations->plan;
  if (plan.steps.empty()) return "No wanted station is likely here at any heading.";
  if (plan.steps.size() == 1) return "One heading is enough.";
  return fmt::format("{} headings{}", plan.steps.size(),
                     plan.fewest_proved ? "; fewer are not enough" : "; fewer may be enough");
}

// The plan's state, the paper card with the plan, and the saved file.
void Steps::paper_card() {
  constexpr float kAct = 176.0f, kBelowChoices = 8.0f;
  const float top = y_ += kBelowChoices;
  const Rect act{page_.right - kAct, top, page_.right, top + Column::kButton};
  if (ui_.button("paper card", act, "Paper card", ButtonLook::Plain,
                 shared_.findings.card.has_value())) {
    ui_.emit(act::SavePaper{});
  }
  const float right = std::exchange(page_.right, act.left - Column::kGap);
  words(plan_state(shared_), theme_.second_ink);
  if (!shared_.trouble.empty()) {
    words(words::sentence(shared_.trouble), theme_.warning, Face::WordBold);
  } else if (!plan_.paper_file.empty()) {
    const std::size_t name = plan_.paper_file.rfind('/') + 1;
    words(fmt::format("Saved as {} in folder {}", plan_.paper_file.substr(name),
                      plan_.paper_file.substr(0, name)),
          theme_.accent, Face::WordBold);
  }
  page_.right = right;
  y_ = std::max(y_, act.bottom) + 4.0f;
}

}  // namespace

void draw_plan_sheet(Ui& ui, const Shared& shared, const PlanState& plan) {
  constexpr float kGap = Column::kGap, kButton = Column::kButton;
  Rect page = draw_sheet_head(ui, "Turn plan");
  constexpr float kFloor = 188.0f;
  const Rect floor{page.right - kFloor, page.top, page.right, page.top + kButton};
  if (ui.button("plan floor", floor, fmt::format("{:.0f} % and up", kPlanFloors[plan.floor]),
                ButtonLook::Plain)) {
    ui.emit(act::NextPlanFloor{});
  }
  const float third = (page.width() - kFloor - 3.0f * kGap) / 3.0f;
  for (std::size_t i = 0; i < kChoices.size(); ++i) {
    const float left = page.left + static_cast<float>(i) * (third + kGap);
    const bool chosen = plan.plan_for == kChoices[i].plan_for;
    if (ui.button(std::string("plan for ") + kChoices[i].label,
                  {left, page.top, left + third, page.top + kButton}, kChoices[i].label,
                  chosen ? ButtonLook::Filled : ButtonLook::Plain)) {
      ui.emit(act::ChoosePlan{kChoices[i].plan_for});
    }
  }
  page.top += kButton + 12.0f;
  const Rect view = page;
  Rect scrolled = page;
  scrolled.top = ui.begin_page("plan", view);
  Steps steps(ui, scrolled, shared, plan);
  steps.paper_card();
  if (shared.stations && shared.stations->plan) {
    const Plan& plan = *shared.stations->plan;
    for (std::size_t i = 0; i < plan.steps.size(); ++i) steps.step(i, plan.steps[i]);
    for (const NotInPlan& out : plan.out) {
      steps.words("At no heading: " + words::at_best(out.name, out.best_percent), ui.theme().ink);
    }
  }
  ui.end_page("plan", scrolled.top, steps.bottom() + 16.0f);
}

}  // namespace mastwise::screens
