#include <fmt/format.h>

#include <cmath>

#include "app/screens/screens.hpp"
#include "app/words.hpp"

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

constexpr float kRow = 96.0f, kSearch = 72.0f;

std::string horizon_words(const StationRow& row) {
  if (!row.distance_m) return "position not known";
  if (!row.horizon_m) return "height not known";
  const double times = *row.distance_m / *row.horizon_m;
  if (times <= 1.0) return "within the radio horizon";
  return fmt::format("{:.1f} times the radio horizon", times);
}

void draw_row(Ui& ui, Rect rect, const StationRow& row, const Model& model) {
  const Station& station = row.station;
  const std::string name = "station " + station.call_sign + " " + station.id;
  if (ui.touchable(name, rect, true, "stations")) {
    ui.emit(act::SelectStation{station.provenance.source.name, station.id});
  }
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const bool chosen = model.stop.target && model.stop.target->id == station.id &&
                      model.stop.target->provenance.source == station.provenance.source;
  if (chosen || ui.pressed(name)) canvas.fill(rect.inset(2.0f), theme.lobe, 10.0f);
  const float left = rect.left + 16.0f, right = rect.right - 16.0f;
  const float upper = rect.top + 40.0f, lower = rect.top + 74.0f;
  const float middle = rect.left + 0.56f * rect.width();
  canvas.text({left, upper}, words::title(station), Face::Value, theme.ink);
  canvas.text({middle, upper}, fmt::format("RF {}", to_text(station.rf_channel)), Face::Word,
              theme.ink);
  canvas.push_clip({left, rect.top, middle - 16.0f, rect.bottom});
  canvas.text({left, lower}, words::carries(station), Face::Word, theme.second_ink);
  canvas.pop_clip();
  canvas.text({middle, lower}, horizon_words(row), Face::Word, theme.second_ink);
  if (row.distance_m && row.bearing) {
    canvas.text({right, upper}, words::distance(*row.distance_m, model.settings.miles),
                Face::Value, theme.ink, Align::Right);
    std::string heading = words::whole_degrees(*row.bearing) + " true";
    if (model.findings.field) {
      const auto magnetic = to_magnetic(*row.bearing, model.findings.field->declination);
      heading = words::whole_degrees(magnetic) + " magnetic";
    }
    canvas.text({right, lower}, heading, Face::Word, theme.second_ink, Align::Right);
  }
  canvas.line({rect.left, rect.bottom}, {rect.right, rect.bottom}, theme.rule, 1.5f);
}

std::string list_state(const Model& model) {
  if (!model.stations) return "Looking through the stations";
  if (!model.stations->trouble.empty()) return model.stations->trouble;
  if (!model.stations->rows.empty()) {
    return "No forecast yet: by distance against the radio horizon, antenna 4 m up";
  }
  if (!model.findings.position && model.search.empty()) {
    return "The position is not known yet. Set it under Here, or search by name.";
  }
  if (!model.search.empty()) return "Nothing is called so. Try fewer letters.";
  return "No stations yet. Import a station table, or look at the practice area.";
}

void draw_search(Ui& ui, Rect area, const Model& model) {
  const ui::Theme& theme = ui.theme();
  const bool searching = !model.search.empty();
  Rect field{area.left, area.top, area.right, area.top + kSearch};
  if (searching) field.right -= 136.0f;
  if (ui.touchable("search", field)) ui.emit(act::OpenKeypad{KeypadPurpose::Search});
  ui.canvas().fill(field, theme.panel, 14.0f);
  ui.canvas().outline(field.inset(1.5f), theme.accent, 3.0f, 14.0f);
  const float baseline = field.centre().y + 8.0f;
  ui.canvas().text({field.left + 20.0f, baseline},
                   searching ? model.search : "Search programme, network, call sign or channel",
                   searching ? Face::Value : Face::Word, searching ? theme.ink : theme.second_ink);
  const Rect clear{field.right + 16.0f, area.top, area.right, area.top + kSearch};
  if (searching && ui.button("clear search", clear, "Clear", ui::ButtonLook::Plain)) {
    ui.emit(act::ClearSearch{});
  }
}

}  // namespace

void draw_station_rows(Ui& ui, Rect view, const Model& model) {
  view.top = ui.paragraph({view.left, view.top + 20.0f}, view.width(), 24.0f, list_state(model),
                          Face::Small, ui.theme().second_ink) -
             8.0f;
  ui.canvas().line({view.left, view.top}, {view.right, view.top}, ui.theme().rule, 1.5f);
  if (!model.stations) return;
  const auto& rows = model.stations->rows;
  const float offset =
      ui.begin_scroll("stations", view, kRow * static_cast<float>(rows.size()));
  const auto first = static_cast<std::size_t>(offset / kRow);
  const auto fitting = static_cast<std::size_t>(view.height() / kRow) + 2;
  for (std::size_t i = first; i < std::min(rows.size(), first + fitting); ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    draw_row(ui, {view.left, top, view.right, top + kRow}, rows[i], model);
  }
  ui.end_scroll();
}

void draw_stations(Ui& ui, Rect area, const Model& model) {
  draw_search(ui, area, model);
  draw_station_rows(ui, {area.left, area.top + kSearch + 16.0f, area.right, area.bottom}, model);
}

}  // namespace mastwise::screens
