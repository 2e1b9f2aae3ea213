#include "app/logbook/actions.hpp"
#include "app/logbook/draw.hpp"
#include "app/logbook/draw_parts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/act_row.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/language.hpp"
#include "app/words/records.hpp"

#include <algorithm>
#include <array>

// One-touch outcomes at this stop, what worked here before, and the lessons of the record.
namespace mastwise::screens {
namespace {

using ui::ActRow;
using ui::Face;

void draw_list_acts(Ui& ui, Rect row, const LogbookState& logbook) {
  const float between = ActRow::kGap;
  const Rect by{row.left, row.top, row.left + 0.56f * (row.width() - between), row.bottom};
  const std::array options{ui::Option{"networks", words::say("Networks")},
                           ui::Option{"stations", words::say("Stations")}};
  const auto chosen = static_cast<std::size_t>(logbook.tried_by);
  if (const auto touched = ui::segmented(ui, "tried by", by, options, chosen)) {
    ui.emit(act::ListTried{static_cast<TriedBy>(*touched)});
  }
  const Rect weather{by.right + between, row.top, row.right, row.bottom};
  const std::string value =
      logbook.weather.empty() ? words::say("Weather?") : words::say(logbook.weather.c_str());
  if (ui::slip(ui, "weather now", weather, {}, value)) ui.emit(act::NextWeather{});
}

void draw_record_acts(Ui& ui, Rect row, const Shared& shared, const LogbookState& logbook) {
  const ui::Theme& theme = ui.theme();
  ActRow acts(row, shared.settings.left_handed);
  constexpr float kExport = 152.0f;
  if (ui.button("logbook files", acts.next(kExport), words::say("Export or import"),
                ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::LogbookFiles});
  }
  const Rect onward = acts.rest();
  const Taught& taught = logbook.log.taught;
  if (ui::onward(ui, "stops", onward)) ui.emit(act::OpenSheet{Sheet::Stops});
  const std::string records = words::records(taught.outcomes), stops = words::stops(taught.stops);
  const bool both = ui.canvas().text_width(records, Face::Text) <= onward.width() - ui::kChevron;
  const float middle = onward.center().y + 9.0f;
  if (both) ui.canvas().text({onward.left, middle - 15.0f}, records, Face::Text, theme.ink);
  ui::text_within(ui.canvas(), {onward.left, both ? middle + 15.0f : middle},
                  onward.width() - ui::kChevron, stops, Face::Text, theme.ink);
}

struct Parts {
  Rect list, list_acts, nights, lesson, record_acts;
};

Rect taken_below(Rect& area, float height) {
  Rect taken = area;
  taken.top = area.bottom - height;
  area.bottom = taken.top - ui::ActRow::kGap;
  return taken;
}

Parts parts_of(Ui& ui, Rect area, bool left_handed) {
  Parts parts;
  area.bottom -= 8.0f;
  Rect list = area, facts = area;
  if (ui.portrait()) {
    facts.top = area.bottom - std::min(460.0f, 0.44f * area.height());
    list.bottom = facts.top - ui::kMargin;
    parts.record_acts = taken_below(facts, ActRow::kHeight);
    parts.nights = parts.lesson = facts;
    parts.nights.right = facts.center().x - ui::kMargin;
    parts.lesson.left = facts.center().x;
  } else {
    constexpr float kWide = 1050.0f;
    const float part = area.width() > kWide ? 0.36f : 0.33f;
    (left_handed ? facts.right : facts.left) =
        left_handed ? area.left + part * area.width() : area.right - part * area.width();
    (left_handed ? list.left : list.right) =
        left_handed ? facts.right + 2.0f * ui::kMargin : facts.left - 2.0f * ui::kMargin;
    parts.record_acts = taken_below(facts, ActRow::kHeight);
    parts.nights = parts.lesson = facts;
  }
  parts.list_acts = taken_below(list, ActRow::kHeight);
  parts.list = list;
  return parts;
}

}  // namespace

void draw_logbook(Ui& ui, Rect area, const Shared& shared, const LogbookState& logbook) {
  Parts parts = parts_of(ui, area, shared.settings.left_handed);
  const ui::Theme& theme = ui.theme();
  if (!ui.portrait()) {
    const bool left = shared.settings.left_handed;
    const float rule = left ? parts.nights.right + ui::kMargin : parts.nights.left - ui::kMargin;
    ui.canvas().line({rule, 0.0f}, {rule, ui.screen().bottom}, theme.rule, 1.5f);
  }
  log::draw_tried(ui, parts.list, shared, logbook);
  draw_list_acts(ui, parts.list_acts, logbook);
  if (ui.portrait()) {
    log::draw_nights(ui, parts.nights, shared, logbook);
  } else {
    // The plot keeps the larger part.
    constexpr float kNights = 0.46f;
    Rect nights = parts.nights;
    nights.bottom = nights.top + kNights * nights.height();
    parts.lesson.top = log::draw_nights(ui, nights, shared, logbook) + 12.0f;
    ui.canvas().line({nights.left, parts.lesson.top}, {nights.right, parts.lesson.top}, theme.rule,
                     1.5f);
    parts.lesson.top += 12.0f;
  }
  log::draw_lesson(ui, parts.lesson, logbook);
  draw_record_acts(ui, parts.record_acts, shared, logbook);
}

}  // namespace mastwise::screens
