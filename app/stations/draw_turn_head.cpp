#include "app/stations/draw_turn_head.hpp"

#include "app/shared/actions.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/mini_dial.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;
using words::fill;
using words::say;

struct Heading {
  std::string number, north;
  bool magnetic;
};

Heading heading_of(const PlanStep& step, const Shared& shared) {
  const auto magnetic = on_compass_here(shared, step.bearing);
  return {magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(step.bearing),
          magnetic ? say("magnetic") : say("true"), magnetic.has_value()};
}

std::string brings_words(const ListGroup& group, const PlanStep& step) {
  const std::size_t number = group.networks > 0 ? group.networks : step.brings.size();
  const bool networks = group.networks > 0;
  if (number == 1) return networks ? say("1 network") : say("1 station");
  return fill(networks ? say("{number} networks") : say("{number} stations"),
              {{"number", std::to_string(number)}});
}

ui::MiniDial dial_of(Point center, float radius, const PlanStep& step, const Shared& shared) {
  return {.center = center,
          .radius = radius,
          .nose = shared.findings.nose,
          .heading = step.bearing,
          .slack = step.slack};
}

void north_line(Ui& ui, Point middle, const Heading& heading) {
  const float width = ui.canvas().text_width(heading.north, Face::Text);
  const float left = middle.x - (width + 30.0f) / 2.0f;
  ui::kite(ui.canvas(), {left + 10.0f, middle.y - 9.0f}, 12.0f, ui.theme().ink, !heading.magnetic);
  ui.canvas().text({left + 30.0f, middle.y}, heading.north, Face::Text, ui.theme().second_ink);
}

void draw_tall(Ui& ui, Rect rect, const ListGroup& group, const PlanStep& step,
               const Shared& shared) {
  constexpr float kAct = 72.0f, kMargin = 16.0f;
  const Heading heading = heading_of(step, shared);
  const float x = rect.center().x;
  const float act = std::min(rect.bottom - kMargin - kAct, rect.top + 412.0f);
  const float radius = std::min(97.0f, (act - rect.top - 200.0f) / 2.0f);
  ui::draw_mini_dial(ui, dial_of({x, rect.top + radius + 28.0f}, radius, step, shared));
  const float below = rect.top + 2.0f * radius + 52.0f;
  ui.canvas().text({x, below + 62.0f}, heading.number, Face::Big, ui.theme().ink, Align::Center);
  north_line(ui, {x, below + 98.0f}, heading);
  ui.canvas().text({x, below + 134.0f}, brings_words(group, step), Face::Value, ui.theme().ink,
                   Align::Center);
  const std::string label = fill(say("Aim at {degrees}"), {{"degrees", heading.number}});
  const Rect button{rect.left + kMargin, act, rect.right - kMargin, act + kAct};
  if (ui.button("turn " + std::to_string(*group.turn), button, label, ui::ButtonLook::Filled)) {
    ui.emit(act::AimTurn{step.brings.front().key, step.bearing});
  }
}

// The whole head aims.
void draw_low(Ui& ui, Rect rect, const ListGroup& group, const PlanStep& step,
              const Shared& shared) {
  const Heading heading = heading_of(step, shared);
  const bool touched =
      ui::onward(ui, "turn " + std::to_string(*group.turn), rect.inset(4.0f), "stations");
  if (touched) ui.emit(act::AimTurn{step.brings.front().key, step.bearing});
  const float radius = std::clamp(rect.height() / 2.0f - 24.0f, 24.0f, 40.0f);
  const bool lies = rect.width() > 1.6f * kTurnHead;
  const float y = lies || rect.height() < 140.0f ? rect.center().y : rect.top + radius + 24.0f;
  ui::draw_mini_dial(ui, dial_of({rect.left + 20.0f + radius, y}, radius, step, shared));
  const float beside = rect.left + 2.0f * radius + 44.0f;
  ui.canvas().text({beside, y + 19.0f}, heading.number, Face::Second, ui.theme().ink);
  if (lies) {
    const float x = beside + 130.0f;
    ui::kite(ui.canvas(), {x + 10.0f, y}, 12.0f, ui.theme().ink, !heading.magnetic);
    const std::string words = ui::shortened(ui.canvas(), brings_words(group, step), Face::Text,
                                            rect.right - ui::kChevron - x - 30.0f);
    ui.canvas().text({x + 30.0f, y + 9.0f}, words, Face::Text, ui.theme().ink);
    return;
  }
  if (rect.height() < 140.0f) return;
  ui::kite(ui.canvas(), {rect.left + 28.0f, y + radius + 27.0f}, 12.0f, ui.theme().ink,
           !heading.magnetic);
  ui.canvas().text({rect.left + 48.0f, y + radius + 36.0f}, heading.north, Face::Text,
                   ui.theme().ink);
  if (rect.bottom < y + radius + 76.0f) return;
  ui.canvas().text({rect.left + 20.0f, y + radius + 70.0f}, brings_words(group, step),
                   Face::TextBold, ui.theme().ink);
}

}  // namespace

void draw_turn_head(Ui& ui, Rect rect, const ListGroup& group, const Shared& shared) {
  if (!group.turn) {
    ui.paragraph({rect.left + 20.0f, rect.top + 38.0f}, rect.width() - 36.0f, 30.0f,
                 say("Each at its own heading"), Face::TextBold, ui.theme().ink);
    return;
  }
  const PlanStep& step = shared.stations->turns[*group.turn];
  constexpr float kTall = 400.0f;
  if (rect.height() >= kTall) {
    draw_tall(ui, rect, group, step, shared);
  } else {
    draw_low(ui, rect, group, step, shared);
  }
}

}  // namespace mastwise::screens
