#include "app/safety/screens.hpp"
#include "app/screens/screens.hpp"
#include "app/ui/icons.hpp"
#include "app/ui/layout.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"

#include <array>

namespace mastwise::screens {
namespace {

struct PlaceOnRail {
  Place place;
  const char* label;
};
constexpr std::array kPlaces{
    PlaceOnRail{Place::Here, "Here"},       PlaceOnRail{Place::Stations, "Stations"},
    PlaceOnRail{Place::Aim, "Aim"},         PlaceOnRail{Place::Peak, "Peak"},
    PlaceOnRail{Place::Logbook, "Logbook"}, PlaceOnRail{Place::Ahead, "Ahead"}};
static_assert(kPlaces.size() == kPlaceCount);

void draw_place(Ui& ui, Rect rect, const PlaceOnRail& entry, bool chosen) {
  const std::string name = std::string("place ") + entry.label;
  if (ui.touchable(name, rect)) ui.emit(act::Show{entry.place});
  const ui::Theme& theme = ui.theme();
  const bool filled = chosen || ui.pressed(name);
  if (filled) ui.canvas().fill(rect, theme.accent, 14.0f);
  const ui::Color color = filled ? theme.on_accent : theme.ink;
  const Point center = rect.center();
  const float apart = 0.27f * std::min(rect.height(), 96.0f);
  ui::draw_place_icon(ui.canvas(), entry.place, {center.x, center.y - 0.55f * apart}, color);
  ui.canvas().text({center.x, center.y + 1.45f * apart}, entry.label,
                   filled ? ui::Face::SmallBold : ui::Face::Small, color, ui::Align::Center);
}

void draw_rail_end(Ui& ui, const ui::Layout& layout, const Model& model) {
  const bool undo = model.taken_back || model.safety.undo;
  const bool shared =
      layout.take_back.top == layout.rail_end.top && layout.take_back.left == layout.rail_end.left;
  if (shared && undo) {
    if (ui.button("take back", layout.take_back, "Undo", ui::ButtonLook::Plain)) {
      ui.emit(act::TakeBack{});
    }
    return;
  }
  if (ui.button("look", layout.rail_end, model.settings.night ? "Day" : "Night",
                ui::ButtonLook::Plain)) {
    ui.emit(act::SwitchNight{});
  }
  if (undo && ui.button("take back", layout.take_back, "Undo", ui::ButtonLook::Plain)) {
    ui.emit(act::TakeBack{});
  }
}

void draw_rail(Ui& ui, const ui::Layout& layout, const Model& model) {
  ui.canvas().fill(layout.rail, ui.theme().panel);
  const auto [from, to] = layout.rail_rule;
  ui.canvas().line(from, to, ui.theme().rule, 1.5f);
  for (std::size_t i = 0; i < kPlaces.size(); ++i) {
    draw_place(ui, layout.rail_slot(i), kPlaces[i], model.place == kPlaces[i].place);
  }
  draw_rail_end(ui, layout, model);
}

// The near town, on the screens that do not show the position anyway.
std::string stands_words(const Model& model) {
  if (model.place == Place::Here || !model.findings.position) return {};
  const places::NearPlace* near = near_place_of(model, *model.findings.position);
  return near == nullptr ? "" : words::sentence(words::near_place(*near, model.settings.miles));
}

// Warnings that every screen must show.
void draw_foot(Ui& ui, const ui::Layout& layout, const Model& model) {
  const Rect foot = layout.foot;
  const float baseline = foot.center().y + 7.0f;
  if (!model.trouble.empty()) {
    ui.canvas().text({foot.left, baseline}, model.trouble, ui::Face::SmallBold, ui.theme().warning);
    return;
  }
  const bool raised = model.safety.antenna == safety::Antenna::Raised;
  const std::string right = raised              ? "ANTENNA IS UP"
                            : model.taken_back  ? model.taken_back->what
                            : model.safety.undo ? "Antenna marked down"
                                                : std::string();
  if (model.stop.practice) {
    ui.canvas().text({foot.left, baseline}, "PRACTICE AREA: invented stations and hills",
                     ui::Face::SmallBold, ui.theme().warning);
  } else {
    const float room = foot.right - 24.0f - ui.canvas().text_width(right, ui::Face::SmallBold);
    ui.canvas().push_clip({foot.left, foot.top, room, foot.bottom});
    ui.canvas().text({foot.left, baseline}, stands_words(model), ui::Face::Small,
                     ui.theme().second_ink);
    ui.canvas().pop_clip();
  }
  ui.canvas().text({foot.right, baseline}, right, raised ? ui::Face::SmallBold : ui::Face::Small,
                   raised ? ui.theme().warning : ui.theme().second_ink, ui::Align::Right);
}

void draw_sheet(Ui& ui, const Model& model) {
  switch (model.sheet) {
    case Sheet::None:
      return;
    case Sheet::Gear:
      return draw_gear_sheet(ui, model);
    case Sheet::Surroundings:
      return draw_surroundings_sheet(ui, model);
    case Sheet::Path:
      return draw_path_sheet(ui, model);
    case Sheet::Plan:
      return draw_plan_sheet(ui, model);
    case Sheet::Scan:
      return draw_scan_sheet(ui, model);
    case Sheet::Ways:
      return draw_ways_sheet(ui, model);
    case Sheet::Nose:
      return draw_nose_sheet(ui, model);
    case Sheet::Paper:
      return draw_paper_sheet(ui, model);
    case Sheet::Handle:
      return draw_handle_sheet(ui, model);
    case Sheet::Checks:
      return draw_checks_sheet(ui, model);
    case Sheet::LogbookFiles:
      return draw_logbook_files_sheet(ui, model);
    case Sheet::Carries:
      return draw_carries_sheet(ui, model);
    case Sheet::Import:
      return draw_import_sheet(ui, model);
  }
}

// Draws the sheet that covers the rail and all places; false if none does.
bool draw_cover(Ui& ui, const Model& model) {
  if (model.safety.drive != safety::Drive::Parked) {
    draw_drive_face(ui, model.safety, model.now);
    return true;
  }
  if (model.safety.asking != Asking::Nothing) {
    draw_prompt(ui, model.safety, model.settings.left_handed);
  } else if (model.safety.roof) {
    draw_roof(ui, model);
  } else if (model.keypad) {
    draw_keypad(ui, model);
  } else if (model.sheet != Sheet::None) {
    draw_sheet(ui, model);
  } else {
    return false;
  }
  if (model.stop.practice) {
    ui.canvas().text({ui.screen().center().x, 26.0f}, "PRACTICE", ui::Face::PromptBold,
                     ui.theme().warning, ui::Align::Center);
  }
  return true;
}

}  // namespace

void draw_program(Ui& ui, const Model& model) {
  if (draw_cover(ui, model)) return;
  const ui::Layout layout = ui::layout(ui.screen(), model.settings.left_handed);
  draw_rail(ui, layout, model);
  switch (model.place) {
    case Place::Here:
      draw_here(ui, layout.body, model);
      break;
    case Place::Stations:
      draw_stations(ui, layout.body, model);
      break;
    case Place::Aim:
      draw_aim(ui, layout.body, model);
      break;
    case Place::Peak:
      draw_peak(ui, layout.body, model);
      break;
    case Place::Logbook:
      draw_logbook(ui, layout.body, model);
      break;
    case Place::Ahead:
      draw_ahead(ui, layout.body, model);
      break;
  }
  draw_foot(ui, layout, model);
}

}  // namespace mastwise::screens
