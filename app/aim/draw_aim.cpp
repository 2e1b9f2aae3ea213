#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/draw_answer.hpp"
#include "app/aim/draw_dial.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/layout.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using words::say;

constexpr float kPanelWidth = 424.0f, kAimAct = 80.0f, kActGap = 16.0f;

void nose_picture(ui::Canvas& canvas, Rect room, ui::Color color) {
  const Point c = room.center();
  const std::array body{Point{c.x - 8.0f, c.y + 17.0f}, Point{c.x - 8.0f, c.y - 9.0f},
                        Point{c.x, c.y - 17.0f}, Point{c.x + 8.0f, c.y - 9.0f},
                        Point{c.x + 8.0f, c.y + 17.0f}};
  canvas.polyline(body, color, 3.0f, true);
}

void north_picture(ui::Canvas& canvas, Rect room, ui::Color color) {
  ui::kite(canvas, room.center(), 17.0f, color, true);
}

void facing_picture(ui::Canvas& canvas, Rect room, ui::Color color) {
  const Point c = room.center();
  canvas.line({c.x, c.y + 17.0f}, {c.x, c.y - 4.0f}, color, 4.0f);
  const std::array head{Point{c.x, c.y - 18.0f}, Point{c.x + 9.0f, c.y - 2.0f},
                        Point{c.x - 9.0f, c.y - 2.0f}};
  canvas.polygon(head, color);
}

// What is at the top of the dial. Without the nose or a sensor that is not offered.
void draw_dial_up(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  std::vector<ui::Option> options;
  std::vector<DialUp> ups;
  const auto offer = [&](DialUp up, ui::Option option) {
    ups.push_back(up);
    options.push_back(std::move(option));
  };
  if (shared.findings.nose) offer(DialUp::Nose, {"nose", say("Nose"), nose_picture});
  offer(DialUp::TrueNorth, {"north", say("North"), north_picture});
  if (shared.findings.facing) offer(DialUp::Facing, {"sensor", say("Sensor"), facing_picture});
  if (options.size() < 2) return;
  constexpr float kOption = 92.0f;
  const float width = kOption * static_cast<float>(options.size());
  const Rect rect{area.right - width, area.bottom - kAimAct, area.right, area.bottom};
  std::optional<std::size_t> chosen;
  for (std::size_t i = 0; i < ups.size(); ++i) {
    if (ups[i] == aim.dial_up) chosen = i;
  }
  const auto touched = ui::segmented(ui, "dial up", rect, options, chosen);
  if (touched) ui.emit(act::ChooseDialUp{ups[*touched]});
}

void draw_dial_half(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  draw_aim_dial(ui, area, kAimAct + kActGap, shared, aim);
  const Rect plan{area.left, area.bottom - kAimAct, area.left + 112.0f, area.bottom};
  if (ui.button("plan", plan, say("Plan"), ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Plan});
  }
  if (const NullHint* hint = null_here(shared); hint != nullptr && !shared.stop.turn) {
    const float left = plan.right + kActGap;
    const std::string label =
        words::fill(say("Null +{gain}"), {{"gain", fmt::format("{:.0f}", hint->gain_percent)}});
    if (ui.button("aim null", {left, plan.top, left + 140.0f, plan.bottom}, label,
                  ui::ButtonLook::Plain)) {
      ui.emit(act::AimTurn{key_of(*shared.stop.target), hint->heading});
    }
  }
  draw_dial_up(ui, area, shared, aim);
}

// The next act at the right, under the thumb, or at the left for the left hand.
void draw_acts(Ui& ui, Rect area, const Shared& shared) {
  const bool raised = shared.findings.antenna_up;
  struct Act {
    const char* name;
    const char* label;
    Action action;
    ui::ButtonLook look = ui::ButtonLook::Plain;
    float share = 1.0f;
  };
  std::vector<Act> acts{{"roof", say("Roof"), act::GoToRoof{}},
                        {"peak", say("Peak"), act::Show{Place::Peak}}};
  if (raised) {
    acts.push_back({"weather", say("Wind?"), act::Ask{Asking::Weather}});
    acts.push_back({"lower", say("Lower"), act::Ask{Asking::Drive}, ui::ButtonLook::Filled, 1.5f});
  } else {
    acts.push_back({"raise", say("Raise"), act::Ask{Asking::Raise}, ui::ButtonLook::Filled, 2.0f});
  }
  if (shared.settings.left_handed) std::reverse(acts.begin(), acts.end());
  float shares = 0.0f;
  for (const Act& one : acts) shares += one.share;
  const float room = area.width() - kActGap * static_cast<float>(acts.size() - 1);
  float left = area.left;
  for (const Act& one : acts) {
    const float width = room * one.share / shares;
    if (ui.button(one.name, {left, area.bottom - kAimAct, left + width, area.bottom}, one.label,
                  one.look)) {
      ui.emit(one.action);
    }
    left += width + kActGap;
  }
}

}  // namespace

void draw_aim(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  Rect dial = area, panel = area;
  if (ui.portrait()) {
    constexpr float kAnswerHeight = 424.0f;
    dial.bottom = area.bottom - kAnswerHeight;
    panel.top = dial.bottom + ui::kMargin;
  } else {
    const bool left = shared.settings.left_handed;
    panel.left = left ? area.left : area.right - kPanelWidth;
    panel.right = left ? area.left + kPanelWidth : area.right;
    (left ? dial.left : dial.right) =
        left ? panel.right + 2.0f * ui::kMargin : panel.left - 2.0f * ui::kMargin;
    const float rule = left ? panel.right + ui::kMargin : panel.left - ui::kMargin;
    ui.canvas().line({rule, area.top - ui::kMargin}, {rule, area.bottom}, ui.theme().rule, 2.0f);
  }
  draw_dial_half(ui, dial, shared, aim);
  draw_answer(ui, {panel.left, panel.top, panel.right, panel.bottom - kAimAct - kActGap}, shared,
              aim);
  draw_acts(ui, panel, shared);
}

}  // namespace mastwise::screens
