#include "app/logbook/actions.hpp"
#include "app/logbook/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/places.hpp"
#include "app/words/times.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// One-touch outcomes at this stop, what worked here before, and the lessons of the record.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kLogRow = 92.0f, kBetweenOutcomes = 16.0f;

struct OutcomeChoice {
  Outcome outcome;
  const char* label;
};
constexpr std::array kOutcomes{OutcomeChoice{Outcome::steady, "Steady"},
                               OutcomeChoice{Outcome::breaks_up, "Breaks"},
                               OutcomeChoice{Outcome::nothing, "None"}};

const OutcomeRecord* outcome_of(const LogbookState& logbook, const StationRow& row) {
  for (const OutcomeRecord& outcome : logbook.outcomes_here) {
    if (outcome.station_id == row.station.id &&
        outcome.source == row.station.provenance.source.name) {
      return &outcome;
    }
  }
  return nullptr;
}

void draw_station(Ui& ui, Rect rect, const StationRow& row, const Shared& shared,
                  const LogbookState& logbook) {
  constexpr float kButton = 104.0f, kInset = 8.0f;
  const ui::Theme& theme = ui.theme();
  const float buttons = rect.right - 3.0f * kButton - 2.0f * kBetweenOutcomes;
  ui.canvas().push_clip({rect.left, rect.top, buttons - kBetweenOutcomes, rect.bottom});
  ui.canvas().text({rect.left, rect.top + 40.0f}, words::title(row.station), Face::Value,
                   theme.ink);
  const OutcomeRecord* known = outcome_of(logbook, row);
  std::string said = "RF " + to_text(row.station.rf_channel);
  const auto tried = [&] { return local_day(known->when, *shared.findings.zone.clocks); };
  if (known != nullptr && tried() != shared.findings.today) {
    said = "Tried on " + words::date(tried());
  } else if (row.outlook) {
    said += ", " + words::chance_number(*row.outlook) + " " + words::chance_word(*row.outlook);
  }
  ui.canvas().text({rect.left, rect.top + 70.0f}, said, Face::Small, theme.second_ink);
  ui.canvas().pop_clip();
  float left = buttons;
  for (const OutcomeChoice& choice : kOutcomes) {
    const bool chosen = known != nullptr && known->outcome == choice.outcome;
    const std::string name =
        std::string(choice.label) + " " + row.station.call_sign + " " + row.station.id;
    if (ui.button(name, {left, rect.top + kInset, left + kButton, rect.bottom - kInset},
                  choice.label, chosen ? ButtonLook::Filled : ButtonLook::Plain)) {
      ui.emit(act::LogOutcome{key_of(row.station), choice.outcome});
    }
    left += kButton + kBetweenOutcomes;
  }
  ui.canvas().line({rect.left, rect.bottom}, {rect.right, rect.bottom}, theme.rule, 1.5f);
}

void draw_stations_tried(Ui& ui, Rect view, const Shared& shared, const LogbookState& logbook) {
  const ui::Theme& theme = ui.theme();
  ui.canvas().text({view.left, view.top + 22.0f}, "WHAT CAME IN HERE", Face::WordBold,
                   theme.second_ink);
  view.top += 36.0f;
  if (!shared.findings.position || !shared.stations || shared.stations->rows.empty()) {
    ui.paragraph({view.left, view.top + 30.0f}, view.width(), 28.0f,
                 "Set the position to list stations here.", Face::Word, theme.ink);
    return;
  }
  const auto& rows = shared.stations->rows;
  const float offset = ui.begin_scroll("tried", view, kLogRow * static_cast<float>(rows.size()));
  const auto first = static_cast<std::size_t>(offset / kLogRow);
  const auto fitting = static_cast<std::size_t>(view.height() / kLogRow) + 2;
  for (std::size_t i = first; i < std::min(rows.size(), first + fitting); ++i) {
    const float top = view.top + kLogRow * static_cast<float>(i) - offset;
    draw_station(ui, {view.left, top, view.right, top + kLogRow}, rows[i], shared, logbook);
  }
  ui.end_scroll();
}

// The share of stations that came in by shown chance: a mark on the diagonal was right.
void draw_reliability(Ui& ui, Rect plot, const std::vector<learning::ReliabilityBin>& bins) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const auto at = [&](double chance, double rate) {
    return Point{plot.left + static_cast<float>(chance / 100.0) * plot.width(),
                 plot.bottom - static_cast<float>(rate / 100.0) * plot.height()};
  };
  canvas.fill(plot, theme.panel, 6.0f);
  canvas.line(at(0.0, 0.0), at(100.0, 100.0), theme.rule, 2.0f);
  for (const learning::ReliabilityBin& bin : bins) {
    if (!bin.mean_chance_percent || !bin.steady_percent || !bin.interval_percent) continue;
    const double chance = *bin.mean_chance_percent;
    canvas.line(at(chance, bin.interval_percent->low), at(chance, bin.interval_percent->high),
                theme.second_ink, 3.0f);
    canvas.disc(at(chance, *bin.steady_percent), 8.0f, theme.accent);
  }
  canvas.outline(plot, theme.rule, 2.0f, 6.0f);
  canvas.text({plot.left, plot.bottom + 24.0f}, "chance shown", Face::Small, theme.second_ink);
  canvas.text({plot.right, plot.bottom + 24.0f}, "100 %", Face::Small, theme.second_ink,
              Align::Right);
  canvas.text({plot.left + 8.0f, plot.top + 24.0f}, "came in", Face::Small, theme.second_ink);
}

const char* band_words(std::size_t band) {
  constexpr std::array kBands{"Low VHF", "High VHF", "UHF"};
  return kBands[band];
}

void draw_taught(Column& column, Ui& ui, Rect area, const LogbookState& logbook) {
  const Taught& taught = logbook.log.taught;
  column.heading("LESSONS OF THE RECORD");
  if (!taught.brier) {
    column.line("Nothing yet. Touch what came in and what did not: failures count too.");
    return;
  }
  column.line(fmt::format("{} outcomes. Brier score {:.2f}; 0 is perfect, {:.2f} is guessing.",
                          taught.outcomes, taught.brier->brier, taught.brier->uncertainty));
  for (std::size_t band = 0; band < taught.corrections.size(); ++band) {
    const learning::Correction& correction = taught.corrections[band];
    if (correction.outcomes == 0) continue;
    column.pair(band_words(band),
                fmt::format("{:+.0f} ± {:.0f} dB{}", correction.bias_db, correction.sigma_db,
                            correction.applied ? ", used" : ", not used yet"));
  }
  column.space(16.0f);
  const float side = std::min(area.width(), 240.0f);
  draw_reliability(ui, {area.left, column.bottom(), area.left + side, column.bottom() + side},
                   taught.bins);
  column.space(side + 28.0f);
}

void draw_facts(Ui& ui, Rect view, const Shared& shared, const LogbookState& logbook) {
  Rect page = view;
  page.top = ui.begin_page("log facts", view);
  Column column(ui, page);
  column.heading("HERE BEFORE");
  if (logbook.worked_before.empty()) {
    column.line("No records here yet.");
  }
  for (const std::string& line : logbook.worked_before) column.plain(line, Face::WordBold);
  if (column.button("weather now",
                    "Weather: " + (logbook.weather.empty() ? "not set" : logbook.weather), 0, 1)) {
    ui.emit(act::NextWeather{});
  }
  if (column.button("logbook files", "Export and import", 0, 1)) {
    ui.emit(act::OpenSheet{Sheet::LogbookFiles});
  }
  column.rule();
  draw_taught(column, ui, page, logbook);
  if (!logbook.log.stops.empty()) {
    column.rule();
    column.heading("STOPS");
    const std::span<const StopRecord> stops = listed_stops(logbook.log);
    for (std::size_t i = 0; i < std::min(stops.size(), logbook.days.size()); ++i) {
      const StopRecord& stop = stops[i];
      const places::NearPlace* near = near_place_of(shared, stop.position);
      column.line(words::date(logbook.days[i]) + "  " +
                      (near == nullptr ? format_position(stop.position, Notation::Decimal)
                                       : words::near_place(*near, shared.settings.miles)) +
                      (stop.name.empty() ? "" : "  " + stop.name),
                  Face::Small);
    }
  }
  ui.end_page("log facts", page.top, column.bottom() + 16.0f);
}

}  // namespace

void draw_logbook(Ui& ui, Rect area, const Shared& shared, const LogbookState& logbook) {
  Rect tried = area, facts = area;
  if (ui.portrait()) {
    tried.bottom = area.top + 0.55f * area.height();
    facts.top = tried.bottom + ui::kMargin;
  } else {
    facts.left = area.right - 0.38f * area.width();
    tried.right = facts.left - 2.0f * ui::kMargin;
  }
  draw_stations_tried(ui, tried, shared, logbook);
  draw_facts(ui, facts, shared, logbook);
}

}  // namespace mastwise::screens
