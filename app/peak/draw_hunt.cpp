#include "app/peak/actions.hpp"
#include "app/peak/draw.hpp"
#include "app/peak/draw_parts.hpp"
#include "app/peak/hunt.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// The hunt for the rig's own noise: everything on, then one appliance off after another.
namespace mastwise::screens {
namespace {

using ui::ButtonLook;
using words::fill;
using words::say;

constexpr std::array kAppliances{"Inverter",   "Battery charger", "Fridge",
                                 "LED lights", "Wi-Fi router",    "Laptop"};

std::string tenths(double db) {
  return fmt::format("{:.1f}", db < 0.0 && db > -0.05 ? 0.0 : db);
}

// "+6.2 ± 0.4 dB"
std::string rise_words(const gear::NoiseRise& rise) {
  return fmt::format("+{} ± {} dB", tenths(rise.db), tenths(1.96 * rise.sigma_db));
}

bool tried(const NoiseHunt& hunt, const std::string& appliance) {
  return std::any_of(hunt.steps.begin(), hunt.steps.end(), [&](const gear::NoiseStep& step) {
    return step.turned_off == appliance && !step.readings_db.empty();
  });
}

void draw_hunt_begin(Ui& ui, ui::Column& column, const Shared& shared) {
  column.plain(
      say("Each appliance may add noise. Turn one off after another, and read how the signal to "
          "noise of one station rises."));
  if (!shared.stop.target) {
    column.warning(say("Pick a station first, under Stations."));
    return;
  }
  const std::string label =
      fill(say("Hunt on {station}"), {{"station", words::title(*shared.stop.target)}});
  if (column.button("begin hunt", label, 0, 1, shared.findings.outlook.has_value(),
                    ButtonLook::Filled)) {
    ui.emit(act::BeginHunt{});
  }
}

// What is to be read now, the number and its keys.
void draw_hunt_reading(Ui& ui, ui::Column& column, const NoiseHunt& hunt) {
  const gear::NoiseStep& step = hunt.steps.back();
  column.plain(step.turned_off.empty()
                   ? fill(say("Everything on, the antenna on {station}. Read the signal to noise."),
                          {{"station", hunt.title}})
                   : fill(say("{appliance} off. Wait 5 s, then read again."),
                          {{"appliance", say(step.turned_off)}}));
  column.figure(tenths(hunt.value_db) + " dB");
  struct Key {
    const char* name;
    const char* label;
    double by;
  };
  constexpr std::array kKeys{Key{"hunt much less", "−5", -5.0}, Key{"hunt less", "−0.5", -0.5},
                             Key{"hunt more", "+0.5", 0.5}, Key{"hunt much more", "+5", 5.0}};
  for (std::size_t i = 0; i < kKeys.size(); ++i) {
    if (column.button(kKeys[i].name, kKeys[i].label, static_cast<int>(i), 4)) {
      ui.emit(act::SetHunt{kKeys[i].by});
    }
  }
  const bool enough = step.readings_db.size() >= 3;
  if (column.button("hunt drop", say("Undo"), 0, 2,
                    !step.readings_db.empty() || hunt.steps.size() > 1)) {
    ui.emit(act::DropHunt{});
  }
  if (column.button("hunt read", say("Read it"), 1, 2, true,
                    enough ? ButtonLook::Plain : ButtonLook::Filled)) {
    ui.emit(act::ReadHunt{});
  }
  if (const auto mean = gear::mean_of(step)) {
    column.line(fill(step.readings_db.size() == 1 ? say("{count} reading, {mean} ± {error} dB")
                                                  : say("{count} readings, {mean} ± {error} dB"),
                     {{"count", std::to_string(step.readings_db.size())},
                      {"mean", tenths(mean->mean_db)},
                      {"error", tenths(1.96 * mean->sigma_db)}}));
  }
}

// The next appliance; none before this step has a reading.
void draw_hunt_next(Ui& ui, ui::Column& column, const NoiseHunt& hunt) {
  column.rule();
  column.heading(say("Turn off next, and leave it off"));
  const bool ready = !hunt.steps.back().readings_db.empty() || hunt.steps.size() > 1;
  const int columns = ui.portrait() ? 2 : 3;
  for (std::size_t i = 0; i < kAppliances.size(); ++i) {
    const std::string name = kAppliances[i];
    if (column.button("off " + name, say(name), static_cast<int>(i) % columns, columns,
                      ready && !tried(hunt, name))) {
      ui.emit(act::TurnedOff{name});
    }
  }
  if (column.button("off other", say("Something else"), 0, 1, ready)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Appliance});
  }
}

void draw_hunt_found(Ui& ui, ui::Column& column, const NoiseHunt& hunt) {
  const auto found = found_by(hunt);
  column.rule();
  if (!found.empty()) column.heading(say("Adds to the noise"));
  for (const gear::ApplianceNoise& one : found) column.pair(say(one.name), rise_words(one.rise));
  if (column.button("hunt over", say("Start over"), 0, 2)) ui.emit(act::EndHunt{});
  if (column.button("keep hunt", say("Keep"), 1, 2, !found.empty())) ui.emit(act::KeepHunt{});
}

// The appliances kept, each with its bands, and whether it is on while one watches.
float draw_kept(Ui& ui, Rect area, const Shared& shared) {
  constexpr float kRow = 80.0f, kSwitch = 220.0f;
  const auto& appliances = shared.settings.appliances;
  if (appliances.empty()) return area.top;
  ui::Column column(ui, area);
  column.rule();
  column.heading(say("Known in this rig. Is it on while you watch?"));
  float top = column.bottom() + 12.0f;
  std::vector<std::string> done;
  for (const gear::ApplianceNoise& one : appliances) {
    if (std::find(done.begin(), done.end(), one.name) != done.end()) continue;
    done.push_back(one.name);
    std::string bands;
    for (const gear::ApplianceNoise& other : appliances) {
      if (other.name != one.name) continue;
      if (!bands.empty()) bands += ", ";
      bands += std::string(say(to_text(other.band))) + " " + rise_words(other.rise);
    }
    ui.canvas().text({area.left, top + 28.0f}, say(one.name), ui::Face::TextBold, ui.theme().ink);
    ui.canvas().text({area.left, top + 60.0f}, bands, ui::Face::Text, ui.theme().second_ink);
    const Rect slot{area.right - kSwitch, top, area.right, top + 72.0f};
    if (const auto on =
            ui::on_off(ui, "appliance " + one.name, slot, one.on, say("Off"), say("On"))) {
      ui.emit(act::SwitchAppliance{one.name, *on});
    }
    top += kRow + 8.0f;
  }
  return top;
}

}  // namespace

void draw_hunt_sheet(Ui& ui, const Shared& shared, const PeakState& peak) {
  const Rect view = draw_sheet_head(ui, say("What makes noise in the rig?"), Sheet::Noise);
  Rect area = view;
  area.top = ui.begin_page("noise hunt", view);
  ui::Column column(ui, area);
  if (peak.hunt) {
    draw_hunt_reading(ui, column, *peak.hunt);
    draw_hunt_next(ui, column, *peak.hunt);
    draw_hunt_found(ui, column, *peak.hunt);
  } else {
    draw_hunt_begin(ui, column, shared);
  }
  const float end =
      draw_kept(ui, {area.left, column.bottom() + 8.0f, area.right, area.bottom}, shared);
  ui.end_page("noise hunt", area.top, end + 24.0f);
}

}  // namespace mastwise::screens
