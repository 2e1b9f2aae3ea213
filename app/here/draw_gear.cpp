#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/here/facts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

// The page behind the antenna: the rig's gear, and the ways to what else the forecast counts.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;
using ui::Option;
using words::say;

constexpr float kGearRow = 72.0f, kGearGap = 16.0f;

// Rows of the gear, from the top down.
class GearLines {
 public:
  GearLines(Ui& ui, Rect area, const GearChoice& choice) : ui_(ui), area_(area), choice_(choice) {}

  float bottom() const { return y_ + area_.top; }

  // A name, its value, and a step to either side.
  void stepped(const char* name, const char* label, const std::string& value,
               const GearChoice& less, const GearChoice& more) {
    constexpr float kStep = 80.0f, kValue = 112.0f;
    const Rect row = next();
    const Rect plus{row.right - kStep, row.top, row.right, row.bottom};
    const Rect minus{plus.left - kValue - kStep, row.top, plus.left - kValue, row.bottom};
    const float baseline = row.center().y + 9.0f;
    ui_.canvas().text({row.left, baseline}, label, Face::Text, ui_.theme().ink);
    ui_.canvas().text({(minus.right + plus.left) / 2.0f, baseline}, value, Face::Value,
                      ui_.theme().ink, Align::Center);
    if (ui_.button(std::string(name) + " less", minus, "−", ButtonLook::Plain, less != choice_)) {
      ui_.emit(act::ChooseGear{less});
    }
    if (ui_.button(std::string(name) + " more", plus, "+", ButtonLook::Plain, more != choice_)) {
      ui_.emit(act::ChooseGear{more});
    }
  }
  void outlets(const gear::Gear& gear) {
    constexpr std::array kOutlets{1, 2, 4};
    std::vector<Option> options;
    std::optional<std::size_t> chosen;
    for (std::size_t i = 0; i < kOutlets.size(); ++i) {
      options.push_back({std::to_string(kOutlets[i]), std::to_string(kOutlets[i])});
      if (kOutlets[i] == gear.splits) chosen = i;
    }
    const Rect row = labelled(say("Outlets"));
    const auto touched = ui::segmented(ui_, "outlets", row, options, chosen);
    if (!touched) return;
    GearChoice other = choice_;
    other.splits = kOutlets[*touched];
    ui_.emit(act::ChooseGear{other});
  }
  void amplifier(bool has) {
    const Rect row = labelled(say("Amplifier"));
    if (!has) {
      ui_.canvas().text({row.left, row.center().y + 9.0f}, say("none"), Face::Text,
                        ui_.theme().second_ink);
      return;
    }
    const auto touched =
        ui::on_off(ui_, "amplifier", row, choice_.amplifier, say("Off"), say("On"));
    if (!touched) return;
    GearChoice other = choice_;
    other.amplifier = *touched;
    ui_.emit(act::ChooseGear{other});
  }
  void custom_pattern() {
    if (!ui_.button("pattern", next(), say("Remove the custom pattern"), ButtonLook::Plain)) return;
    GearChoice usual = choice_;
    usual.pattern_table.clear();
    ui_.emit(act::ChooseGear{usual});
  }
  // A row that leads on, with what is there now.
  void way(const char* name, const char* label, const std::string& value, Sheet sheet) {
    const Rect row{area_.left, bottom(), area_.right, bottom() + kGearRow};
    y_ += kGearRow;
    if (ui::onward(ui_, name, row, "ways")) ui_.emit(act::OpenSheet{sheet});
    const bool lit = ui_.pressed(name);
    const float baseline = row.center().y + 9.0f, right = row.right - ui::kChevron;
    ui_.canvas().line({row.left, row.top}, {row.right, row.top}, ui_.theme().rule, 2.0f);
    ui_.canvas().text({row.left, baseline}, label, Face::TextBold, ui_.theme().ink);
    const float room = right - row.left - ui_.canvas().text_width(label, Face::TextBold) - 24.0f;
    ui::text_within(ui_.canvas(), {right, baseline}, room, value, Face::Text,
                    ui::second_ink_on_row(ui_.theme(), lit), Align::Right);
  }

 private:
  Rect next() {
    const Rect row{area_.left, bottom(), area_.right, bottom() + kGearRow};
    y_ += kGearRow + kGearGap;
    return row;
  }
  Rect labelled(const char* label) {
    constexpr float kChoice = 272.0f;
    Rect row = next();
    ui_.canvas().text({row.left, row.center().y + 9.0f}, label, Face::Text, ui_.theme().ink);
    row.left = row.right - kChoice;
    return row;
  }

  Ui& ui_;
  Rect area_;
  const GearChoice& choice_;
  float y_ = 4.0f;
};

GearChoice with_height(GearChoice choice, double height_m) {
  choice.height_m = std::clamp(height_m, 1.0, 15.0);
  return choice;
}
GearChoice with_cable(GearChoice choice, double length_m) {
  choice.cable_m = std::clamp(length_m, 0.0, 60.0);
  return choice;
}

// A preset's pattern in UHF from above.
void draw_pattern(Ui& ui, Point center, float radius, const gear::Antenna& antenna, Color ink) {
  std::vector<Point> lobe;
  for (int degrees = 0; degrees < 360; degrees += 6) {
    const double relative_db =
        antenna.uhf.pattern.relative_db(Turn::clockwise_deg(static_cast<double>(degrees)));
    lobe.push_back(ui::around(
        center, radius * static_cast<float>(std::pow(10.0, relative_db / 20.0)), degrees + 90.0));
  }
  ui.canvas().polyline(lobe, ink, 2.5f, true);
  ui.canvas().disc(center, 4.0f, ink);
}

// The rows of presets, each with its pattern; the one in use is filled with ink.
void draw_presets(Ui& ui, Rect area, const GearChoice& choice, const std::string& name) {
  constexpr float kRow = 88.0f, kPicture = 84.0f;
  const std::vector<gear::Gear> presets = gear::presets();
  const float offset =
      ui.begin_scroll("gear presets", area, kRow * static_cast<float>(presets.size()));
  float top = area.top - offset;
  for (const gear::Gear& preset : presets) {
    const Rect row{area.left, top, area.right, top + kRow};
    const std::string target = "gear " + preset.name;
    if (ui.touchable(target, row, true, "gear presets")) {
      GearChoice other;
      other.preset = preset.name;
      other.amplifier = choice.amplifier;
      other.pattern_table = choice.pattern_table;
      other.decoders = choice.decoders;
      ui.emit(act::ChooseGear{other});
    }
    const bool chosen = preset.name == name || ui.pressed(target);
    if (chosen) ui.canvas().fill(row.inset(3.0f), ui.theme().ink, 12.0f);
    const ui::Color ink = chosen ? ui.theme().paper : ui.theme().ink;
    draw_pattern(ui, {row.left + 46.0f, row.center().y}, 32.0f, preset.antenna, ink);
    const Face face = chosen ? Face::TextBold : Face::Text;
    const std::string called = say(std::string_view(preset.name));
    const Rect room{row.left + kPicture, row.top + 2.0f, row.right - 16.0f, row.bottom - 2.0f};
    const float share = ui.share_within(room, called, face, 0.0f);
    const auto lines = ui.wrapped(called, room.width() / share, face);
    const float apart = std::max(28.0f, 1.08f * share * ui.canvas().em(face));
    float baseline = row.center().y + 9.0f - 0.5f * apart * static_cast<float>(lines.size() - 1);
    for (const std::string_view line : lines) {
      ui.canvas().text({room.left, baseline}, line, face, ink, ui::Align::Left, share);
      baseline += apart;
    }
    ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, ui.theme().rule, 1.5f);
    top += kRow;
  }
  ui.end_scroll();
}

void draw_own(Ui& ui, Rect area, const Shared& shared, const gear::Gear& gear) {
  constexpr double kHeightStep_m = 0.5, kCableStep_m = 1.0;
  const GearChoice& choice = shared.settings.gear;
  const bool miles = shared.settings.miles;
  Rect page = area;
  page.top = ui.begin_page("gear", area);
  GearLines lines(ui, page, choice);
  lines.stepped("Antenna up", say("Antenna up"), words::height(gear.height_m, miles),
                with_height(choice, gear.height_m - kHeightStep_m),
                with_height(choice, gear.height_m + kHeightStep_m));
  lines.stepped("Cable", say("Cable"), words::height(gear.cable.length_m, miles),
                with_cable(choice, gear.cable.length_m - kCableStep_m),
                with_cable(choice, gear.cable.length_m + kCableStep_m));
  lines.outlets(gear);
  const auto named = gear::preset(gear.name);
  lines.amplifier(named && named->amplifier.has_value());
  if (!choice.pattern_table.empty()) lines.custom_pattern();
  lines.way("surroundings", say("Around it"), around_words(shared), Sheet::Surroundings);
  lines.way("noise", say("Noise"), noise_words(shared), Sheet::Noise);
  lines.way("towers", say("Towers nearby"), towers_words(shared), Sheet::Towers);
  lines.way("television", say("TV"), television_words(shared), Sheet::Television);
  lines.way("handle", say("Ceiling handle"), shared.settings.handle ? say("set") : say("not set"),
            Sheet::Handle);
  ui.end_page("gear", page.top, lines.bottom());
}

}  // namespace

void draw_gear_sheet(Ui& ui, const Shared& shared) {
  const Rect area = draw_sheet_head(ui, say("The antenna"));
  const gear::Gear gear = gear_of(shared.settings.gear);
  Rect presets = area, own = area;
  if (ui.portrait()) {
    presets.bottom = area.top + 0.42f * area.height();
    own.top = presets.bottom + kGearGap;
  } else {
    presets.right = area.left + 0.48f * area.width();
    own.left = presets.right + 2.0f * kGearGap;
  }
  const Rect compare{presets.left, presets.bottom - kGearRow, presets.right, presets.bottom};
  presets.bottom = compare.top - kGearGap;
  draw_presets(ui, presets, shared.settings.gear, gear.name);
  if (ui.button("parking", compare, say("Compare antennas"), ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Parking});
  }
  draw_own(ui, own, shared, gear);
}

}  // namespace mastwise::screens
