#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/draw_dial.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

constexpr float kPanelWidth = 424.0f, kActHeight = 88.0f;

const char* dial_up_label(const Shared& shared, const AimState& aim) {
  switch (aim.dial_up) {
    case DialUp::TrueNorth:
      return "North up";
    case DialUp::Nose:
      return shared.findings.nose ? "Nose up" : "Nose unknown";
    case DialUp::Facing:
      return shared.findings.facing ? "Facing up" : "No sensor";
  }
  return "";
}

void draw_title(Ui& ui, Rect area, const Shared& shared) {
  if (!shared.stop.target) return;
  const Station& station = *shared.stop.target;
  const ui::Theme& theme = ui.theme();
  ui.canvas().text({area.left, area.top + 26.0f}, words::title(station), Face::Cardinal, theme.ink);
  ui.canvas().text({area.left, area.top + 58.0f}, words::carries(station), Face::Word,
                   theme.second_ink);
  ui.canvas().text({area.right, area.top + 26.0f},
                   fmt::format("RF {}", to_text(station.rf_channel)), Face::Value, theme.ink,
                   Align::Right);
  if (station.polarization != Polarization::unknown) {
    ui.canvas().text({area.right, area.top + 58.0f}, std::string(to_text(station.polarization)),
                     Face::Word, theme.second_ink, Align::Right);
  }
}

void draw_dial_half(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  draw_title(ui, area, shared);
  // The title fills the corners beside the round dial.
  constexpr float kTitle = 30.0f, kAct = 68.0f;
  draw_aim_dial(ui, {area.left - 20.0f, area.top + kTitle, area.right + 20.0f, area.bottom}, shared,
                aim);
  const Rect turn{area.right - 128.0f, area.bottom - kAct, area.right, area.bottom};
  if (ui.button("turn dial", turn, dial_up_label(shared, aim), ui::ButtonLook::Plain)) {
    ui.emit(act::TurnDial{});
  }
  const Rect plan{area.left, area.bottom - kAct, area.left + 112.0f, area.bottom};
  if (ui.button("plan", plan, "Plan", ui::ButtonLook::Plain)) ui.emit(act::OpenSheet{Sheet::Plan});
}

// Draws the answer from the top down; keeps the next free baseline.
class AnswerPanel {
 public:
  AnswerPanel(Ui& ui, Rect area, const Shared& shared)
      : ui_(ui), canvas_(ui.canvas()), theme_(ui.theme()), area_(area), shared_(shared) {}

  void draw();
  void draw_nothing();

 private:
  void rule() {
    canvas_.line({area_.left, y_}, {area_.right, y_}, theme_.rule, 2.0f);
    y_ += 34.0f;
  }
  void pair(const char* label, const std::string& value) {
    canvas_.text({area_.left, y_}, label, Face::Word, theme_.second_ink);
    canvas_.text({area_.right, y_}, value, Face::Value, theme_.ink, Align::Right);
    y_ += 38.0f;
  }
  void warn(const std::string& text) {
    y_ = ui_.paragraph({area_.left, y_}, area_.width(), 26.0f, text, Face::SmallBold,
                       theme_.warning);
  }
  void answer(const AimCard& card);
  void doubts(const AimCard& card);
  void chance();
  void live_turn();

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  float y_ = 0.0f;
};

void AnswerPanel::answer(const AimCard& card) {
  y_ = area_.top + 24.0f;
  const float top = y_;
  canvas_.text({area_.left, y_}, "ON YOUR COMPASS", Face::WordBold, theme_.second_ink);
  y_ += 108.0f;
  const std::string number = words::whole_degrees(card.bearing_magnetic);
  canvas_.text({area_.left, y_}, number, Face::Answer, theme_.ink);
  const float beside = area_.left + canvas_.text_width(number, Face::Answer) + 20.0f;
  canvas_.text({beside, y_ - 76.0f}, shared_.findings.corrected ? "corrected" : "magnetic",
               Face::Word, theme_.second_ink);
  canvas_.text({beside, y_ - 46.0f},
               fmt::format("± {:.0f}° when aiming", std::ceil(shared_.findings.heading_error_deg)),
               Face::Word, theme_.second_ink);
  canvas_.text({beside, y_ - 16.0f},
               words::distance(card.distance_m, shared_.settings.miles) + " away", Face::Word,
               theme_.second_ink);
  y_ += 24.0f;
  rule();
  pair("On the map", words::whole_degrees(card.bearing_true) + " true");
  if (card.rig_angle) {
    pair("From the nose", words::from_nose(*card.rig_angle));
    y_ = ui_.paragraph({area_.left, y_ - 4.0f}, area_.width(), 30.0f,
                       words::sentence(words::rig_sides(*card.rig_angle)), Face::Word,
                       theme_.second_ink) +
         4.0f;
  } else {
    pair("From the nose", "unknown");
  }
  // A touch shows all ways to point.
  if (ui_.touchable("ways", {area_.left, top, area_.right, y_ - 24.0f})) {
    ui_.emit(act::OpenSheet{Sheet::Ways});
  }
}

void AnswerPanel::doubts(const AimCard& card) {
  const Findings& found = shared_.findings;
  const bool miles = shared_.settings.miles;
  if (found.compass_check) warn(words::compass_check(*found.compass_check, found.corrected));
  if (found.moved_m) warn(words::sentence(words::rig_moved(*found.moved_m, miles)));
  if (shared_.findings.position_stale) {
    warn("The receiver is silent: this uses the rig's last position.");
  }
  if (card.field.zone == MagneticField::Zone::Blackout) {
    warn("Do not trust a compass so near the magnetic pole.");
  } else if (card.field.zone == MagneticField::Zone::Caution) {
    warn("Near the magnetic pole, a compass is slow and uncertain.");
  }
  if (card.field.beyond_model_end) {
    warn("The magnetic model ended on 31 December 2029: the compass number may be off.");
  }
}

// The chance and the costliest reasons; a touch shows the path.
void AnswerPanel::chance() {
  if (!shared_.findings.outlook) return;
  const reception::Outlook& outlook = *shared_.findings.outlook;
  const float top = y_ - 14.0f;
  y_ += 2.0f;
  rule();
  y_ += 28.0f;
  const std::string number = words::chance_number(outlook);
  canvas_.text({area_.left, y_}, number, Face::Second, theme_.ink);
  const float beside =
      area_.left + (number.empty() ? 0.0f : canvas_.text_width(number, Face::Second) + 16.0f);
  canvas_.text({beside, y_ - 30.0f}, words::chance_word(outlook), Face::Value, theme_.ink);
  if (outlook.chance_percent) {
    canvas_.text({beside, y_}, words::evening(), Face::Word, theme_.second_ink);
  }
  y_ += 18.0f;
  const bool turning = shared_.findings.turn.has_value();
  if (outlook.chance_percent && !turning) {
    ui::draw_chance_mark(ui_, {area_.left, y_, area_.right, y_ + 20.0f},
                         reception::chance_word(*outlook.chance_percent));
    y_ += 20.0f;
  }
  y_ += 30.0f;
  // As many reasons as fit above the acts, or above the turn while a sensor speaks.
  const float end = area_.bottom - kActHeight - 54.0f - (turning ? 112.0f : 0.0f);
  for (const reception::Reason& reason : shared_.findings.reasons) {
    const std::string text = words::sentence(words::reason(reason, shared_.settings.miles));
    const float lines = std::ceil(canvas_.text_width(text, Face::Word) / (0.94f * area_.width()));
    if (y_ + (lines - 1.0f) * 27.0f > end) break;
    const bool first = &reason == &shared_.findings.reasons.front();
    y_ = ui_.paragraph({area_.left, y_}, area_.width(), 27.0f, text, Face::Word,
                       first ? theme_.ink : theme_.second_ink);
  }
  if (ui_.touchable("why", {area_.left, top + 20.0f, area_.right, y_})) {
    ui_.emit(act::OpenSheet{Sheet::Path});
  }
}

void AnswerPanel::live_turn() {
  const Findings& found = shared_.findings;
  if (!found.turn || !found.facing || !found.field) return;
  y_ += 2.0f;
  rule();
  canvas_.text({area_.left, y_}, words::turn(*found.turn), Face::Word, theme_.second_ink);
  y_ += 54.0f;
  const std::string size = words::whole_degrees(found.turn->size_deg());
  canvas_.text({area_.left, y_}, size, Face::Big, theme_.ink);
  const auto facing = to_magnetic(*found.facing, found.field->declination);
  canvas_.text({area_.left + 150.0f, y_ - 26.0f}, "now facing", Face::Word, theme_.second_ink);
  canvas_.text({area_.left + 150.0f, y_}, words::whole_degrees(facing) + " magnetic", Face::Word,
               theme_.second_ink);
}

void AnswerPanel::draw() {
  const AimCard& card = *shared_.findings.card;
  const Rect whole = area_;
  const float middle = whole.center().x;
  // An upright screen has width for two columns, but not the height for one.
  if (ui_.portrait()) area_.right = middle - ui::kMargin;
  answer(card);
  doubts(card);
  if (ui_.portrait()) {
    area_ = {middle + ui::kMargin, whole.top, whole.right, whole.bottom};
    y_ = area_.top - 4.0f;
  }
  chance();
  live_turn();
}

void AnswerPanel::draw_nothing() {
  const char* title = shared_.stop.target ? "Where is the rig?" : "Which station?";
  const char* what = shared_.stop.target ? "Set the position to see the heading."
                                         : "Pick one from the list to see its heading.";
  canvas_.text({area_.left, area_.top + 34.0f}, title, Face::Cardinal, theme_.ink);
  y_ = ui_.paragraph({area_.left, area_.top + 80.0f}, area_.width(), 30.0f, what, Face::Word,
                     theme_.second_ink);
  const Rect act{area_.left, y_, area_.left + 240.0f, y_ + 80.0f};
  if (ui_.button("find", act, shared_.stop.target ? "Here" : "Stations", ui::ButtonLook::Filled)) {
    ui_.emit(act::Show{shared_.stop.target ? Place::Here : Place::Stations});
  }
}

void draw_acts(Ui& ui, Rect area, const Shared& shared) {
  const bool raised = shared.findings.antenna_up;
  const float top = area.bottom - kActHeight;
  const std::string state = raised ? "Antenna UP. Lower it before you drive."
                                   : "Antenna DOWN. Look up for power lines first.";
  ui.canvas().text({area.left, top - 20.0f}, state, Face::SmallBold, ui.theme().warning);
  constexpr float kGap = 16.0f;
  const int count = raised ? 4 : 3;
  const float width =
      (area.width() - kGap * static_cast<float>(count - 1)) / static_cast<float>(count);
  const auto slot = [&](int index) {
    const float left = area.left + static_cast<float>(index) * (width + kGap);
    return Rect{left, top, left + width, area.bottom};
  };
  if (raised) {
    if (ui.button("lower", slot(0), "Lower", ui::ButtonLook::Filled)) {
      ui.emit(act::Ask{Asking::Drive});
    }
    if (ui.button("weather", slot(3), "Wind?", ui::ButtonLook::Plain)) {
      ui.emit(act::Ask{Asking::Weather});
    }
  } else if (ui.button("raise", slot(0), "Raise", ui::ButtonLook::Filled)) {
    ui.emit(act::Ask{Asking::Raise});
  }
  if (ui.button("roof", slot(1), "Roof", ui::ButtonLook::Plain)) ui.emit(act::GoToRoof{});
  if (ui.button("peak", slot(2), "Peak", ui::ButtonLook::Plain)) ui.emit(act::Show{Place::Peak});
}

}  // namespace

void draw_aim(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  Rect dial = area, panel = area;
  if (ui.portrait()) {
    constexpr float kAnswerHeight = 470.0f;
    dial.bottom = area.bottom - kAnswerHeight;
    panel.top = dial.bottom + ui::kMargin;
  } else {
    panel.left = area.right - kPanelWidth;
    dial.right = panel.left - 2.0f * ui::kMargin;
    const float rule = panel.left - ui::kMargin;
    ui.canvas().line({rule, area.top - ui::kMargin}, {rule, ui.screen().bottom}, ui.theme().rule,
                     2.0f);
  }
  if (shared.settings.left_handed && !ui.portrait()) {
    std::swap(dial.left, panel.left);
    panel.left = area.left;
    panel.right = area.left + kPanelWidth;
    dial.left = panel.right + 2.0f * ui::kMargin;
    dial.right = area.right;
  }
  draw_dial_half(ui, dial, shared, aim);
  AnswerPanel answer(ui, panel, shared);
  if (shared.findings.card) {
    answer.draw();
  } else {
    answer.draw_nothing();
  }
  draw_acts(ui, panel, shared);
}

}  // namespace mastwise::screens
