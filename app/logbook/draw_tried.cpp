#include "app/logbook/actions.hpp"
#include "app/logbook/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/texture.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/records.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

// What can come in here by the forecast, and what did, by one touch.
namespace mastwise::screens::log {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

constexpr float kLeastRow = 88.0f, kSegments = 408.0f, kLeastSegments = 390.0f, kName = 230.0f,
                kBetween = 16.0f;

// Rows that fill the view; where there are more, about half of one shows at the end.
float row_height(float view, std::size_t rows) {
  constexpr float kMostRow = 106.0f, kStep = 2.0f, kHalf = 0.5f;
  const float fitting = std::max(1.0f, std::floor(view / kLeastRow));
  if (static_cast<float>(rows) <= fitting) return std::min(view / fitting, kMostRow);
  float best = kLeastRow, best_off = 1.0f;
  for (float height = kLeastRow; height <= kMostRow; height += kStep) {
    const float shown = view / height;
    const float off = std::fabs(shown - std::floor(shown) - kHalf);
    if (off < best_off) {
      best = height;
      best_off = off;
    }
  }
  return best;
}

float segments_width(Rect view) {
  return std::clamp(view.width() - kName - kBetween, kLeastSegments, kSegments);
}

std::array<ui::Option, 3> options() {
  const auto option = [](Outcome outcome, const char* key) {
    return ui::Option{
        .key = key,
        .label = words::outcome(outcome),
        .picture = [outcome](ui::Canvas& canvas, Rect rect, ui::Color color) {
          draw_outcome(canvas, {rect.center().x, rect.center().y + 2.0f}, 10.0f, outcome, color);
        }};
  };
  return {option(Outcome::steady, "steady"), option(Outcome::breaks_up, "breaks up"),
          option(Outcome::nothing, "nothing")};
}

// The band, or the day of an outcome that is not of today.
std::string aside_words(const TriedRow& row) {
  if (row.seen_on) return words::day_and_month(*row.seen_on);
  if (!row.station.outlook) return {};
  return row.station.outlook->band == Band::uhf ? words::say("UHF") : words::say("VHF");
}

// The chance and its mark, up to `right`.
void draw_forecast(Ui& ui, Rect cell, float baseline, float right, const TriedRow& row) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  if (!row.forecast_percent) {
    const bool decodable =
        !row.station.outlook || row.station.outlook->decoding != gear::Decoding::impossible;
    const std::string words = words::say(decodable ? "unknown" : "not on this TV");
    ui::text_within(canvas, {cell.left, baseline}, right - cell.left, words, Face::Text,
                    theme.second_ink);
    return;
  }
  const std::string chance = words::chance_number(*row.forecast_percent);
  ui::text_within(canvas, {cell.left, baseline}, right - cell.left, chance, Face::TextBold,
                  theme.ink);
  constexpr float kChance = 76.0f, kMark = 112.0f, kLeastMark = 44.0f;
  const float left = cell.left + kChance;
  const float width = std::min(kMark, right - left);
  if (width < kLeastMark) return;
  ui::draw_chance_mark(ui, {left, baseline - 20.0f, left + width, baseline + 2.0f},
                       reception::chance_word(*row.forecast_percent));
}

// In a narrow cell the channel stands below the name, instead of the band.
void draw_name(Ui& ui, Rect cell, const TriedRow& row) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const float upper = cell.center().y - 8.0f, lower = cell.center().y + 29.0f;
  const std::string channel =
      row.channel.empty() ? "RF " + to_text(row.station.station.rf_channel) : row.channel;
  const bool narrow = cell.width() < kName;
  const Face face = narrow ? Face::TextBold : Face::Value;
  canvas.text({cell.right, narrow ? lower : upper}, channel, face, theme.ink, Align::Right);
  float room = cell.width(), right = cell.right - canvas.text_width(channel, face) - 12.0f;
  if (!narrow) {
    room = right - cell.left;
    const std::string aside = aside_words(row);
    canvas.text({cell.right, lower}, aside, Face::Text, theme.second_ink, Align::Right);
    right = cell.right - canvas.text_width(aside, Face::Text) - 12.0f;
  }
  ui::text_within(canvas, {cell.left, upper}, room, row.name, Face::TextBold, theme.ink);
  draw_forecast(ui, cell, lower, right, row);
}

void draw_row(Ui& ui, Rect rect, const TriedRow& row) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const float segments = segments_width(rect);
  const Rect cell{rect.left, rect.top, rect.right - segments - kBetween, rect.bottom};
  draw_name(ui, cell, row);
  const StationKey key = key_of(row.station.station);
  const std::string name = "saw " + row.station.station.call_sign + " " + key.id;
  const auto all = options();
  const std::optional<std::size_t> seen =
      row.seen ? std::optional(static_cast<std::size_t>(*row.seen)) : std::nullopt;
  constexpr float kHalf = 40.0f;
  const float middle = rect.center().y;
  const Rect choice{cell.right + kBetween, middle - std::min(kHalf, rect.height() / 2.0f - 8.0f),
                    rect.right, middle + std::min(kHalf, rect.height() / 2.0f - 8.0f)};
  if (const auto touched = ui::segmented(ui, name, choice, all, seen)) {
    ui.emit(act::LogOutcome{key, static_cast<Outcome>(*touched)});
  }
  canvas.line({rect.left, rect.bottom}, {rect.right, rect.bottom}, theme.rule, 1.5f);
}

// Rows to come, and how far the survey is.
void draw_waiting(Ui& ui, Rect view, const std::string& words, double done) {
  const ui::Theme& theme = ui.theme();
  const float width = segments_width(view);
  const float row = row_height(view.height(), 0);
  for (float top = view.top; top + row <= view.bottom + 1.0f; top += row) {
    ui::dotted(ui.canvas(), Rect{view.right - width, top + 8.0f, view.right, top + row - 8.0f},
               theme.rule, 2.0f);
    ui.canvas().line({view.left, top + row}, {view.right, top + row}, theme.rule, 1.5f);
  }
  const float room = view.width() - width - kBetween;
  const float below =
      ui.paragraph({view.left, view.top + 40.0f}, room, 30.0f, words, Face::TextBold, theme.ink);
  if (done <= 0.0) return;
  const Rect bar{view.left, below, view.left + room, below + 12.0f};
  ui.canvas().outline(bar, theme.ink, 2.0f, 6.0f);
  ui.canvas().fill(
      {bar.left, bar.top, bar.left + static_cast<float>(done) * bar.width(), bar.bottom}, theme.ink,
      6.0f);
}

// Why the list is empty, with the act that mends it.
void draw_nothing(Ui& ui, Rect view, const Shared& shared) {
  const auto show = [&](const char* name, const char* label, Place place) {
    const float top = view.top + 112.0f + 3.0f * ui.canvas().em_grown(Face::TextBold);
    const Rect act{view.left, top, view.left + 264.0f, top + 72.0f};
    if (ui.button(name, act, words::say(label), ui::ButtonLook::Filled)) ui.emit(act::Show{place});
  };
  if (!shared.findings.position) {
    draw_waiting(ui, view, words::say("Where are you parked?"), 0.0);
    return show("set position", "Set position", Place::Here);
  }
  if (shared.stations && !shared.stations->trouble.empty()) {
    ui.paragraph({view.left, view.top + 40.0f}, view.width(), 30.0f,
                 words::sentence(shared.stations->trouble), Face::TextBold, ui.theme().warning);
    return;
  }
  const bool measuring = !shared.stations || shared.stations->measured < shared.stations->all ||
                         !shared.stations->question.search.empty();
  if (measuring) {
    const double done = shared.stations && shared.stations->all > 0
                            ? static_cast<double>(shared.stations->measured) /
                                  static_cast<double>(shared.stations->all)
                            : 0.0;
    return draw_waiting(ui, view, words::say("Surveying"), done);
  }
  draw_waiting(ui, view, words::say("No stations in reach"), 0.0);
  show("see stations", "See stations", Place::Stations);
}

}  // namespace

void draw_tried(Ui& ui, Rect view, const Shared& shared, const LogbookState& logbook) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const std::string title = words::say("What came in?");
  canvas.text({view.left, view.top + 36.0f}, title, Face::Matter, theme.ink);
  if (shared.findings.card) {
    const auto magnetic = on_compass_here(shared, shared.findings.card->bearing_true);
    if (magnetic) {
      const std::string words = words::whole_degrees(*magnetic);
      canvas.text({view.right, view.top + 36.0f}, words, Face::Cardinal, theme.ink, Align::Right);
      float left = view.right - canvas.text_width(words, Face::Cardinal) - 22.0f;
      ui::kite(canvas, {left, view.top + 24.0f}, 15.0f, theme.ink, false);
      left -= 28.0f;
      const std::string north = words::say("magnetic");
      const float title_right = view.left + canvas.text_width(title, Face::Matter) + 24.0f;
      if (left - canvas.text_width(north, Face::Text) > title_right) {
        canvas.text({left, view.top + 36.0f}, north, Face::Text, theme.ink, Align::Right);
      }
    }
  }
  const float heads = view.top + 76.0f;
  canvas.text({view.left, heads}, words::say("Forecast"), Face::Text, theme.second_ink);
  canvas.text({view.right - segments_width(view), heads}, words::say("What you saw"), Face::Text,
              theme.second_ink);
  view.top += 88.0f;
  canvas.line({view.left, view.top}, {view.right, view.top}, theme.rule, 1.5f);
  const auto& rows = logbook.tried.rows;
  if (rows.empty()) return draw_nothing(ui, view, shared);
  const float row = row_height(view.height(), rows.size());
  const float offset = ui.begin_scroll("tried", view, row * static_cast<float>(rows.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const float top = view.top + row * static_cast<float>(i) - offset;
    if (!ui.in_reach(top, top + row)) continue;
    draw_row(ui, {view.left, top, view.right, top + row}, rows[i]);
  }
  ui.end_scroll();
}

}  // namespace mastwise::screens::log
