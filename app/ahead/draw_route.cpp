#include "app/ahead/draw_route.hpp"

#include "app/ui/chance_mark.hpp"
#include "app/ui/column.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

// The route to the places ahead, with the chance of each network along it.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

constexpr float kWayRow = 96.0f, kBar = 30.0f;

// Whole miles or kilometers: the road is longer than the straight lines.
std::string along_words(double at_km, bool miles) {
  return fmt::format("{:.0f}", 1000.0 * at_km / words::distance_unit_m(miles));
}

std::string stretch_words(const RouteRow& row, const RouteSheet& sheet, bool miles) {
  const std::string floor = fmt::format("{:.0f} % and up", sheet.question.floor_percent);
  if (row.stretches.empty()) return "nowhere " + floor;
  std::string words = floor;
  for (const reception::Stretch& stretch : row.stretches) {
    words += &stretch == &row.stretches.front() ? ": " : ", ";
    const std::string from = along_words(stretch.from_km, miles);
    const std::string to = along_words(stretch.to_km, miles);
    words += from == to ? "at " + from : from + " to " + to;
  }
  return words + " " + words::distance_unit(miles);
}

// A place's chance fills the bar halfway to its neighbors.
void draw_bar(Ui& ui, Rect bar, const RouteRow& row, double length_km) {
  const auto across = [&](double at_km) {
    return bar.left + bar.width() * static_cast<float>(at_km / length_km);
  };
  ui.canvas().fill(bar, ui.theme().panel);
  const auto& chances = row.chances;
  for (std::size_t i = 0; i < chances.size(); ++i) {
    if (!chances[i].chance_percent) continue;
    const double from = i == 0 ? 0.0 : (chances[i - 1].at_km + chances[i].at_km) / 2.0;
    const double to = i + 1 == chances.size() ? chances[i].at_km
                                              : (chances[i].at_km + chances[i + 1].at_km) / 2.0;
    ui.canvas().fill({across(from), bar.top, across(to) + 0.5f, bar.bottom},
                     ui::chance_shade(*chances[i].chance_percent));
  }
  constexpr float kLeast = 3.0f;  // a stretch of one place has zero length
  for (const reception::Stretch& stretch : row.stretches) {
    ui.canvas().fill({across(stretch.from_km) - kLeast, bar.bottom + 3.0f,
                      across(stretch.to_km) + kLeast, bar.bottom + 9.0f},
                     ui.theme().accent);
  }
  ui.canvas().outline(bar, ui.theme().ink, 1.5f);
}

}  // namespace

float draw_route(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead) {
  float y = area.top + 30.0f;
  const auto say = [&](const std::string& words, ui::Color color) {
    y = ui.paragraph({area.left, y}, area.width(), 26.0f, words, Face::Small, color);
  };
  if (!ahead.route) {
    say(ahead.places.empty() ? "Add a place to survey the route there." : "Surveying the route.",
        ui.theme().second_ink);
    return y;
  }
  const RouteSheet& sheet = *ahead.route;
  if (!sheet.trouble.empty()) {
    say(words::sentence(sheet.trouble), ui.theme().warning);
    return y;
  }
  const bool miles = shared.settings.miles;
  std::string about = fmt::format(
      "{} in straight lines through your places, in the order added; the road is longer.",
      words::distance(1000.0 * sheet.length_km, miles));
  if (sheet.done < 1.0) about = fmt::format("{:.0f} % surveyed. ", 100.0 * sheet.done) + about;
  say(about, ui.theme().second_ink);
  y -= 8.0f;
  for (const RouteRow& row : sheet.rows) {
    ui.canvas().push_clip({area.left, y, area.right, y + kWayRow});
    ui.canvas().text({area.left, y + 24.0f}, row.network, Face::WordBold, ui.theme().ink);
    const float name = ui.canvas().text_width(row.network, Face::WordBold) + 16.0f;
    ui.canvas().text({area.left + name, y + 24.0f}, stretch_words(row, sheet, miles), Face::Small,
                     ui.theme().ink);
    ui.canvas().pop_clip();
    draw_bar(ui, {area.left, y + 34.0f, area.right, y + 34.0f + kBar}, row, sheet.length_km);
    y += kWayRow;
  }
  return y;
}

}  // namespace mastwise::screens
