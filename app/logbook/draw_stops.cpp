#include "app/logbook/draw.hpp"
#include "app/logbook/draw_parts.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/times.hpp"

#include <algorithm>

// The latest stops with what came in there.
namespace mastwise::screens {
namespace {

using ui::Face;

constexpr float kRow = 88.0f;

void draw_stop(Ui& ui, Rect row, const Shared& shared, const LogbookState& logbook,
               std::size_t index) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const StopRecord& stop = logbook.log.stops[index];
  std::vector<Outcome> outcomes;
  for (const OutcomeRecord& one : logbook.log.outcomes) {
    if (one.stop_id == stop.id) outcomes.push_back(one.outcome);
  }
  std::sort(outcomes.begin(), outcomes.end());
  const float middle = row.center().y, room = 0.4f * row.width();
  const float left = log::draw_outcomes(ui, {row.right, middle}, room, outcomes);
  const places::NearPlace* near = near_place_of(shared, stop.position);
  std::string where = near == nullptr
                          ? format_position(stop.position, Notation::Decimal)
                          : words::sentence(words::near_place(*near, shared.settings.miles));
  if (!stop.name.empty()) where += ", " + stop.name;
  const float width = left - row.left - 24.0f;
  ui::text_within(canvas, {row.left, middle - 8.0f}, width, where, Face::TextBold, theme.ink);
  std::string when = words::date(logbook.days[index]);
  if (!stop.weather.empty()) when += ", " + std::string(words::say(stop.weather.c_str()));
  ui::text_within(canvas, {row.left, middle + 26.0f}, width, when, Face::Text, theme.second_ink);
  canvas.line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

}  // namespace

void draw_stops_sheet(Ui& ui, const Shared& shared, const LogbookState& logbook) {
  const Rect view = draw_sheet_head(ui, words::say("Stops"));
  const std::size_t count = std::min(listed_stops(logbook.log).size(), logbook.days.size());
  if (count == 0) {
    ui.paragraph({view.left, view.top + 40.0f}, view.width(), 30.0f,
                 words::say("No stops yet. The first touch on what came in records one."),
                 Face::Text, ui.theme().ink);
    return;
  }
  const std::size_t hidden = logbook.log.stops.size() - count;
  const float all = kRow * static_cast<float>(count + (hidden > 0 ? 1 : 0));
  const float offset = ui.begin_scroll("stops", view, all);
  for (std::size_t i = 0; i < count; ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    if (!ui.in_reach(top, top + kRow)) continue;
    draw_stop(ui, {view.left, top, view.right, top + kRow}, shared, logbook, i);
  }
  if (hidden > 0) {
    ui.canvas().text({view.left, view.top + all - offset - 36.0f},
                     words::fill(words::say("{number} earlier stops are in the export"),
                                 {{"number", std::to_string(hidden)}}),
                     Face::Text, ui.theme().second_ink);
  }
  ui.end_scroll();
}

}  // namespace mastwise::screens
