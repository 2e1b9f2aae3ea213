
#include "app/safety/draw.hpp"
#include "app/safety/draw_prompt_layout.hpp"
#include "app/safety/update.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// The screens that cover all others for safety.
namespace mastwise {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;
using ui::Point;
using ui::Rect;

constexpr float kAct = 96.0f;

// How large the cautions are written: as large as fits.
struct Script {
  Face face;
  float line;
};
constexpr std::array kScripts{Script{Face::Cardinal, 42.0f}, Script{Face::Value, 35.0f},
                              Script{Face::PromptBold, 29.0f}};
constexpr float kSource = 29.0f, kAfter = 10.0f, kTitle = 58.0f;

float height_of(const Ui& ui, float width, const safety::Prompt& prompt, const Script& script) {
  const auto lines = [&](std::string_view words, Face face) {
    return static_cast<float>(ui.wrapped(words, width, face).size());
  };
  float height = kTitle + kSource * lines(prompt.deference, Face::Prompt);
  for (const safety::Caution& caution : prompt.cautions) {
    height += script.line * lines(caution.text, script.face);
    height += kSource * lines(caution.source, Face::Prompt) + kAfter;
  }
  return height;
}

void draw_cautions(Ui& ui, Rect area, const safety::Prompt& prompt) {
  const auto fits = std::find_if(kScripts.begin(), kScripts.end(), [&](const Script& script) {
    return height_of(ui, area.width(), prompt, script) <= area.height();
  });
  const Script& script = fits == kScripts.end() ? kScripts.back() : *fits;
  const ui::Theme& theme = ui.theme();
  const float top = ui.begin_page("cautions", area);
  const bool wide = ui.canvas().text_width(prompt.title, Face::Second) <= area.width();
  ui.canvas().text({area.left, top + 40.0f}, prompt.title, wide ? Face::Second : Face::Cardinal,
                   theme.warning);
  float y = top + kTitle + 0.72f * script.line;
  for (const safety::Caution& caution : prompt.cautions) {
    y = ui.paragraph({area.left, y}, area.width(), script.line, caution.text, script.face,
                     theme.ink);
    y += kSource - script.line;
    y = ui.paragraph({area.left, y}, area.width(), kSource, caution.source, Face::Prompt,
                     theme.second_ink);
    y += kAfter + script.line - kSource;
  }
  y += kSource - script.line;
  y = ui.paragraph({area.left, y}, area.width(), kSource, prompt.deference, Face::Prompt,
                   theme.ink);
  ui.end_page("cautions", top, y - kSource + 8.0f);
}

int seconds_left(const SafetyState& state, Monotonic now) {
  using Seconds = std::chrono::duration<double>;
  return static_cast<int>(std::ceil(Seconds(state.quiet_until - now).count()));
}

void draw_alarm(Ui& ui, const SafetyState& state, Monotonic now) {
  const ui::Theme& theme = ui.theme();
  const Rect page = ui.screen();
  const Point center = page.center();
  const float width = page.width() - 4.0f * ui::kMargin;
  ui.canvas().fill(page, theme.warning);
  float y = ui.paragraph({center.x, center.y - 120.0f}, width, 80.0f, "ANTENNA IS UP", Face::Big,
                         theme.on_warning, Align::Center);
  ui.paragraph({center.x, y}, width, 44.0f, "Stop where it is safe. Then lower it.", Face::Cardinal,
               theme.on_warning, Align::Center);
  const Rect act{center.x - 240.0f, center.y + 90.0f, center.x + 240.0f, center.y + 90.0f + kAct};
  if (alarm_is_quiet(state, now)) {
    ui.canvas().text({center.x, act.center().y},
                     fmt::format("Quieter for {} s", seconds_left(state, now)), Face::Cardinal,
                     theme.on_warning, Align::Center);
  } else if (ui.button("quiet alarm", act, "Quieter for 30 s", ButtonLook::Plain)) {
    ui.emit(act::QuietAlarm{});
  }
}

void draw_underway(Ui& ui) {
  const ui::Color ink = ui.theme().ink;
  const Point center = ui.screen().center();
  ui.canvas().text({center.x, center.y - 90.0f}, "Under way", Face::Second, ink, Align::Center);
  ui.canvas().text({center.x, center.y - 20.0f}, "The antenna is marked down.", Face::Value, ink,
                   Align::Center);
  ui.canvas().text({center.x, center.y + 30.0f}, "All screens come back when you stop.",
                   Face::Prompt, ink, Align::Center);
}

}  // namespace

void draw_prompt(Ui& ui, const SafetyState& state, bool left_handed) {
  const safety::Prompt& prompt = prompt_of(state.asking);
  const auto opened_at = ui.begin_prompt(std::string(prompt.title));
  const PromptLayout layout =
      prompt_layout(ui.screen().inset(1.5f * ui::kMargin), opened_at, left_handed);
  draw_cautions(ui, layout.text, prompt);
  if (ui.button("refuse", layout.refuse, prompt.refuse, ButtonLook::Plain)) {
    ui.emit(act::RefuseAsked{});
  }
  if (ui.hold_button("confirm", layout.confirm, prompt.accept)) ui.emit(act::ConfirmAsked{});
}

void draw_drive_face(Ui& ui, const SafetyState& state, Monotonic now) {
  if (state.drive == safety::Drive::Alarm) {
    draw_alarm(ui, state, now);
  } else {
    draw_underway(ui);
  }
}

}  // namespace mastwise
