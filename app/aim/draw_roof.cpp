#include "app/aim/draw.hpp"
#include "app/aim/draw_dial.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <fmt/format.h>

// For work on the roof at dusk: one dial, three facts, targets of 15 mm.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kAct = 15.0f * ui::kUnitsPerMm + 1.0f;

// The heading as a compass shows it.
float draw_heading(Ui& ui, Rect area, const Shared& shared) {
  ui::Canvas& canvas = ui.canvas();
  float y = area.top + 24.0f;
  canvas.text({area.left, y}, "ON YOUR COMPASS", Face::WordBold, ui.theme().second_ink);
  y += 106.0f;
  const AimCard& card = *shared.findings.card;
  const std::string number = words::whole_degrees(card.bearing_magnetic);
  canvas.text({area.left, y}, number, Face::Answer, ui.theme().ink);
  const float beside = area.left + canvas.text_width(number, Face::Answer) + 20.0f;
  canvas.text({beside, y - 34.0f}, shared.findings.corrected ? "corrected" : "magnetic",
              Face::Value, ui.theme().ink);
  canvas.text({beside, y}, words::whole_degrees(card.bearing_true) + " true", Face::Value,
              ui.theme().second_ink);
  return y + 30.0f;
}

// The turn, or the angle from the nose if no sensor turns with the antenna.
float draw_turn(Ui& ui, Rect area, float y, const Shared& shared) {
  ui::Canvas& canvas = ui.canvas();
  const Findings& found = shared.findings;
  canvas.line({area.left, y}, {area.right, y}, ui.theme().rule, 2.0f);
  y += 60.0f;
  if (found.turn) {
    canvas.text({area.left, y}, words::turn(*found.turn), Face::Cardinal, ui.theme().ink);
    const std::string size = words::whole_degrees(found.turn->size_deg());
    canvas.text({area.right, y + 8.0f}, size, Face::Big, ui.theme().accent, Align::Right);
    return y + 42.0f;
  }
  if (found.card->rig_angle) {
    canvas.text({area.left, y - 8.0f}, words::from_nose(*found.card->rig_angle), Face::Second,
                ui.theme().ink);
    return ui.paragraph({area.left, y + 32.0f}, area.width(), 28.0f,
                        words::sentence(words::rig_sides(*found.card->rig_angle)), Face::Word,
                        ui.theme().second_ink) +
           6.0f;
  }
  canvas.text({area.left, y}, "Turn by compass", Face::Cardinal, ui.theme().ink);
  return y + 42.0f;
}

void draw_slack(Ui& ui, Rect area, float y, const Shared& shared) {
  ui::Canvas& canvas = ui.canvas();
  canvas.line({area.left, y}, {area.right, y}, ui.theme().rule, 2.0f);
  const std::string title = words::title(*shared.stop.target);
  const auto& outlook = shared.findings.outlook;
  canvas.text({area.left, y + 42.0f}, title, Face::Value, ui.theme().ink);
  if (outlook) {
    canvas.text({area.right, y + 42.0f},
                words::chance_number(*outlook) + " " + words::chance_word(*outlook), Face::Value,
                ui.theme().ink, Align::Right);
  }
  ui.paragraph({area.left, y + 78.0f}, area.width(), 28.0f, words::slack(shared.findings.slack),
               Face::Word, ui.theme().second_ink);
}

void draw_roof_acts(Ui& ui, Rect area, const Shared& shared) {
  constexpr float kGap = 16.0f;
  const bool raised = shared.findings.antenna_up;
  const int count = raised ? 3 : 2;
  const float width =
      (area.width() - kGap * static_cast<float>(count - 1)) / static_cast<float>(count);
  const auto slot = [&](int index) {
    const float left = area.left + static_cast<float>(index) * (width + kGap);
    return Rect{left, area.bottom - kAct, left + width, area.bottom};
  };
  if (ui.button("leave roof", slot(0), "Back", ButtonLook::Filled)) ui.emit(act::LeaveRoof{});
  if (ui.button("tone", slot(1), shared.settings.tone ? "Tone on" : "Tone off",
                ButtonLook::Plain)) {
    ui.emit(act::NextSetting{"tone"});
  }
  if (raised && ui.button("weather", slot(2), "Wind?", ButtonLook::Plain)) {
    ui.emit(act::Ask{Asking::Weather});
  }
}

}  // namespace

void draw_roof(Ui& ui, const Shared& shared, const AimState& aim) {
  const Rect page = ui.screen().inset(ui::kMargin);
  Rect dial = page, facts = page;
  if (ui.portrait()) {
    dial.bottom = page.top + page.width();
    facts.top = dial.bottom + ui::kMargin;
  } else {
    constexpr float kFacts = 456.0f;
    facts.left = page.right - kFacts;
    dial.right = facts.left - ui::kMargin;
    if (shared.settings.left_handed) {
      facts = {page.left, page.top, page.left + kFacts, page.bottom};
      dial = {facts.right + ui::kMargin, page.top, page.right, page.bottom};
    }
  }
  draw_aim_dial(ui, dial, 0.0f, shared, aim);
  draw_roof_acts(ui, facts, shared);
  if (!shared.findings.card) {
    ui.paragraph({facts.left, facts.top + 30.0f}, facts.width(), 36.0f,
                 "Choose a station and set the position.", Face::Value, ui.theme().ink);
    return;
  }
  const float below = draw_heading(ui, facts, shared);
  draw_slack(ui, facts, draw_turn(ui, facts, below, shared), shared);
}

}  // namespace mastwise::screens
