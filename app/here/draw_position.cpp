#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/here/facts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/receivers.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <fmt/format.h>

// The page behind the position: every notation, the source, date and declination.
namespace mastwise::screens {
namespace {

using ui::Column;
using ui::Face;
using ui::Option;
using words::fill;
using words::say;

std::string fix_words(const Shared& shared, const nmea::Fix& fix) {
  std::string words = say(nmea::name_of(fix.quality));
  if (fix.satellites) {
    words += ", " + fill(say("{number} satellites"), {{"number", std::to_string(*fix.satellites)}});
  }
  if (fix.hdop) words += fmt::format(", HDOP {:.1f}", *fix.hdop);
  if (fix.age) words += ", " + fill(say("{age} old"), {{"age", words::age(*fix.age)}});
  if (const auto parked = shared.parked.result(); parked && parked->scatter_m) {
    words += "; " + fill(say("average of {number}, scatter {distance}"),
                         {{"number", std::to_string(parked->count)},
                          {"distance", words::height(*parked->scatter_m, shared.settings.miles)}});
  }
  return words;
}

void draw_source(Column& column, const Shared& shared) {
  if (shared.stop.source == PositionSource::ByHand) {
    const std::string& name = shared.stop.by_name;
    if (!name.empty()) {
      column.line(fill(say("The middle of {name}: the rig may be miles away"), {{"name", name}}),
                  Face::Text);
    } else {
      column.line(shared.stop.practice ? say("The practice area's stop") : say("Typed by hand"),
                  Face::Text);
    }
    return;
  }
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  if (fix.good()) {
    column.line(fix_words(shared, fix), Face::Text);
    return;
  }
  column.warning(words::fix_trouble(fix));
  if (shared.findings.position && fix.age) {
    column.line(fill(say("Last position, {age} old."), {{"age", words::age(*fix.age)}}),
                Face::Text);
  }
}

std::string link_words(const Link& link) {
  const auto& p = words::phrases().files;
  switch (link.state) {
    case Link::State::Searching:
      return p.searching;
    case Link::State::Open:
      return fill(p.open, {{"name", link.name}});
    case Link::State::Lost:
      return fill(p.lost, {{"name", link.name}});
    case Link::State::Ended:
      return fill(p.ended, {{"name", link.name}});
  }
  return {};
}

// The position, large as it is used and then in the other notations, for a map, a ranger or a
// friend.
void draw_notations(Column& column, const Shared& shared) {
  const auto& position = shared.findings.position;
  column.figure(position ? format_position(*position, shared.settings.notation)
                         : std::string(say("Unknown")));
  const places::NearPlace* near = position ? near_place_of(shared, *position) : nullptr;
  if (near != nullptr) {
    column.plain(words::sentence(words::near_place(*near, shared.settings.miles)), Face::TextBold);
  }
  if (!position) return;
  for (const Notation notation : kNotations) {
    if (notation == shared.settings.notation) continue;
    column.line(format_position(*position, notation), Face::Text);
  }
}

void draw_ways(Column& column, Ui& ui, Rect room, const Shared& shared) {
  column.space(24.0f);
  const bool by_hand = shared.stop.source == PositionSource::ByHand;
  const std::array sources{Option{"receiver", say("Receiver")}, Option{"hand", say("By hand")}};
  const float top = column.bottom();
  const auto touched =
      ui::segmented(ui, "position from", {room.left, top, room.right, top + Column::kButton},
                    sources, by_hand ? 1 : 0);
  column.space(Column::kButton);
  if (touched == 0 && by_hand) ui.emit(act::UseReceiver{});
  if (touched == 1 && !by_hand) ui.emit(act::OpenKeypad{KeypadPurpose::Position});
  if (column.button("type position", say("Type position"), 0, 2, true, ui::ButtonLook::Filled)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Position});
  }
  if (column.button("paper map", say("Measure on a paper map"), 1, 2)) {
    ui.emit(act::OpenSheet{Sheet::Paper});
  }
}

const char* date_origin_words(Findings::DateOrigin origin) {
  switch (origin) {
    case Findings::DateOrigin::Receiver:
      return say("from the receiver");
    case Findings::DateOrigin::Machine:
      return say("from the tablet's clock");
    case Findings::DateOrigin::Floor:
      break;
  }
  return say("the last day that is certain");
}

// How the compass needle behaves here.
void draw_needle(Column& column, const MagneticField& field) {
  column.line(fmt::format("{}, ±\u00a0{:.1f}°",
                          fill(say("The needle points {declination} of true north"),
                               {{"declination", words::declination(field.declination)}}),
                          field.declination_sigma_deg),
              Face::Text);
  const double yearly_deg = field.declination_deg_per_year;
  if (std::fabs(yearly_deg) >= 0.05) {
    column.line(fill(say("That moves {change} a year"),
                     {{"change", words::declination(Declination::east_deg(yearly_deg))}}),
                Face::Text);
  }
  // Common practice, no source: makers balance needles for zones of about 40 degrees of dip.
  constexpr double kNearlyLevel_deg = 20.0;
  const std::string dip = words::whole_degrees(std::fabs(field.inclination_deg));
  if (std::fabs(field.inclination_deg) < kNearlyLevel_deg) {
    column.line(fill(say("It dips only {degrees}. A needle balanced for the far north or south may "
                         "drag: hold it so that it swings free."),
                     {{"degrees", dip}}),
                Face::Text);
  } else {
    column.line(fill(field.inclination_deg > 0.0
                         ? say("Its north end dips {degrees}. A needle balanced for the south "
                               "drags: hold it so that it swings free.")
                         : say("Its south end dips {degrees}. A needle balanced for the north "
                               "drags: hold it so that it swings free."),
                     {{"degrees", dip}}),
                Face::Text);
  }
}

void draw_date(Column& column, const Shared& shared) {
  const Findings& found = shared.findings;
  column.line(fmt::format("{} ({}), {}", words::date(found.today),
                          words::zone_name(*found.zone.clocks, found.date),
                          date_origin_words(found.date_origin)),
              Face::Text);
  const std::string caution = words::zone_caution(found.zone, found.date);
  if (!caution.empty()) column.line(caution, Face::Text);
  for (const std::string& warning : clock_warnings(shared)) column.warning(warning);
}

}  // namespace

void draw_position_sheet(Ui& ui, const Shared& shared) {
  constexpr float kBetween = 48.0f;
  const Rect view = ui::draw_sheet_head(ui, say("Position"), Sheet::None);
  Rect page = view;
  page.top = ui.begin_page("position", view);
  Rect first = page, second = page;
  if (!ui.portrait()) {
    first.right = page.center().x - kBetween / 2.0f;
    second.left = page.center().x + kBetween / 2.0f;
  }
  Column left(ui, first);
  draw_notations(left, shared);
  if (shared.findings.field) {
    left.rule();
    draw_needle(left, *shared.findings.field);
  }
  if (ui.portrait()) second.top = left.bottom() + 16.0f;
  Column right(ui, second);
  draw_source(right, shared);
  right.line(link_words(shared.link), Face::Text);
  draw_ways(right, ui, second, shared);
  right.rule();
  draw_date(right, shared);
  ui.end_page("position", page.top, std::max(left.bottom(), right.bottom()) + 16.0f);
}

}  // namespace mastwise::screens
