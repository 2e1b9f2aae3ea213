#include "app/shared/actions.hpp"
#include "app/stations/actions.hpp"
#include "app/stations/draw.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

constexpr float kStationRow = 96.0f, kSearch = 72.0f, kBetween = 16.0f;
constexpr float kRoomForWay = 480.0f;     // units of a row that has room for distance and heading
constexpr float kRoomForReason = 760.0f;  // units of a row that has room for the dearest reason

void draw_chance(Ui& ui, Rect rect, const StationRow& row) {
  if (!row.outlook) return;
  const ui::Theme& theme = ui.theme();
  const reception::Outlook& outlook = *row.outlook;
  ui.canvas().text({rect.left, rect.top + 36.0f}, words::chance_number(outlook), Face::Value,
                   theme.ink);
  ui.canvas().text({rect.left, rect.bottom - 12.0f}, words::chance_word(outlook), Face::Small,
                   theme.ink);
  if (outlook.chance_percent) {
    ui::draw_chance_mark(ui, {rect.left, rect.top + 46.0f, rect.right, rect.top + 60.0f},
                         reception::chance_word(*outlook.chance_percent));
  }
}

void draw_way(Ui& ui, Rect rect, const StationRow& row, const Shared& shared, ui::Color second) {
  const ui::Theme& theme = ui.theme();
  if (!row.outlook) return;
  ui.canvas().text({rect.right, rect.top + 40.0f},
                   words::distance(row.outlook->distance_m, shared.settings.miles), Face::Value,
                   theme.ink, Align::Right);
  std::string heading = words::whole_degrees(row.outlook->bearing) + " true";
  if (const auto magnetic = on_compass_here(shared, row.outlook->bearing)) {
    heading = words::whole_degrees(*magnetic) + " magnetic";
  }
  ui.canvas().text({rect.right, rect.top + 74.0f}, heading, Face::Word, second, Align::Right);
}

// Pinned stations are in every turn plan of this stop, pinned networks in those of all stops.
void draw_pin(Ui& ui, Rect rect, const StationRow& row, const std::string& brings,
              const Shared& shared) {
  const StationKey key = key_of(row.station);
  const std::string name = brings.empty() ? "pin " + row.station.call_sign + " " + row.station.id
                                          : "pin network " + brings;
  const bool pinned =
      brings.empty() ? is_pinned(shared.stop, key) : is_pinned(shared.settings, brings);
  if (ui.touchable(name, rect, true, "stations")) {
    ui.emit(brings.empty() ? Action(act::PinStation{key}) : Action(act::PinNetwork{brings}));
  }
  const Point center = rect.center();
  const ui::Theme& theme = ui.theme();
  ui.canvas().circle(center, 14.0f, theme.accent, 3.0f);
  if (pinned) ui.canvas().disc(center, 9.0f, theme.accent);
}

// `brings`: the row's network if the list is by network.
void draw_row(Ui& ui, Rect rect, const StationRow& row, const std::string& brings,
              const Shared& shared) {
  constexpr float kPin = 72.0f;
  draw_pin(ui, {rect.left, rect.top, rect.left + kPin, rect.bottom}, row, brings, shared);
  const float edge = rect.left;
  rect.left += kPin;
  const Station& station = row.station;
  const std::string name = "station " + station.call_sign + " " + station.id;
  if (ui.touchable(name, rect, true, "stations")) ui.emit(act::SelectStation{key_of(station)});
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const bool chosen = shared.stop.target && key_of(*shared.stop.target) == key_of(station);
  const bool lit = chosen || ui.pressed(name);
  if (lit) canvas.fill(rect.inset(2.0f), theme.lobe, 10.0f);
  const ui::Color second = second_ink_on_row(theme, lit);

  constexpr float kChance = 128.0f, kWay = 168.0f;
  const float left = rect.left + 12.0f, right = rect.right - 12.0f;
  draw_chance(ui, {left, rect.top, left + kChance, rect.bottom}, row);
  const bool with_way = rect.width() >= kRoomForWay;
  if (with_way) {
    draw_way(ui, {right - kWay, rect.top, right, rect.bottom}, row, shared, second);
  }
  const float text = left + kChance + 24.0f, end = with_way ? right - kWay - kBetween : right;
  const float upper = rect.top + 40.0f, lower = rect.top + 74.0f;
  const bool with_reason = rect.width() >= kRoomForReason;
  const float middle = with_reason ? text + 0.30f * (end - text) : end;
  const auto fitted = [&](const std::string& words, Face face) {
    return ui::shortened(canvas, words, face, middle - 8.0f - text);
  };
  canvas.text({text, upper}, fitted(words::title(station), Face::Value), Face::Value, theme.ink);
  canvas.text({text, lower}, fitted(words::carries(station), Face::Word), Face::Word, second);
  if (with_reason) {
    canvas.text({middle, upper}, "RF " + to_text(station.rf_channel), Face::Word, theme.ink);
    if (!row.reasons.empty()) {
      const std::string reason =
          words::sentence(words::reason(row.reasons.front(), shared.settings.miles));
      const bool fits = canvas.text_width(reason, Face::Small) <= end - middle;
      canvas.push_clip({middle, rect.top, end, rect.bottom});
      ui.paragraph({middle, fits ? lower : lower - 11.0f}, end - middle, 22.0f, reason, Face::Small,
                   second);
      canvas.pop_clip();
    }
  }
  canvas.line({edge, rect.bottom}, {rect.right, rect.bottom}, theme.rule, 1.5f);
}

std::string list_state(const Shared& shared, const StationsState& list) {
  if (!shared.stations) return "Computing the paths";
  const StationsAnswer& answer = *shared.stations;
  if (!answer.trouble.empty()) return answer.trouble;
  if (answer.measured < answer.all) {
    return fmt::format("{} of {} paths computed", answer.measured, answer.all);
  }
  if (!shared.findings.listed.empty()) {
    std::string said = "Chance of a steady picture " + words::evening() + ". ";
    said +=
        list.by_network ? "The ring pins a network wherever you stop." : "The ring pins a station.";
    if (!list.data_caution.empty()) said += " " + list.data_caution;
    if (!list.wanted.empty()) {
      said += fmt::format(" Pinned: {}.", fmt::join(list.wanted, "; "));
    }
    return said;
  }
  if (!answer.rows.empty()) return "No station has that chance here. Show any chance.";
  if (!shared.findings.position && shared.search.empty()) {
    return "Position unknown. Set it under Here, or search by name.";
  }
  if (!shared.search.empty()) return "No match. Try fewer letters.";
  return "No stations yet. Import stations, or use the practice area.";
}

void draw_search_field(Ui& ui, Rect field, const Shared& shared) {
  const ui::Theme& theme = ui.theme();
  const bool searching = !shared.search.empty();
  constexpr float kRoomForHint = 330.0f;
  const char* hint = field.width() < kRoomForHint ? "Search" : "Search name, network, channel";
  if (ui.touchable("search", field)) ui.emit(act::OpenKeypad{KeypadPurpose::Search});
  ui.canvas().fill(field, theme.panel, 14.0f);
  ui.canvas().outline(field.inset(1.5f), theme.accent, 3.0f, 14.0f);
  ui.canvas().push_clip(field.inset(10.0f));
  ui.canvas().text({field.left + 20.0f, field.center().y + 8.0f}, searching ? shared.search : hint,
                   searching ? Face::Value : Face::Word, searching ? theme.ink : theme.second_ink);
  ui.canvas().pop_clip();
}

// The network found by the search, which can be pinned for every stop.
bool has_pinnable(const StationsState& list) {
  return !list.pinnable.empty();
}

void draw_pinnable(Ui& ui, Rect rect, const Shared& shared, const StationsState& list) {
  const std::string& network = list.pinnable;
  const bool pinned = is_pinned(shared.settings, network);
  const std::string label =
      network + (pinned ? " is pinned at every stop" : ": pin it at every stop");
  if (ui.button("pin what is searched", rect, label,
                pinned ? ui::ButtonLook::Filled : ui::ButtonLook::Plain)) {
    ui.emit(act::PinNetwork{network});
  }
}

void draw_data_button(Ui& ui, Rect rect, const char* label, ui::ButtonLook look,
                      const Shared& shared) {
  if (shared.findings.importing) label = "Importing";
  if (ui.button("data", rect, label, look)) ui.emit(act::OpenSheet{Sheet::Import});
}

bool without_stations(const Shared& shared) {
  return shared.stations && shared.stations->rows.empty() && shared.stations->trouble.empty() &&
         shared.search.empty() && shared.stations->measured == shared.stations->all;
}

void draw_filters(Ui& ui, Rect area, const Shared& shared, const StationsState& list) {
  constexpr float kFilter = 160.0f, kMap = 104.0f, kData = 124.0f;
  if (!ui.portrait() && shared.search.empty() && !without_stations(shared)) {
    draw_data_button(ui, {area.right - kData, area.top, area.right, area.top + kSearch}, "Data",
                     ui::ButtonLook::Plain, shared);
    area.right -= kData + kBetween;
  }
  const Rect map{area.right - kMap, area.top, area.right, area.top + kSearch};
  const Rect networks{map.left - kBetween - kFilter, area.top, map.left - kBetween,
                      area.top + kSearch};
  const Rect floor{networks.left - kBetween - kFilter, area.top, networks.left - kBetween,
                   area.top + kSearch};
  Rect field{area.left, area.top, floor.left - kBetween, area.top + kSearch};
  if (!shared.search.empty()) {
    const Rect clear{field.right - 112.0f, area.top, field.right, area.top + kSearch};
    field.right = clear.left - kBetween;
    if (ui.button("clear search", clear, "Clear", ui::ButtonLook::Plain)) {
      ui.emit(act::ClearSearch{});
    }
  }
  draw_search_field(ui, field, shared);
  if (ui.button("map", map, "Map", ui::ButtonLook::Plain)) {
    ui.emit(act::Show{Place::Map});
  }
  const double percent = kChanceFloors[list.chance_floor];
  const std::string label = percent > 0.0 ? fmt::format("{:.0f} % and up", percent) : "Any chance";
  if (ui.button("chance floor", floor, label,
                percent > 0.0 ? ui::ButtonLook::Filled : ui::ButtonLook::Plain)) {
    ui.emit(act::NextChanceFloor{});
  }
  if (ui.button("by network", networks, "By network",
                list.by_network ? ui::ButtonLook::Filled : ui::ButtonLook::Plain)) {
    ui.emit(act::SwitchGrouping{});
  }
}

}  // namespace

void draw_station_rows(Ui& ui, Rect view, const Shared& shared, const StationsState& list) {
  view.top = ui.paragraph({view.left, view.top + 20.0f}, view.width(), 24.0f,
                          list_state(shared, list), Face::Small, ui.theme().second_ink) -
             8.0f;
  ui.canvas().line({view.left, view.top}, {view.right, view.top}, ui.theme().rule, 1.5f);
  if (!shared.stations) return;
  const auto& listed = shared.findings.listed;
  const float offset =
      ui.begin_scroll("stations", view, kStationRow * static_cast<float>(listed.size()));
  const auto first = static_cast<std::size_t>(offset / kStationRow);
  const auto fitting = static_cast<std::size_t>(view.height() / kStationRow) + 2;
  for (std::size_t i = first; i < std::min(listed.size(), first + fitting); ++i) {
    const float top = view.top + kStationRow * static_cast<float>(i) - offset;
    const auto& brought = list.brought;
    draw_row(ui, {view.left, top, view.right, top + kStationRow}, shared.stations->rows[listed[i]],
             i < brought.size() ? brought[i] : std::string(), shared);
  }
  ui.end_scroll();
}

Rect draw_stations(Ui& ui, Rect area, const Shared& shared, const StationsState& list) {
  draw_filters(ui, area, shared, list);
  area.top += kSearch + kBetween;
  const Rect row{area.left, area.top, area.right, area.top + kSearch};
  const bool none = without_stations(shared);
  if (has_pinnable(list)) {
    draw_pinnable(ui, row, shared, list);
    area.top = row.bottom + kBetween;
  } else if (none || (ui.portrait() && shared.search.empty())) {
    draw_data_button(ui, row, none ? "Import stations" : "Data and its age",
                     none ? ui::ButtonLook::Filled : ui::ButtonLook::Plain, shared);
    area.top = row.bottom + kBetween;
  }
  draw_station_rows(ui, area, shared, list);
  return area;
}

}  // namespace mastwise::screens
