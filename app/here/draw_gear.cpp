#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// Sheets that cover the places: the surroundings and the gear.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kButton = 72.0f, kGap = 16.0f;

struct SurroundingsChoice {
  reception::Surroundings surroundings;
  const char* label;
};
constexpr std::array kSurroundings{
    SurroundingsChoice{reception::Surroundings::open, "Open ground"},
    SurroundingsChoice{reception::Surroundings::scrub, "Scrub"},
    SurroundingsChoice{reception::Surroundings::scattered_trees, "Scattered trees"},
    SurroundingsChoice{reception::Surroundings::forest, "Forest"},
    SurroundingsChoice{reception::Surroundings::houses, "Houses"},
    SurroundingsChoice{reception::Surroundings::town, "Town"},
};

struct LeavesChoice {
  reception::LeafChoice leaves;
  const char* label;
};
constexpr std::array kLeaves{LeavesChoice{reception::LeafChoice::by_season, "By season"},
                             LeavesChoice{reception::LeafChoice::in_leaf, "In leaf"},
                             LeavesChoice{reception::LeafChoice::bare, "Bare"}};

// One line of the gear: a name, its value, and a button to either side.
class GearLines {
 public:
  GearLines(Ui& ui, Rect area, const GearChoice& choice) : ui_(ui), area_(area), choice_(choice) {}

  void stepped(const char* label, const std::string& value, const GearChoice& less,
               const GearChoice& more) {
    constexpr float kStep = 96.0f;
    const float top = area_.top + line_ * (kButton + kGap);
    const Rect minus{area_.right - 2.0f * kStep - kGap - 130.0f, top,
                     area_.right - kStep - kGap - 130.0f, top + kButton};
    const Rect plus{area_.right - kStep, top, area_.right, top + kButton};
    const float baseline = top + 45.0f;
    ui_.canvas().text({area_.left, baseline}, label, Face::Word, ui_.theme().second_ink);
    ui_.canvas().text({(minus.right + plus.left) / 2.0f, baseline}, value, Face::Value,
                      ui_.theme().ink, Align::Center);
    if (ui_.button(std::string(label) + " less", minus, "−", ButtonLook::Plain, less != choice_)) {
      ui_.emit(act::ChooseGear{less});
    }
    if (ui_.button(std::string(label) + " more", plus, "+", ButtonLook::Plain, more != choice_)) {
      ui_.emit(act::ChooseGear{more});
    }
    line_ += 1.0f;
  }
  void toggled(const char* name, const std::string& label, const GearChoice& other, bool possible) {
    const float top = area_.top + line_ * (kButton + kGap);
    if (ui_.button(name, {area_.left, top, area_.right, top + kButton}, label, ButtonLook::Plain,
                   possible)) {
      ui_.emit(act::ChooseGear{other});
    }
    line_ += 1.0f;
  }

 private:
  Ui& ui_;
  Rect area_;
  const GearChoice& choice_;
  float line_ = 0.0f;
};

GearChoice with_height(GearChoice choice, double height_m) {
  choice.height_m = std::clamp(height_m, 1.0, 15.0);
  return choice;
}
GearChoice with_cable(GearChoice choice, double length_m) {
  choice.cable_m = std::clamp(length_m, 0.0, 60.0);
  return choice;
}
GearChoice with_splits(GearChoice choice, int splits) {
  choice.splits = std::clamp(splits, 1, 4);
  return choice;
}

void draw_presets(Ui& ui, Rect area, const GearChoice& choice, const std::string& name) {
  constexpr float kRow = 84.0f;
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
    if (preset.name == name || ui.pressed(target)) {
      ui.canvas().fill(row.inset(2.0f), ui.theme().lobe, 10.0f);
    }
    ui.paragraph({row.left + 16.0f, row.top + 36.0f}, row.width() - 32.0f, 27.0f, preset.name,
                 preset.name == name ? Face::WordBold : Face::Word, ui.theme().ink);
    ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, ui.theme().rule, 1.5f);
    top += kRow;
  }
  ui.end_scroll();
}

void draw_leaves(Ui& ui, Rect area, const Shared& shared) {
  ui::Column column(ui, area);
  column.heading("LEAVES ON THE TREES");
  for (std::size_t i = 0; i < kLeaves.size(); ++i) {
    const bool chosen = kLeaves[i].leaves == shared.stop.leaves;
    if (column.button(std::string("leaves ") + kLeaves[i].label, kLeaves[i].label,
                      static_cast<int>(i), static_cast<int>(kLeaves.size()), true,
                      chosen ? ButtonLook::Filled : ButtonLook::Plain)) {
      ui.emit(act::ChooseLeaves{kLeaves[i].leaves});
    }
  }
  const char* now = shared.findings.in_leaf ? "Counted as in leaf." : "Counted as bare.";
  column.line(std::string(now) + " Evergreens keep their leaves: choose In leaf.");
}

}  // namespace

void draw_surroundings_sheet(Ui& ui, const Shared& shared) {
  const Rect area = draw_sheet_head(ui, "What is around the antenna?");
  constexpr std::size_t kColumns = 2;
  const float width = (area.width() - kGap) / kColumns;
  constexpr float kHeight = 104.0f;
  for (std::size_t i = 0; i < kSurroundings.size(); ++i) {
    const float left = area.left + static_cast<float>(i % kColumns) * (width + kGap);
    const float top = area.top + static_cast<float>(i / kColumns) * (kHeight + kGap);
    const bool chosen = kSurroundings[i].surroundings == shared.stop.surroundings;
    if (ui.button(std::string("surroundings ") + kSurroundings[i].label,
                  {left, top, left + width, top + kHeight}, kSurroundings[i].label,
                  chosen ? ButtonLook::Filled : ButtonLook::Plain)) {
      ui.emit(act::ChooseSurroundings{kSurroundings[i].surroundings});
    }
  }
  Rect leaves = area;
  leaves.top += static_cast<float>(kSurroundings.size() / kColumns) * (kHeight + kGap) + kGap;
  draw_leaves(ui, leaves, shared);
}

void draw_gear_sheet(Ui& ui, const Shared& shared) {
  const Rect area = draw_sheet_head(ui, "What gear does the rig have?");
  const GearChoice& choice = shared.settings.gear;
  const gear::Gear gear = gear_of(choice);
  Rect presets = area, own = area;
  if (ui.portrait()) {
    presets.bottom = own.top = area.top + 0.55f * area.height();
    own.top += kGap;
  } else {
    presets.right = area.left + 0.5f * area.width() - kGap;
    own.left = presets.right + 2.0f * kGap;
  }
  draw_presets(ui, presets, choice, gear.name);
  constexpr double kHeightStep_m = 0.5, kCableStep_m = 1.0;
  GearLines lines(ui, own, choice);
  lines.stepped("Antenna up", words::height(gear.height_m, shared.settings.miles),
                with_height(choice, gear.height_m - kHeightStep_m),
                with_height(choice, gear.height_m + kHeightStep_m));
  lines.stepped("Cable", words::height(gear.cable.length_m, shared.settings.miles),
                with_cable(choice, gear.cable.length_m - kCableStep_m),
                with_cable(choice, gear.cable.length_m + kCableStep_m));
  lines.stepped("Outlets", fmt::format("{}", gear.splits), with_splits(choice, gear.splits / 2),
                with_splits(choice, gear.splits * 2));
  GearChoice switched = choice;
  switched.amplifier = !choice.amplifier;
  const auto named = gear::preset(gear.name);
  const bool has_amplifier = named && named->amplifier.has_value();
  lines.toggled("amplifier",
                !has_amplifier     ? "This gear has no amplifier"
                : choice.amplifier ? "Amplifier has power"
                                   : "Amplifier has no power",
                switched, has_amplifier);
  if (choice.pattern_table.empty()) return;
  GearChoice usual = choice;
  usual.pattern_table.clear();
  lines.toggled("pattern", "Remove custom pattern", usual, true);
}

}  // namespace mastwise::screens
