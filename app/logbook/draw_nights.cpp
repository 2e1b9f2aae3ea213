#include "app/logbook/draw_parts.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/mini_dial.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/texture.hpp"
#include "app/words/language.hpp"
#include "app/words/records.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

// The nights here before, and the heading that worked.
namespace mastwise::screens::log {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

constexpr float kNight = 40.0f, kDial = 44.0f;

// What could not be known is dotted.
void draw_empty_dial(Ui& ui, Point center) {
  constexpr int kDots = 24;
  for (int i = 0; i < kDots; ++i) {
    ui.canvas().disc(ui::around(center, kDial, i * 360.0 / kDots), 2.0f, ui.theme().second_ink);
  }
}

void draw_worked(Ui& ui, Rect row, const Shared& shared, const LogbookFound& found) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const Point center{row.left + kDial + 8.0f, row.center().y};
  const float left = center.x + kDial + 28.0f;
  if (!found.worked || !found.worked_on_compass) {
    draw_empty_dial(ui, center);
    ui.paragraph({left, row.center().y - 4.0f}, row.right - left, 30.0f,
                 found.nights.empty() ? words::say("No heading tried yet")
                                      : words::say("No steady picture yet"),
                 Face::Text, theme.second_ink);
    return;
  }
  const WorkedHeading& worked = *found.worked;
  std::optional<Slack> spread;
  if (worked.spread_deg) spread = Slack{*worked.spread_deg, *worked.spread_deg};
  ui::draw_mini_dial(ui, {.center = center,
                          .radius = kDial,
                          .nose = shared.findings.nose,
                          .heading = worked.heading,
                          .slack = spread});
  std::string figures = words::whole_degrees(*found.worked_on_compass);
  canvas.text({left, row.center().y + 4.0f}, figures, Face::Second, theme.ink);
  if (worked.spread_deg) {
    const float at = left + canvas.text_width(figures, Face::Second) + 10.0f;
    canvas.text({at, row.center().y + 2.0f}, fmt::format("± {:.0f}°", *worked.spread_deg),
                Face::Cardinal, theme.ink);
  }
  ui::kite(canvas, {left + 10.0f, row.center().y + 28.0f}, 13.0f, theme.ink, false);
  const std::string north = words::say("magnetic, worked");
  const bool fits = left + 30.0f + canvas.text_width(north, Face::Text) <= row.right;
  canvas.text({left + 30.0f, row.center().y + 37.0f}, fits ? north : words::say("magnetic"),
              Face::Text, theme.ink);
}

void draw_night(Ui& ui, Rect row, const NightShown& night, const std::string& date, float dates) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const float baseline = row.center().y + 9.0f;
  canvas.text({row.left, baseline}, date, Face::Text, theme.ink);
  constexpr float kHeading = 72.0f;
  const float heading = row.left + dates + kHeading;
  // In a narrow column the outcomes take the place of the heading, which stands above.
  const std::size_t all = night.night.outcomes.size();
  const bool narrow =
      heading + 16.0f + canvas.text_width(words::of_all(all, all), Face::Text) > row.right;
  if (night.on_compass && !narrow) {
    canvas.text({heading, baseline}, words::whole_degrees(*night.on_compass), Face::TextBold,
                theme.ink, Align::Right);
  }
  draw_outcomes(ui, {row.right, row.center().y},
                row.right - (narrow ? row.left + dates : heading) - 16.0f, night.night.outcomes);
}

}  // namespace

void draw_outcome(ui::Canvas& canvas, Point center, float radius, Outcome outcome,
                  ui::Color color) {
  if (outcome == Outcome::steady) return canvas.disc(center, radius, color);
  if (outcome == Outcome::breaks_up) {
    std::array<Point, 13> half;
    for (std::size_t i = 0; i < half.size(); ++i) {
      half[i] = ui::around(center, radius, 180.0 + 15.0 * static_cast<double>(i));
    }
    canvas.polygon(half, color);
  }
  canvas.circle(center, radius - 1.2f, color, 2.4f);
}

float draw_outcomes(Ui& ui, Point right, float room, const std::vector<Outcome>& outcomes) {
  constexpr float kRadius = 9.0f, kStep = 27.0f;
  ui::Canvas& canvas = ui.canvas();
  const ui::Color ink = ui.theme().ink;
  const float all = kStep * static_cast<float>(outcomes.size());
  if (all <= room) {
    float x = right.x - all + kStep / 2.0f;
    for (const Outcome outcome : outcomes) {
      draw_outcome(canvas, {x, right.y}, kRadius, outcome, ink);
      x += kStep;
    }
    return right.x - all;
  }
  // How many of all were steady.
  const auto steady = std::count(outcomes.begin(), outcomes.end(), Outcome::steady);
  const std::string count = words::of_all(static_cast<std::size_t>(steady), outcomes.size());
  canvas.text({right.x, right.y + 9.0f}, count, Face::Text, ink, Align::Right);
  const float left = right.x - canvas.text_width(count, Face::Text);
  const float x = left - 8.0f - kRadius;
  if (x - kRadius < right.x - room) return left;
  draw_outcome(canvas, {x, right.y}, kRadius, Outcome::steady, ink);
  return x - kRadius;
}

float draw_nights(Ui& ui, Rect area, const Shared& shared, const LogbookState& logbook) {
  const LogbookFound& found = logbook.found;
  const bool known = shared.findings.position.has_value();
  ui::text_within(ui.canvas(), {area.left, area.top + 30.0f}, area.width(),
                  known ? words::nights_here(found.nights.size()) : words::say("Nights here"),
                  Face::Value, ui.theme().ink);
  float y = area.top + 48.0f;
  draw_worked(ui, {area.left, y, area.right, y + 108.0f}, shared, found);
  y += 116.0f;
  constexpr std::size_t kMost = 3;
  std::vector<std::string> dates;
  float widest = 0.0f;
  for (const NightShown& night : found.nights) {
    if (dates.size() == kMost) break;
    dates.push_back(words::near_date(night.day, shared.findings.today));
    widest = std::max(widest, ui.canvas().text_width(dates.back(), Face::Text));
  }
  for (std::size_t i = 0; i < dates.size() && y + kNight <= area.bottom; ++i) {
    draw_night(ui, {area.left, y, area.right, y + kNight}, found.nights[i], dates[i], widest);
    y += kNight;
  }
  return y;
}

}  // namespace mastwise::screens::log
