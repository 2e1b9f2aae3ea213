#include "app/map/draw_legend.hpp"

#include "app/map/draw_frame.hpp"
#include "app/map/update.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {

using ui::Face;
using ui::Point;
using ui::Rect;
using words::say;

namespace {

constexpr float kEntryMarkGap = 10.0f, kEntryGap = 30.0f, kLegendSide = 20.0f;
constexpr float kScaleHeight = 48.0f, kScaleWidth = 190.0f;

std::string ridge_words(const Shared& shared, const MapState& map) {
  const std::string words = words::fill(say("ridge in the way of {station}"),
                                        {{"station", shared.stop.target->call_sign}});
  constexpr double kAcross = 700.0;  // units, half of a map's diagonal
  const double reach_m = std::hypot(map.view.middle.east_m, map.view.middle.north_m) +
                         kAcross * map.view.meters_per_unit;
  if (reach_m <= kShadow_m) return words;
  return words + ", " +
         words::fill(say("to {distance}"),
                     {{"distance", words::whole_distance(kShadow_m, shared.settings.miles)}});
}

bool any_unknown(const std::vector<std::uint8_t>& cells) {
  return std::find(cells.begin(), cells.end(), std::uint8_t{0}) != cells.end();
}

}  // namespace

Legend::Legend(ui::Ui& ui, const Shared& shared, const MapState& map) : ui_(ui) {
  ui::Canvas& canvas = ui_.canvas();
  const ui::Theme& theme = ui_.theme();
  const auto& sheet = map.sheet;
  const reception::RidgeShadow* shadow = map.area ? nullptr : shadow_of_target(map, shared);
  if (shadow != nullptr) {
    entries_.push_back({[&canvas, &theme](Point at) {
                          for (int i = -1; i <= 2; ++i) {
                            const float x = at.x + 10.0f * static_cast<float>(i) - 5.0f;
                            canvas.line({x - 6.0f, at.y - 11.0f}, {x + 6.0f, at.y + 11.0f},
                                        theme.second_ink, 1.6f);
                          }
                        },
                        44.0f, ridge_words(shared, map)});
  }
  if (sheet && ((sheet->relief && any_unknown(sheet->relief->shade)) ||
                (shadow != nullptr && any_unknown(shadow->cells)))) {
    entries_.push_back({[&canvas, &theme](Point at) {
                          std::vector<Point> dots;
                          for (const float x : {-12.0f, 0.0f, 12.0f}) {
                            for (const float y : {-7.0f, 7.0f}) dots.push_back(at + Point{x, y});
                          }
                          canvas.squares(dots, 3.2f, theme.second_ink);
                        },
                        36.0f, say("not known")});
  }
  const auto& slack = shared.findings.slack;
  if (shared.findings.card && slack) {
    entries_.push_back(
        {[&canvas, &theme](Point at) {
           canvas.arc({at.x, at.y + 26.0f}, 32.0f, -36.0f, 36.0f, theme.accent, 9.0f);
         },
         42.0f, slack->all_round() ? say("any heading") : say("aiming tolerance")});
  }
  const bool stations = !map.area && !shared.findings.listed.empty();
  if (stations) {
    entries_.push_back({[&canvas, &theme, look = ui.look()](Point at) {
                          ui::draw_chance_ring(canvas, theme, look, at, 99.0);
                        },
                        40.0f, say("best chance there")});
  }
  const auto north = [&](bool filled, const char* words) {
    entries_.push_back(
        {[&canvas, &theme, filled](Point at) { ui::kite(canvas, at, 13.0f, theme.ink, filled); },
         22.0f, say(words)});
  };
  if (shared.findings.card) return;  // whose card has both
  north(true, "true");
  if (shared.findings.field) north(false, "magnetic");
}

float Legend::width_of(const Entry& entry, float share) const {
  return entry.mark_width + kEntryMarkGap +
         share * ui_.canvas().text_width(entry.words, Face::Text);
}

std::vector<std::size_t> Legend::breaks(float width, float share) const {
  std::vector<std::size_t> found;
  float used = 0.0f;
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    const float entry = width_of(entries_[i], share);
    if (used > 0.0f && used + kEntryGap + entry > width - 2.0f * kLegendSide) {
      found.push_back(i);
      used = 0.0f;
    }
    used += (used > 0.0f ? kEntryGap : 0.0f) + entry;
  }
  return found;
}

// Of the letters' size, so that the fewest entries are left out.
float Legend::share_in(float width, std::size_t most_lines) const {
  constexpr float kStep = 0.04f;
  const float least = ui_.canvas().usual_share(Face::Text);
  for (float share = 1.0f; share > least; share -= kStep) {
    if (breaks(width, share).size() < most_lines) return share;
  }
  return least;
}

float Legend::height(float width, std::size_t most_lines) const {
  const std::size_t lines = breaks(width, share_in(width, most_lines)).size() + 1;
  return kLine * static_cast<float>(std::min(lines, most_lines));
}

void Legend::draw(Rect rect) const {
  ui::Canvas& canvas = ui_.canvas();
  const ui::Theme& theme = ui_.theme();
  canvas.fill(rect, theme.panel);
  canvas.line({rect.left, rect.top}, {rect.right, rect.top}, theme.rule, 2.0f);
  const auto lines = static_cast<std::size_t>(std::lround(rect.height() / kLine));
  const float share = share_in(rect.width(), lines);
  const std::vector<std::size_t> ends = breaks(rect.width(), share);
  float left = rect.left + kLegendSide, middle = rect.top + kLine / 2.0f;
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    if (std::find(ends.begin(), ends.end(), i) != ends.end()) {
      left = rect.left + kLegendSide;
      middle += kLine;
      if (middle > rect.bottom) return;
    }
    const Entry& entry = entries_[i];
    entry.mark({left + entry.mark_width / 2.0f, middle});
    canvas.text({left + entry.mark_width + kEntryMarkGap, middle + 9.0f}, entry.words, Face::Text,
                theme.ink, ui::Align::Left, share);
    left += width_of(entry, share) + kEntryGap;
  }
}

Rect scale_bar_rect(Rect map, bool right) {
  constexpr float kEdge = 20.0f;
  const float left = right ? map.right - kEdge - kScaleWidth : map.left + kEdge;
  return {left, map.bottom - 12.0f - kScaleHeight, left + kScaleWidth, map.bottom - 12.0f};
}

void draw_scale_bar(ui::Ui& ui, Rect rect, const MapView& view, bool miles) {
  // The longest of 1, 2 and 5 with zeros that has room.
  const double unit_m = words::distance_unit_m(miles);
  const double room = rect.width() * view.meters_per_unit / unit_m;
  const double ten = std::pow(10.0, std::floor(std::log10(room)));
  const double length = ten * (room >= 5.0 * ten ? 5.0 : room >= 2.0 * ten ? 2.0 : 1.0);
  const auto units = static_cast<float>(length * unit_m / view.meters_per_unit);
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  constexpr float kHalfTick = 8.0f, kWidth = 3.0f;
  const std::string words = fmt::format("{:g} {}", length, words::distance_unit(miles));
  const float shown = std::max(units, canvas.text_width(words, Face::Text)) + 16.0f;
  canvas.fill({rect.left - 8.0f, rect.top - 4.0f, rect.left - 8.0f + shown, rect.bottom + 4.0f},
              theme.paper, 6.0f);
  const float baseline = rect.bottom - kHalfTick;
  canvas.line({rect.left, baseline}, {rect.left + units, baseline}, theme.ink, kWidth);
  for (const float x : {rect.left, rect.left + units}) {
    canvas.line({x, baseline - kHalfTick}, {x, baseline + kHalfTick}, theme.ink, kWidth);
  }
  canvas.text({rect.left + units / 2.0f, rect.top + 22.0f}, words, Face::Text, theme.ink,
              ui::Align::Center);
}

}  // namespace mastwise::screens
