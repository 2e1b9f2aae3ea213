#include "app/screens/screens.hpp"

#include "app/safety/prompt_layout.hpp"
#include "app/safety/update.hpp"

#include <fmt/format.h>

// The screens that cover all others for safety.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kAct = 96.0f;

void draw_cautions(Ui& ui, Rect area, const safety::Prompt& prompt) {
  constexpr float kLine = 29.0f, kAfter = 8.0f;
  const ui::Theme& theme = ui.theme();
  const float top = ui.begin_page("cautions", area);
  float y = ui.paragraph({area.left, top + 28.0f}, area.width(), 40.0f, prompt.title,
                         Face::Cardinal, theme.warning);
  y += 2.0f;
  for (const safety::Caution& caution : prompt.cautions) {
    y = ui.paragraph({area.left, y}, area.width(), kLine, caution.text, Face::PromptBold,
                     theme.ink);
    y = ui.paragraph({area.left, y}, area.width(), kLine, caution.source, Face::Prompt,
                     theme.second_ink);
    y += kAfter;
  }
  y = ui.paragraph({area.left, y}, area.width(), kLine, prompt.deference, Face::Prompt, theme.ink);
  ui.end_page("cautions", top, y - kLine + 8.0f);
}

int seconds_left(const Model& model) {
  using Seconds = std::chrono::duration<double>;
  return static_cast<int>(std::ceil(Seconds(model.safety.quiet_until - model.now).count()));
}

void draw_alarm(Ui& ui, const Model& model) {
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
  if (alarm_is_quiet(model)) {
    ui.canvas().text({center.x, act.center().y},
                     fmt::format("Quieter for {} s", seconds_left(model)), Face::Cardinal,
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

void draw_prompt(Ui& ui, const Model& model) {
  const Asking asking = model.safety.asking;
  const safety::Prompt& prompt = prompt_of(asking);
  const auto opened_at = ui.begin_prompt(std::string(prompt.title));
  const PromptLayout layout =
      prompt_layout(ui.screen().inset(1.5f * ui::kMargin), opened_at, model.settings.left_handed);
  draw_cautions(ui, layout.text, prompt);
  if (ui.button("refuse", layout.refuse, prompt.refuse, ButtonLook::Plain)) {
    ui.emit(act::RefuseAsked{});
  }
  if (ui.hold_button("confirm", layout.confirm, prompt.accept)) ui.emit(act::ConfirmAsked{});
}

void draw_drive_face(Ui& ui, const Model& model) {
  if (model.safety.drive == safety::Drive::Alarm) {
    draw_alarm(ui, model);
  } else {
    draw_underway(ui);
  }
}

}  // namespace mastwise::screens
