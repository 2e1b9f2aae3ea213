#include "app/paper/card.hpp"

#include "app/shared/shared.hpp"
#include "app/words/chances.hpp"
#include "app/words/scans.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace mastwise::paper {
namespace {

// The headings for a compass alone.
constexpr std::array kOnPaper{SayingKind::magnetic_bearing, SayingKind::set_compass};

std::vector<Saying> sayings_of(const CardFacts& facts) {
  Sayings all = say_heading({.from = facts.stop, .card = facts.aim, .context = facts.context});
  std::vector<Saying> kept;
  for (Saying& saying : all.sayings) {
    const bool wanted = std::find(kOnPaper.begin(), kOnPaper.end(), saying.kind) != kOnPaper.end();
    if (wanted) kept.push_back(std::move(saying));
  }
  return kept;
}

// A sheet so large that no edge cuts the line.
constexpr PaperSheet kSheet{
    .width_mm = 2000.0, .height_mm = 2000.0, .stop_right_mm = 1000.0, .stop_up_mm = 1000.0};

void lay_ruler(const AimCard& aim, PaperCard& card) {
  // Common map scales: a quarter, a half and a whole million.
  constexpr std::array kRatios{250'000.0, 500'000.0, 1'000'000.0};
  constexpr double kLeast_mm = 10.0, kMost_mm = 900.0;
  for (const double ratio : kRatios) {
    const auto scale = MapScale::from_ratio(ratio);
    if (!scale) continue;
    const auto line = ruler_line(kSheet, *scale, aim.bearing_true, aim.distance_m);
    if (!line) continue;
    card.ruler = *line;
    if (line->length_mm >= kLeast_mm && line->length_mm <= kMost_mm) {
      card.lengths.push_back({ratio, line->length_mm});
    }
  }
}

std::string about(const Station& station) {
  std::string words = words::carries(station);
  if (!words.empty()) words += ", ";
  words += "RF " + to_text(station.rf_channel);
  if (const auto slot = channel_slot(station.raster, station.rf_channel)) {
    words += fmt::format(", {:.0f} MHz {}", slot->center_mhz, to_text(slot->band));
  }
  if (station.polarization != Polarization::unknown) {
    words += fmt::format(", {}", to_text(station.polarization));
  }
  return words;
}

PaperHeading heading_of(const CardFacts& facts, const PlanStep& step) {
  PaperHeading heading{.bearing = step.bearing,
                       .magnetic = facts.compass
                                       ? as_magnetic(aim::to_dial(step.bearing, *facts.compass))
                                       : to_magnetic(step.bearing, facts.aim.field.declination),
                       .slack = step.slack,
                       .brings = step.brings,
                       .loses = step.loses};
  const ScanPlan scan = plan_scan(scan_candidates(*facts.answer, step));
  for (const ChannelToEnter& channel : scan.channels) {
    heading.channels.push_back({to_text(channel.rf_channel), words::expected(channel)});
  }
  for (const Twins& twins : scan.twins) heading.remark += words::twins(twins, facts.miles) + ' ';
  for (const PlanRemark& remark : step.remarks) {
    heading.remark +=
        remark.on_null
            ? words::on_null(remark.station, remark.interferer,
                             words::whole_degrees(heading.magnetic) + " magnetic",
                             remark.gain_percent, remark.loses)
            : words::aimed_beside(remark.station, remark.interferer, remark.gain_percent);
    heading.remark += ". ";
  }
  return heading;
}

}  // namespace

PaperCard card_of(const CardFacts& facts) {
  PaperCard card{.practice = facts.practice,
                 .miles = facts.miles,
                 .stop = facts.stop,
                 .stop_stale = facts.stop_stale,
                 .date = facts.date,
                 .day = facts.day,
                 .aim = facts.aim,
                 .chance_percent = facts.chance_percent,
                 .on_this_tv = facts.on_this_tv,
                 .slack = facts.slack,
                 .sayings = sayings_of(facts),
                 .read_at = facts.context.standing.value_or(Standing::well_clear),
                 .mistakes = north_mistakes(facts.aim.bearing_true, facts.aim.field.declination)};
  if (facts.station) {
    card.title = words::title(*facts.station);
    card.about = about(*facts.station);
  }
  lay_ruler(facts.aim, card);
  if (facts.answer != nullptr && facts.answer->plan) {
    const Plan& plan = *facts.answer->plan;
    card.plan = PaperPlan{.fewest_proved = plan.fewest_proved};
    for (const NotInPlan& out : plan.out) {
      card.plan->out.push_back(words::at_best(out.name, out.best_percent));
    }
    for (const PlanStep& step : plan.steps) card.plan->headings.push_back(heading_of(facts, step));
  }
  return card;
}

Result<PaperCard> card_of(const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.position) {
    return Error{.what = "the card needs the rig's position",
                 .remedy = "set its position under Here"};
  }
  if (!found.card) {
    return Error{.what = "the card needs a station to aim at",
                 .remedy = "choose one under Stations"};
  }
  CardFacts facts{.practice = shared.stop.practice,
                  .miles = shared.settings.miles,
                  .stop = *found.position,
                  .stop_stale = found.position_stale,
                  .date = found.date,
                  .day = found.today,
                  .aim = *found.card,
                  .station = shared.stop.target,
                  .slack = found.slack,
                  .context = heading_context(shared, Standing::well_clear)};
  if (found.compass_check && found.compass_check->usable()) {
    facts.compass = found.compass_check->correction;
  }
  if (found.outlook) {
    facts.chance_percent = found.outlook->chance_percent;
    facts.on_this_tv = found.outlook->decoding != gear::Decoding::impossible;
  }
  if (shared.stations) facts.answer = &*shared.stations;
  return card_of(facts);
}

}  // namespace mastwise::paper
