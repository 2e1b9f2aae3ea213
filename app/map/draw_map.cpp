#include "app/map/actions.hpp"
#include "app/map/draw.hpp"
#include "app/map/draw_ground.hpp"
#include "app/map/update.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/column.hpp"
#include "app/words/chances.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

// The stations on a map around the stop, and its gestures.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kMapButton = 72.0f, kBetweenActs = 16.0f, kColumn = 132.0f, kStrip = 84.0f;

// The buttons are beside the map, or below it on an upright screen.
struct Places {
  Rect map, strip, acts;
};

Places places_of(Rect area, bool upright, bool left_handed) {
  Places places{.map = area, .strip = area, .acts = area};
  if (upright) {
    places.acts.top = area.bottom - kMapButton;
    places.strip.bottom = places.acts.top - kBetweenActs;
    places.map.bottom = places.strip.top = places.strip.bottom - kStrip;
    return places;
  }
  if (left_handed) {
    places.acts.right = area.left + kColumn;
    places.map.left = places.strip.left = places.acts.right + kBetweenActs;
  } else {
    places.acts.left = area.right - kColumn;
    places.map.right = places.strip.right = places.acts.left - kBetweenActs;
  }
  places.map.bottom = places.strip.top = area.bottom - kStrip;
  return places;
}

// The map move of a gesture, in units from the map's middle.
std::optional<MapMove> move_of(const touch::Gesture& gesture, Point middle, float px_per_unit) {
  using Kind = touch::Gesture::Kind;
  const auto offset = [&](Point px) {
    return MapOffset{px.x / px_per_unit - middle.x, px.y / px_per_unit - middle.y};
  };
  MapMove move{.about = offset(gesture.current_px)};
  switch (gesture.kind) {
    case Kind::Drag:
    case Kind::Pinch:
      move.drag = {gesture.delta_px.x / px_per_unit, gesture.delta_px.y / px_per_unit};
      move.scale = gesture.kind == Kind::Pinch ? gesture.scale : 1.0;
      return move;
    case Kind::Turn:
      move.turn_deg = gesture.turn.clockwise_deg();
      return move;
    case Kind::Wheel: {
      constexpr double kNotch = 1.2;
      move.scale = std::pow(kNotch, gesture.notches);
      return move;
    }
    default:
      return std::nullopt;
  }
}

void take_gestures(Ui& ui, Rect map) {
  const float scale = ui.canvas().px_per_unit();
  for (const touch::Gesture& gesture : ui.gestures_in(map)) {
    if (gesture.kind == touch::Gesture::Kind::Tap) {
      ui.emit(act::TouchMap{{gesture.start_px.x / scale - map.center().x,
                             gesture.start_px.y / scale - map.center().y}});
    } else if (const auto move = move_of(gesture, map.center(), scale)) {
      ui.emit(act::MoveMap{*move});
    }
  }
}

const char* up_label(MapUp up) {
  switch (up) {
    case MapUp::North:
      return "North up";
    case MapUp::Rig:
      return "Nose up";
    case MapUp::Turned:
      return "Turned";
  }
  return "";
}

void draw_acts(Ui& ui, Rect area, const Shared& shared, const MapState& map) {
  constexpr double kZoom = 1.6;
  constexpr std::size_t kCount = 5;
  const auto zoom = [](double scale) { return act::MoveMap{{.scale = scale}}; };
  struct Act {
    const char* name;
    const char* label;
    Action action;
    bool on = false;
    bool enabled = true;
  };
  const std::array<Act, kCount> acts{
      Act{"map larger", "+", zoom(kZoom), false, map.view.meters_per_unit > kNearestMap},
      Act{"map smaller", "−", zoom(1.0 / kZoom), false, map.view.meters_per_unit < kFarthestMap},
      Act{"map up", up_label(map.up), act::NextMapUp{}},
      Act{"map center", "Middle", act::CenterMap{}, false, map.view.middle != map::PlanePoint{}},
      Act{"where to stand", "Best spot", act::SwitchArea{}, map.area,
          map.area || !area_stations(shared).empty()}};
  const bool lies = area.width() > area.height();
  const auto of = static_cast<float>(kCount);
  const float size = lies ? (area.width() - (of - 1.0f) * kBetweenActs) / of
                          : std::min(kMapButton, (area.height() - (of - 1.0f) * kBetweenActs) / of);
  for (std::size_t i = 0; i < kCount; ++i) {
    const float along = static_cast<float>(i) * (size + kBetweenActs);
    const Rect rect = lies
                          ? Rect{area.left + along, area.top, area.left + along + size, area.bottom}
                          : Rect{area.left, area.top + along, area.right, area.top + along + size};
    if (ui.button(acts[i].name, rect, acts[i].label,
                  acts[i].on ? ButtonLook::Filled : ButtonLook::Plain, acts[i].enabled)) {
      ui.emit(acts[i].action);
    }
  }
}

void draw_mark(Ui& ui, Rect strip, const StationRow& row, const Shared& shared) {
  constexpr float kAct = 120.0f;
  const ui::Theme& theme = ui.theme();
  const float top = strip.bottom - kMapButton;
  const Rect aim{strip.right - kAct, top, strip.right, strip.bottom};
  const Rect pin{aim.left - kBetweenActs - kAct, top, aim.left - kBetweenActs, strip.bottom};
  const StationKey key = key_of(row.station);
  const bool pinned = is_pinned(shared.stop, key);
  if (ui.button("pin on map", pin, pinned ? "Unpin" : "Pin",
                pinned ? ButtonLook::Filled : ButtonLook::Plain)) {
    ui.emit(act::PinStation{key});
  }
  if (ui.button("aim on map", aim, "Aim", ButtonLook::Filled)) ui.emit(act::SelectStation{key});
  ui.canvas().push_clip({strip.left, strip.top, pin.left - kBetweenActs, strip.bottom});
  ui.canvas().text({strip.left, strip.top + 42.0f},
                   words::chance_number(*row.outlook) + "  " + words::title(row.station),
                   Face::Value, theme.ink);
  ui.canvas().text({strip.left, strip.top + 72.0f},
                   words::distance(row.outlook->distance_m, shared.settings.miles) + " at " +
                       words::whole_degrees(row.outlook->bearing) + " true, RF " +
                       to_text(row.station.rf_channel) + ", " + words::carries(row.station),
                   Face::Small, theme.second_ink);
  ui.canvas().pop_clip();
}

// The color scale, from 0 to 100 %.
void draw_legend(Ui& ui, Rect rect) {
  constexpr int kSteps = 20;
  for (int i = 0; i < kSteps; ++i) {
    const float left = rect.left + rect.width() * static_cast<float>(i) / kSteps;
    ui.canvas().fill({left, rect.top, left + rect.width() / kSteps + 0.5f, rect.top + 16.0f},
                     ui::chance_shade(100.0 * (i + 0.5) / kSteps));
  }
  ui.canvas().outline({rect.left, rect.top, rect.right, rect.top + 16.0f}, ui.theme().ink, 1.5f);
  const float baseline = rect.top + 38.0f;
  ui.canvas().text({rect.left, baseline}, "0 %", Face::Small, ui.theme().ink);
  ui.canvas().text({rect.right, baseline}, "100 %", Face::Small, ui.theme().ink, Align::Right);
}

// The scanned stations and the result.
std::pair<std::string, std::string> area_words(const Shared& shared, const MapState& map) {
  const auto& sheet = map.area_sheet;
  const std::vector<Station> stations = area_stations(shared);
  std::string what = "Chance of ";
  if (stations.size() == 1) what += stations.front().call_sign;
  if (stations.size() > 1) {
    what += fmt::format("the weakest of {} pinned stations", stations.size());
  }
  if (!sheet) return {what, "Computing"};
  if (!sheet->left_out.empty() && sheet->trouble.empty()) {
    what += fmt::format(", without {}", fmt::join(sheet->left_out, ", "));
  }
  if (!sheet->trouble.empty()) return {"Not computed", words::sentence(sheet->trouble)};
  if (sheet->done < 1.0) return {what, fmt::format("{:.0f} % computed", 100.0 * sheet->done)};
  if (!sheet->here_percent) return {what, "Chance here unknown: ground data is missing."};
  std::string found =
      "Here " + words::chance_number(*sheet->here_percent) + ", without interference. ";
  if (sheet->spots.empty()) return {what, found + "No place nearby is clearly better."};
  const AreaSpot& best = sheet->spots.front();
  found += fmt::format("{} {} {} of here.", words::chance_number(best.chance_percent),
                       words::distance(best.distance_m, shared.settings.miles),
                       words::octant(best.bearing));
  return {what, found};
}

void draw_area_words(Ui& ui, Rect strip, const Shared& shared, const MapState& map) {
  constexpr float kAct = 168.0f, kLegend = 168.0f;
  const float top = strip.bottom - kMapButton;
  const Rect radius{strip.right - kAct, top, strip.right, strip.bottom};
  if (ui.button("area radius", radius,
                words::distance(kAreaRadii_m[map.area_radius], shared.settings.miles),
                ButtonLook::Plain)) {
    ui.emit(act::NextAreaRadius{});
  }
  const Rect legend{radius.left - kBetweenActs - kLegend, strip.top + 28.0f,
                    radius.left - kBetweenActs, strip.bottom};
  draw_legend(ui, legend);
  const auto [what, found] = area_words(shared, map);
  ui.canvas().push_clip({strip.left, strip.top, legend.left - kBetweenActs, strip.bottom});
  ui.canvas().text({strip.left, strip.top + 30.0f}, what, Face::WordBold, ui.theme().ink);
  ui.paragraph({strip.left, strip.top + 56.0f}, legend.left - kBetweenActs - strip.left, 24.0f,
               found, Face::Small, ui.theme().second_ink);
  ui.canvas().pop_clip();
}

void draw_strip(Ui& ui, Rect strip, const Shared& shared, const MapState& map) {
  if (map.area) {
    draw_area_words(ui, strip, shared, map);
    return;
  }
  const StationRow* row =
      map.selected && shared.stations ? find_row(*shared.stations, *map.selected) : nullptr;
  if (row != nullptr && row->outlook) {
    draw_mark(ui, strip, *row, shared);
    return;
  }
  const auto& sheet = map.sheet;
  const std::string words = sheet && !sheet->trouble.empty() ? words::sentence(sheet->trouble)
                            : !sheet || !sheet->relief
                                ? "Drawing the ground."
                                : "Every line from the rig is a true bearing. Touch a station; "
                                  "hatched ground is unknown.";
  ui.paragraph({strip.left, strip.top + 40.0f}, strip.width(), 26.0f, words, Face::Small,
               ui.theme().second_ink);
}

}  // namespace

void draw_station_map(Ui& ui, Rect area, const Shared& shared, const MapState& map) {
  if (!shared.findings.position) {
    ui.paragraph({area.left, area.top + 40.0f}, area.width(), 28.0f,
                 "The map needs the rig's position. Set its position under Here.", Face::Word,
                 ui.theme().second_ink);
    return;
  }
  const Places places = places_of(area, ui.portrait(), shared.settings.left_handed);
  take_gestures(ui, places.map);
  draw_map(ui, places.map, shared, map);
  draw_strip(ui, places.strip, shared, map);
  draw_acts(ui, places.acts, shared, map);
}

}  // namespace mastwise::screens
