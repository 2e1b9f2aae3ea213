#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/receivers.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

std::string fix_words(const Shared& shared, const nmea::Fix& fix) {
  std::string words = nmea::name_of(fix.quality);
  if (fix.satellites) words += fmt::format(", {} satellites", *fix.satellites);
  if (fix.hdop) words += fmt::format(", HDOP {:.1f}", *fix.hdop);
  if (fix.age) words += fmt::format(", {} old", words::age(*fix.age));
  if (const auto parked = shared.parked.result(); parked && parked->scatter_m) {
    words += fmt::format("; average of {}, scatter {:.1f} m", parked->count, *parked->scatter_m);
  }
  return words;
}

void draw_source(Column& column, const Shared& shared) {
  if (shared.stop.source == PositionSource::ByHand) {
    const std::string& name = shared.stop.by_name;
    if (!name.empty()) {
      column.line("The middle of " + name + ": the rig may be miles away");
    } else {
      column.line(shared.stop.practice ? "The practice area's stop" : "Typed by hand");
    }
    return;
  }
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  if (fix.good()) {
    column.line(fix_words(shared, fix));
    return;
  }
  column.warning(words::fix_trouble(fix));
  if (shared.findings.position && fix.age) {
    column.line(fmt::format("Last position, {} old.", words::age(*fix.age)));
  }
}

// The same place in the other notations, for a map, a ranger or a friend.
void draw_echo(Column& column, const Shared& shared) {
  if (!shared.findings.position) return;
  for (const Notation notation : kNotations) {
    if (notation == shared.settings.notation) continue;
    column.line(format_position(*shared.findings.position, notation));
  }
}

std::string link_words(const Link& link) {
  const auto& p = words::phrases().files;
  switch (link.state) {
    case Link::State::Searching:
      return p.searching;
    case Link::State::Open:
      return words::fill(p.open, {{"name", link.name}});
    case Link::State::Lost:
      return words::fill(p.lost, {{"name", link.name}});
    case Link::State::Ended:
      return words::fill(p.ended, {{"name", link.name}});
  }
  return {};
}

// The stop of the last run, where the rig no longer is.
void draw_earlier(Column& column, Ui& ui, const Shared& shared) {
  if (!shared.earlier || !shared.earlier->elsewhere) return;
  const double away_m = shared.findings.position
                            ? path_between(shared.earlier->at, *shared.findings.position).distance_m
                            : 0.0;
  column.heading("EARLIER STOP");
  column.line(words::earlier_stop(shared.findings.earlier_day, away_m, shared.settings.miles));
  if (column.button("use earlier", "Use it here", 0, 1)) ui.emit(act::UseEarlierStop{});
}

void draw_position(Column& column, Ui& ui, const Shared& shared) {
  column.heading("RIG POSITION");
  const auto& position = shared.findings.position;
  column.figure(position ? format_position(*position, shared.settings.notation) : "Unknown");
  const places::NearPlace* near = position ? near_place_of(shared, *position) : nullptr;
  if (near != nullptr) {
    column.plain(words::sentence(words::near_place(*near, shared.settings.miles)), Face::WordBold);
  }
  draw_echo(column, shared);
  draw_source(column, shared);
  column.line(link_words(shared.link), Face::Small);
  const bool by_hand = shared.stop.source == PositionSource::ByHand;
  if (column.button("type position", "Type position", 0, 2)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Position});
  }
  if (column.button("use receiver", "Use receiver", 1, 2, by_hand)) ui.emit(act::UseReceiver{});
  if (column.button("notation", words::notation(shared.settings.notation), 0, 2,
                    position.has_value())) {
    ui.emit(act::NextSetting{"notation"});
  }
  if (column.button("paper map", "Paper map", 1, 2)) ui.emit(act::OpenSheet{Sheet::Paper});
}

const char* origin_words(Nose::Origin origin) {
  switch (origin) {
    case Nose::Origin::ByHand:
      return "Typed by hand";
    case Nose::Origin::LastCourse:
      return "From the last straight course, driven forward";
    case Nose::Origin::BackedIn:
      return "From the last straight course, backed in";
    case Nose::Origin::Sensor:
      return "From the heading sensor";
    case Nose::Origin::Sun:
      return "By the sun along the rig";
    case Nose::Origin::TwoPoints:
      return "From two receiver positions";
  }
  return "";
}

void draw_nose(Column& column, Ui& ui, const Shared& shared) {
  column.heading("RIG HEADING");
  const Findings& found = shared.findings;
  if (found.nose) {
    std::string words = words::whole_degrees(found.nose->nose()) + " true";
    if (found.field) {
      words += ", " +
               words::whole_degrees(to_magnetic(found.nose->nose(), found.field->declination)) +
               " magnetic";
    }
    column.figure(words);
    column.line(fmt::format("{}, ± {:.0f}°", origin_words(shared.stop.nose->origin),
                            std::max(1.0, shared.stop.nose->sigma_deg)));
    if (const auto& caution = shared.stop.nose->caution) {
      column.line(words::sentence(words::rig_heading_caution(*caution)));
    }
  } else {
    column.figure("Unknown");
    if (found.moved_m) {
      column.warning(words::sentence(words::rig_moved(*found.moved_m, shared.settings.miles)));
    } else {
      column.line(shared.stop.nose ? "Typed from the compass; set the position"
                                   : "Only for angles from the nose");
    }
  }
  if (column.button("type nose", "Type heading", 0, 2)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Nose});
  }
  if (column.button("more nose", "More ways", 1, 2)) ui.emit(act::OpenSheet{Sheet::Nose});
}

const char* date_origin_words(Findings::DateOrigin origin) {
  switch (origin) {
    case Findings::DateOrigin::Receiver:
      return ", from the receiver";
    case Findings::DateOrigin::Machine:
      return ", from the tablet's clock";
    case Findings::DateOrigin::Floor:
      break;
  }
  return ", the last day that is certain";
}

void draw_needle(Column& column, const Shared& shared) {
  const Findings& found = shared.findings;
  column.heading("DATE AND DECLINATION");
  const auto& trusted = shared.receiver.date();
  column.line(fmt::format("{} ({}){}", words::date(found.today),
                          words::zone_name(*found.zone.clocks, found.date),
                          date_origin_words(found.date_origin)));
  const std::string caution = words::zone_caution(found.zone, found.date);
  if (!caution.empty()) column.line(caution);
  if (clock_is_wrong(shared)) {
    column.warning(fmt::format("The tablet's clock is wrong, it says {}. Set it.",
                               words::date(local_day(shared.machine_time, *found.zone.clocks))));
  }
  if (trusted && trusted->weeks_shifted != 0) {
    column.warning(fmt::format("The receiver's date was {} weeks {}; corrected.",
                               std::abs(trusted->weeks_shifted),
                               trusted->weeks_shifted > 0 ? "behind" : "ahead"));
  }
  if (found.field) {
    column.line(fmt::format("The needle points {} of true north, ± {:.1f}°",
                            words::declination(found.field->declination),
                            found.field->declination_sigma_deg));
    if (found.field->beyond_model_end) {
      column.warning("The magnetic model has ended: the compass number may be off.");
    }
  }
}

std::string noise_words(const Stop& stop) {
  const auto usual = reception::figures(stop.surroundings).noise;
  return std::string(to_text(stop.noise.value_or(usual))) +
         (stop.inverter_on ? ", inverter on" : "");
}

void draw_reception(Column& column, Ui& ui, const Shared& shared) {
  column.heading("THE ANTENNA");
  const gear::Gear gear = gear_of(shared.settings.gear);
  column.line(gear.name);
  column.line(
      "Around it: " + words::surroundings(shared.stop.surroundings, shared.findings.in_leaf) +
      ". Noise: " + noise_words(shared.stop));
  if (gear.decoders) column.line("TV: " + to_text(*gear.decoders));
  if (column.button("gear", "Gear", 0, 2)) ui.emit(act::OpenSheet{Sheet::Gear});
  if (column.button("surroundings", "Surroundings", 1, 2)) {
    ui.emit(act::OpenSheet{Sheet::Surroundings});
  }
  if (column.button("noise", "Noise", 0, 3)) ui.emit(act::OpenSheet{Sheet::Noise});
  if (column.button("television", "TV", 1, 3)) ui.emit(act::OpenSheet{Sheet::Television});
  if (column.button("handle", "Handle", 2, 3)) ui.emit(act::OpenSheet{Sheet::Handle});
  if (column.button("checks", "Compass checks", 0, 2)) ui.emit(act::OpenSheet{Sheet::Checks});
  if (column.button("parking", "Before you park", 1, 2)) ui.emit(act::OpenSheet{Sheet::Parking});
}

void draw_settings(Column& column, Ui& ui, const Shared& shared) {
  if (column.button("units", shared.settings.miles ? "Miles" : "Kilometers", 0, 3)) {
    ui.emit(act::NextSetting{"miles"});
  }
  if (column.button("hand", shared.settings.left_handed ? "Left thumb" : "Right thumb", 1, 3)) {
    ui.emit(act::NextSetting{"left_handed"});
  }
  if (column.button("practice", shared.stop.practice ? "End practice" : "Practice", 2, 3)) {
    ui.emit(act::SwitchPractice{});
  }
  const bool no_names = shared.places && !shared.places->trouble.empty();
  column.line(no_names ? "No place names: " + shared.places->trouble : words::places_source(),
              Face::Small);
}

}  // namespace

void draw_here(Ui& ui, Rect area, const Shared& shared) {
  constexpr float kBetween = 48.0f;
  Rect page = area;
  page.top = ui.begin_page("here", area);
  Rect first = page, second = page;
  if (!ui.portrait()) {
    first.right = page.center().x - kBetween / 2.0f;
    second.left = page.center().x + kBetween / 2.0f;
  }
  Column left(ui, first);
  draw_earlier(left, ui, shared);
  draw_position(left, ui, shared);
  left.rule();
  draw_needle(left, shared);
  if (ui.portrait()) {
    left.rule();
    second.top = left.bottom();
  }
  Column right(ui, second);
  draw_nose(right, ui, shared);
  right.rule();
  draw_reception(right, ui, shared);
  right.rule();
  draw_settings(right, ui, shared);
  ui.end_page("here", page.top, std::max(left.bottom(), right.bottom()));
}

}  // namespace mastwise::screens
