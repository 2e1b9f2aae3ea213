#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/here/facts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/side_marks.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

// Sheets that cover the places: what surrounds the antenna, the noise at the stop, and what the TV
// decodes.
namespace mastwise::screens {
namespace {

using gear::NoiseEnvironment;
using reception::LeafChoice;
using reception::SideKind;
using reception::Surroundings;
using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Option;
using words::say;

constexpr float kApart = 16.0f, kTile = 168.0f, kChoiceHeight = 76.0f;

// A house from the side.
void draw_house(Canvas& canvas, Point foot, float size, Color color) {
  const float half = 0.5f * size;
  const std::array walls{Point{foot.x - half, foot.y}, Point{foot.x - half, foot.y - 0.6f * size},
                         Point{foot.x, foot.y - 1.05f * size},
                         Point{foot.x + half, foot.y - 0.6f * size}, Point{foot.x + half, foot.y}};
  canvas.polyline(walls, color, 3.0f, true);
}

// The antenna on its rig among what surrounds it, drawn from the side.
void draw_around(Canvas& canvas, Rect room, Surroundings around, Color color) {
  const float ground = room.bottom - 8.0f, unit = room.height() / 5.4f;
  const float middle = room.center().x;
  canvas.line({room.left, ground}, {room.right, ground}, color, 2.5f);
  canvas.outline({middle - 1.5f * unit, ground - 1.5f * unit, middle + 1.5f * unit, ground}, color,
                 3.0f, 4.0f);
  canvas.line({middle, ground - 1.5f * unit}, {middle, ground - 2.8f * unit}, color, 3.0f);
  canvas.line({middle - unit, ground - 2.8f * unit}, {middle + unit, ground - 2.8f * unit}, color,
              3.0f);
  const auto tree = [&](float at, float height) {
    const Point top{middle + at * unit, ground - height * unit};
    canvas.line({top.x, ground}, {top.x, top.y + 0.6f * unit}, color, 2.5f);
    canvas.circle(top, 0.8f * unit, color, 2.5f);
  };
  switch (around) {
    case Surroundings::open:
      return;
    case Surroundings::scrub:
      for (const float at : {-4.2f, -3.0f, 3.0f, 4.2f}) {
        canvas.circle({middle + at * unit, ground - 0.45f * unit}, 0.45f * unit, color, 2.5f);
      }
      return;
    case Surroundings::scattered_trees:
      tree(-3.6f, 3.4f);
      tree(3.6f, 3.8f);
      return;
    case Surroundings::forest:
      for (const float at : {-4.6f, -3.2f, 3.2f, 4.6f}) tree(at, 3.9f);
      return;
    case Surroundings::houses:
      draw_house(canvas, {middle - 3.6f * unit, ground}, 2.4f * unit, color);
      draw_house(canvas, {middle + 3.6f * unit, ground}, 2.4f * unit, color);
      return;
    case Surroundings::town:
      for (const auto& [at, height] : {std::pair(-3.4f, 4.6f), std::pair(3.2f, 5.2f)}) {
        const float left = middle + at * unit - unit;
        canvas.outline({left, ground - height * unit, left + 2.0f * unit, ground}, color, 3.0f);
      }
      return;
  }
}

struct Around {
  Surroundings surroundings;
  const char* key;
  const char* label;
};
constexpr std::array kAround{Around{Surroundings::open, "Open ground", "Open ground"},
                             Around{Surroundings::scrub, "Scrub", "Scrub"},
                             Around{Surroundings::scattered_trees, "Scattered trees", "Some trees"},
                             Around{Surroundings::forest, "Forest", "Forest"},
                             Around{Surroundings::houses, "Houses", "Houses"},
                             Around{Surroundings::town, "Town", "Town"}};

// Drawn tiles in rows of three, the present one filled with ink.
void draw_tiles(Ui& ui, Rect area, Surroundings chosen) {
  constexpr std::size_t kColumns = 3;
  const ui::Theme& theme = ui.theme();
  const float width = (area.width() - (kColumns - 1.0f) * kApart) / kColumns;
  for (std::size_t i = 0; i < kAround.size(); ++i) {
    const Around& around = kAround[i];
    const float left = area.left + static_cast<float>(i % kColumns) * (width + kApart);
    const float top = area.top + static_cast<float>(i / kColumns) * (kTile + kApart);
    const Rect tile{left, top, left + width, top + kTile};
    const std::string name = std::string("surroundings ") + around.key;
    if (ui.touchable(name, tile)) ui.emit(act::ChooseSurroundings{around.surroundings});
    const bool filled = around.surroundings == chosen || ui.pressed(name);
    ui.canvas().fill(tile, filled ? theme.ink : theme.panel, 14.0f);
    if (!filled) ui.canvas().outline(tile.inset(1.0f), theme.rule, 2.0f, 14.0f);
    const Color color = filled ? theme.paper : theme.ink;
    draw_around(ui.canvas(),
                {tile.left + 24.0f, tile.top + 14.0f, tile.right - 24.0f, tile.bottom - 44.0f},
                around.surroundings, color);
    const Face face = filled ? Face::TextBold : Face::Text;
    const char* label = say(around.label);
    ui.canvas().text({tile.center().x, tile.bottom - 18.0f}, label, face, color, Align::Center,
                     ui.canvas().size_within(tile.width() - 12.0f, label, Face::TextBold));
  }
}

void draw_leaves(Ui& ui, Rect area, const Shared& shared) {
  const std::array options{Option{"By season", say("By season")}, Option{"In leaf", say("In leaf")},
                           Option{"Bare", say("Bare")}};
  constexpr std::array kLeaves{LeafChoice::by_season, LeafChoice::in_leaf, LeafChoice::bare};
  ui.canvas().text({area.left, area.top + 26.0f}, say("Leaves on the trees"), Face::TextBold,
                   ui.theme().ink);
  const float top = area.top + 44.0f;
  const auto chosen = static_cast<std::size_t>(
      std::find(kLeaves.begin(), kLeaves.end(), shared.stop.leaves) - kLeaves.begin());
  const auto touched = ui::segmented(
      ui, "leaves", {area.left, top, std::min(area.right, area.left + 640.0f), top + kChoiceHeight},
      options, chosen);
  if (touched) ui.emit(act::ChooseLeaves{kLeaves[*touched]});
  const char* now = shared.findings.in_leaf
                        ? say("Counted as in leaf. Evergreens keep their leaves: choose In leaf.")
                        : say("Counted as bare. Evergreens keep their leaves: choose In leaf.");
  ui.paragraph({area.left, top + kChoiceHeight + 36.0f}, area.width(), 32.0f, now, Face::Text,
               ui.theme().second_ink);
}

struct NoiseKind {
  std::optional<NoiseEnvironment> noise;
  const char* key;
  const char* label;
  const char* under;
};
constexpr std::array kNoises{
    NoiseKind{NoiseEnvironment::quiet_rural, "quiet rural", "Quiet rural", "no power lines"},
    NoiseKind{NoiseEnvironment::rural, "rural", "Rural", "country, campground"},
    NoiseKind{NoiseEnvironment::residential, "residential", "Residential", "houses"},
    NoiseKind{NoiseEnvironment::city, "city", "City", "shops, traffic"},
};

// The one sentence of a sheet.
void note(Ui& ui, Rect area, float top, const char* words) {
  ui.paragraph({area.left, top + 28.0f}, area.width(), 32.0f, words, Face::Text,
               ui.theme().second_ink);
}

// A label above a choice; returns the choice's rectangle.
Rect under_label(Ui& ui, Rect area, float top, const char* label, float width) {
  ui.canvas().text({area.left, top + 26.0f}, label, Face::TextBold, ui.theme().ink);
  return {area.left, top + 42.0f, std::min(area.right, area.left + width),
          top + 42.0f + kChoiceHeight};
}

// "Within 3 mi".
std::string within(double distance_m, bool miles) {
  constexpr double kWhole_m = 1'500.0;
  const std::string distance = distance_m > kWhole_m ? words::whole_distance(distance_m, miles)
                                                     : words::distance(distance_m, miles);
  return words::fill(say("Within {distance}"), {{"distance", distance}});
}

// How near a tower stands; the new choice if one was touched.
std::optional<gear::TowerRange> draw_tower(Ui& ui, Rect row, const char* name,
                                           gear::TowerService service, gear::TowerRange now,
                                           bool miles) {
  using gear::TowerRange;
  std::vector<Option> options{{"none", say("None")}, {"in sight", say("In sight")}};
  for (const TowerRange range : {TowerRange::near, TowerRange::beside}) {
    options.push_back(
        {std::string(to_text(range)), within(gear::tower_distance_m(service, range), miles)});
  }
  const auto touched = ui::segmented(ui, name, row, options, static_cast<std::size_t>(now));
  return touched ? std::optional(gear::kTowerRanges[*touched]) : std::nullopt;
}

}  // namespace

void draw_surroundings_sheet(Ui& ui, const Shared& shared) {
  const Rect view = draw_sheet_head(ui, say("What is around the antenna?"), Sheet::Gear);
  Rect area = view;
  area.top = ui.begin_page("surroundings", view);
  draw_tiles(ui, area, shared.stop.surroundings);
  Rect leaves = area;
  leaves.top += 2.0f * (kTile + kApart) + kApart;
  draw_leaves(ui, leaves, shared);
  ui.end_page("surroundings", area.top, leaves.top + 44.0f + kChoiceHeight + 108.0f);
}

void draw_noise_sheet(Ui& ui, const Shared& shared) {
  constexpr float kRow = 76.0f;
  const Rect view = draw_sheet_head(ui, say("How noisy is it here?"), Sheet::Gear);
  Rect area = view;
  area.top = ui.begin_page("noise", view);
  const Stop& stop = shared.stop;
  const auto usual = reception::figures(stop.surroundings).noise;
  const Rect power = under_label(ui, area, area.top, say("The rig's inverter or charger"), 420.0f);
  if (const auto on = ui::on_off(ui, "inverter", power, stop.inverter_on, say("Off"), say("On"))) {
    ui.emit(act::ChooseNoise{stop.noise, *on});
  }
  // Beside the switch where there is room, else below it.
  constexpr float kHunt = 400.0f;
  Rect hunt{area.right - kHunt, power.top, area.right, power.bottom};
  if (hunt.left < power.right + kApart) {
    hunt = {area.left, power.bottom + kApart, area.left + kHunt,
            power.bottom + kApart + power.height()};
  }
  if (ui.button("noise hunt", hunt, say("Find what makes noise"), ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::NoiseHunt});
  }
  float top = hunt.bottom + 2.0f * kApart;
  const auto row = [&] {
    const Rect next{area.left, top, area.right, top + kRow};
    top = next.bottom;
    return next;
  };
  const std::string as_around = say(to_text(usual));
  if (ui::choice_row(ui, "noise as around", row(), say("As around"), as_around, !stop.noise,
                     "noises")) {
    ui.emit(act::ChooseNoise{std::nullopt, stop.inverter_on});
  }
  for (const NoiseKind& kind : kNoises) {
    if (ui::choice_row(ui, std::string("noise ") + kind.key, row(), say(kind.label),
                       say(kind.under), stop.noise == kind.noise, "noises")) {
      ui.emit(act::ChooseNoise{kind.noise, stop.inverter_on});
    }
  }
  note(ui, area, top + kApart,
       say("Inverter, charger and lamps are often the loudest on channels 2 to 13: turn them off "
           "while you watch."));
  ui.end_page("noise", area.top, top + kApart + 100.0f);
}

void draw_towers_sheet(Ui& ui, const Shared& shared) {
  constexpr float kWidth = 880.0f;
  const Rect view = draw_sheet_head(ui, say("Towers nearby"), Sheet::Gear);
  Rect area = view;
  area.top = ui.begin_page("towers", view);
  const gear::NearTowers& now = shared.stop.towers;
  const bool miles = shared.settings.miles;
  const Rect radio = under_label(ui, area, area.top, say("Radio tower"), kWidth);
  if (const auto range =
          draw_tower(ui, radio, "radio tower", gear::TowerService::radio, now.radio, miles)) {
    ui.emit(act::ChooseTowers{*range, now.cell});
  }
  const Rect cell = under_label(ui, area, radio.bottom + kApart, say("Cell tower"), kWidth);
  if (const auto range =
          draw_tower(ui, cell, "cell tower", gear::TowerService::cell, now.cell, miles)) {
    ui.emit(act::ChooseTowers{now.radio, *range});
  }
  const bool amplified = gear_of(shared.settings.gear).amplifier.has_value();
  note(ui, area, cell.bottom + kApart,
       amplified ? say("They bring no TV, but can overload the amplifier. Counted at full power, "
                       "on the antenna's axis. If a filter before the amplifier keeps them out, "
                       "choose None.")
                 : say("They bring no TV, but can overload an amplifier. Your antenna has none in "
                       "use, so they change nothing."));
  ui.end_page("towers", area.top, cell.bottom + kApart + 132.0f);
}

void draw_television_sheet(Ui& ui, const Shared& shared) {
  constexpr float kRow = 76.0f, kSwitch = 232.0f;
  const Rect view = draw_sheet_head(ui, say("What can the TV decode?"), Sheet::Gear);
  Rect area = view;
  area.top = ui.begin_page("television", view);
  const GearChoice& choice = shared.settings.gear;
  const gear::DecoderSet now = decoders_here(shared);
  const std::array options{Option{"usual", say("Usual here")}, Option{"own", say("As below")}};
  const Rect origin = under_label(ui, area, area.top, say("The TV's tuner"), 520.0f);
  const auto touched = ui::segmented(ui, "decoders", origin, options, choice.decoders ? 1 : 0);
  if (touched) {
    GearChoice other = choice;
    other.decoders = *touched == 0 ? std::nullopt : std::optional(now);
    ui.emit(act::ChooseGear{other});
  }
  // In two columns where the screen is wide.
  const float gutter = 4.0f * kApart;
  const float width = ui.portrait() ? area.width() : (area.width() - gutter) / 2.0f;
  const std::size_t columns = ui.portrait() ? 1 : 2;
  const float first = origin.bottom + 2.0f * kApart;
  for (std::size_t i = 0; i < gear::kDecoders.size(); ++i) {
    const gear::Decoder decoder = gear::kDecoders[i];
    const std::string label(to_text(decoder));
    const float left = area.left + static_cast<float>(i % columns) * (width + gutter);
    const float line = first + static_cast<float>(i / columns) * (kRow + kApart);
    const Rect part{left + width - kSwitch, line, left + width, line + kRow};
    ui::text_within(ui.canvas(), {left, part.center().y + 9.0f}, part.left - 8.0f - left,
                    say(std::string_view(label)), Face::Text, ui.theme().ink);
    if (const auto on =
            ui::on_off(ui, "decodes " + label, part, now.has(decoder), say("No"), say("Yes"))) {
      GearChoice other = choice;
      other.decoders = now;
      *on ? other.decoders->add(decoder) : other.decoders->remove(decoder);
      ui.emit(act::ChooseGear{other});
    }
  }
  const std::size_t lines = (gear::kDecoders.size() + columns - 1) / columns;
  const float top = first + static_cast<float>(lines) * (kRow + kApart);
  note(ui, area, top,
       choice.decoders ? say("The TV's manual lists what its tuner decodes.")
                       : say("Not set: the usual kind of TV is assumed. Its manual lists what its "
                             "tuner decodes."));
  ui.end_page("television", area.top, top + 100.0f);
}

}  // namespace mastwise::screens
