#include "app/screens/screens.hpp"
#include "app/ui/layout.hpp"
#include "core/safety/prompts.hpp"

// The screens that cover all others for safety.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kAct = 96.0f;

const safety::Prompt& prompt_of(Asking asking) {
  switch (asking) {
    case Asking::Roof:
      return safety::before_roof();
    case Asking::Weather:
      return safety::weather();
    case Asking::Drive:
      return safety::before_driving();
    case Asking::Raise:
    case Asking::Nothing:
      break;
  }
  return safety::before_raising();
}

}  // namespace

void draw_prompt(Ui& ui, const Model& model) {
  const safety::Prompt& prompt = prompt_of(model.asking);
  const ui::Theme& theme = ui.theme();
  const Rect page = ui.screen().inset(2.0f * ui::kMargin);
  float y = page.top + 24.0f;
  ui.canvas().text({page.left, y}, prompt.title, Face::Cardinal, theme.warning);
  y += 46.0f;
  for (const safety::Caution& caution : prompt.cautions) {
    y = ui.paragraph({page.left, y}, page.width(), 28.0f, caution.text, Face::WordBold, theme.ink);
    ui.canvas().text({page.left, y - 3.0f}, caution.source, Face::Small, theme.second_ink);
    y += 33.0f;
  }
  ui.paragraph({page.left, y}, page.width(), 28.0f, prompt.deference, Face::Word, theme.ink);

  const float middle = page.center().x, top = page.bottom - kAct;
  const Rect refuse{page.left, top, middle - 12.0f, page.bottom};
  const Rect accept{middle + 12.0f, top, page.right, page.bottom};
  if (ui.button("refuse", refuse, prompt.refuse, ButtonLook::Plain)) ui.emit(act::RefuseAsked{});
  if (ui.button("confirm", accept, prompt.accept, ButtonLook::Warning)) {
    ui.emit(act::ConfirmAsked{});
  }
}

void draw_drive_face(Ui& ui, const Model& model) {
  const bool alarm = model.findings.drive == safety::Drive::Alarm;
  const ui::Theme& theme = ui.theme();
  const Rect page = ui.screen();
  if (alarm) ui.canvas().fill(page, theme.warning);
  const ui::Color ink = alarm ? theme.on_warning : theme.ink;
  const Point center = page.center();
  ui.canvas().text({center.x, center.y - 90.0f}, alarm ? "ANTENNA IS UP" : "Under way",
                   alarm ? Face::Big : Face::Second, ink, Align::Center);
  ui.canvas().text(
      {center.x, center.y - 20.0f},
      alarm ? "Stop where it is safe. Lower the antenna." : "The antenna is marked down.",
      Face::Value, ink, Align::Center);
  if (!alarm) {
    ui.canvas().text({center.x, center.y + 30.0f}, "All screens come back when you stop.",
                     Face::Word, ink, Align::Center);
    return;
  }
  const Rect act{center.x - 240.0f, center.y + 60.0f, center.x + 240.0f, center.y + 60.0f + kAct};
  if (ui.button("antenna is down", act, "It is down now", ButtonLook::Plain)) {
    ui.emit(act::AntennaIsDown{});
  }
}

}  // namespace mastwise::screens
