#include "app/logbook/log.hpp"

#include "app/logbook/actions.hpp"
#include "app/words/units.hpp"
#include "core/reception/aimed.hpp"
#include "core/reception/chance.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr const char* kPractice = "PRACTICE";
constexpr std::array<const char*, 6> kWeathers{"clear", "overcast", "rain",
                                               "snow",  "wind",     "thunder"};

std::string gear_name(const Shared& shared) {
  return gear_of(shared.settings.gear).name;
}

Mark mark(const Shared& shared) {
  return {.changed = moment_of(shared), .tablet = shared.settings.tablet};
}

std::string id_of(const Shared& shared, const char* kind) {
  return fmt::format("{}-{}-{}", shared.settings.tablet, kind,
                     moment_of(shared).time_since_epoch().count());
}

const StopRecord* stop_record(const Log& log, const std::string& id) {
  const auto found = std::find_if(log.stops.begin(), log.stops.end(),
                                  [&](const StopRecord& stop) { return stop.id == id; });
  return found == log.stops.end() ? nullptr : &*found;
}

void write(LogbookState& state, const Shared& shared, LogWrite record) {
  if (!shared.stop.practice) state.writes.push_back(std::move(record));
}

// Whether an outcome or a sweep can wait for the disk together with its stop. Refused records are
// counted, and the foot shows how many until one is accepted again.
bool accepts(LogbookState& state, const Shared& shared) {
  const bool room = shared.stop.practice || state.writes.size() + 2 <= kMostWaiting;
  state.refused = room ? 0 : state.refused + 1;
  return room;
}

// A stop lasts 24 hours, through the night, unless a record was made elsewhere since.
bool goes_on(const Log& log, const Shared& shared, const StopRecord& stop) {
  constexpr auto kDay = std::chrono::hours(24);
  // A clock that was set back leaves a stop of a later day.
  return &stop == &log.stops.front() && std::chrono::abs(moment_of(shared) - stop.arrived) < kDay;
}

// The record of this stop; a new one if the last one here is of another day.
const StopRecord& this_stop(LogbookState& state, const Shared& shared) {
  Log& log = state.log;
  if (log.stop_id) {
    const StopRecord* known = stop_record(log, *log.stop_id);
    if (known != nullptr && goes_on(log, shared, *known)) return *known;
  }
  std::string id = id_of(shared, "stop");
  // A receiver that repeats a frozen time makes no two stops one.
  while (stop_record(log, id) != nullptr) id += "x";
  StopRecord stop{.id = std::move(id),
                  .mark = mark(shared),
                  .position = *shared.findings.position,
                  .arrived = moment_of(shared),
                  .surroundings = shared.stop.surroundings,
                  .rig_heading = shared.findings.nose,
                  .gear = gear_name(shared),
                  .weather = state.weather};
  if (shared.stop.practice) stop.name = kPractice;
  log.stop_id = stop.id;
  write(state, shared, stop);
  return *log.stops.insert(log.stops.begin(), std::move(stop));
}

// Where the antenna points, as far as is known: at the target, by the way in use. Without a target
// an outcome is kept, but says nothing about a forecast.
std::optional<Bearing<True>> aimed_at(const Shared& shared) {
  if (!shared.findings.card) return std::nullopt;
  return shared.findings.card->bearing_true;
}

OutcomeRecord record_of(const LogbookState& state, const Shared& shared, const StopRecord& stop,
                        const StationRow& row, Outcome outcome) {
  OutcomeRecord record{.stop_id = stop.id,
                       .source = row.station.provenance.source.name,
                       .station_id = row.station.id,
                       .mark = mark(shared),
                       .call_sign = row.station.call_sign,
                       .rf_channel = row.station.rf_channel,
                       .outcome = outcome,
                       .when = moment_of(shared),
                       .gear = gear_name(shared),
                       .weather = state.weather};
  if (!row.station.programs.empty()) {
    record.virtual_channel = row.station.programs.front().virtual_channel;
  }
  record.heading = aimed_at(shared);
  const auto preset = gear::preset(record.gear);
  if (preset && preset->amplifier) record.amplifier = shared.settings.gear.amplifier;
  if (!row.outlook) return record;
  record.band = row.outlook->band;
  // What the TV may be unable to decode says nothing about the signal.
  if (row.outlook->decoding != gear::Decoding::possible) return record;
  if (!record.heading) return record;
  // As computed at that heading, before the logbook's corrections.
  const auto band = static_cast<std::size_t>(record.band);
  const reception::LearnedBias& learned = shared.stations->question.learned[band];
  reception::Outlook outlook = *row.outlook;
  outlook.deviations.logbook_db = 0.0;
  const gear::Pattern pattern = gear_of(shared.settings.gear).antenna.in(record.band).pattern;
  const auto aimed = reception::aimed_elsewhere(outlook, pattern, *record.heading,
                                                shared.findings.heading_error_deg);
  if (!aimed) return record;
  record.margin_db = aimed->margin_db - learned.bias_db;
  record.deviation_db = aimed->deviation_db;
  record.chance_percent =
      std::min(outlook.chance_cap_percent,
               reception::chance_percent(aimed->margin_db,
                                         std::hypot(aimed->deviation_db, learned.sigma_db)));
  return record;
}

bool same_record(const OutcomeRecord& a, const OutcomeRecord& b) {
  return a.stop_id == b.stop_id && a.source == b.source && a.station_id == b.station_id;
}

void remove(Log& log, const OutcomeRecord& record) {
  std::erase_if(log.outcomes, [&](const OutcomeRecord& one) { return same_record(one, record); });
}

}  // namespace

bool is_practice(const StopRecord& stop) {
  return stop.name == kPractice;
}

std::span<const StopRecord> listed_stops(const Log& log) {
  constexpr std::size_t kMost = 20;
  return std::span(log.stops).first(std::min(kMost, log.stops.size()));
}

void log_outcome(LogbookState& state, Shared& shared, const StationKey& key, Outcome outcome) {
  const StationRow* row = shared.stations ? find_row(*shared.stations, key) : nullptr;
  if (row == nullptr || !shared.findings.position || !accepts(state, shared)) return;
  const OutcomeRecord record = record_of(state, shared, this_stop(state, shared), *row, outcome);
  auto& outcomes = state.log.outcomes;
  const auto before = std::find_if(outcomes.begin(), outcomes.end(), [&](const OutcomeRecord& one) {
    return same_record(one, record);
  });
  std::optional<OutcomeRecord> replaced;
  if (before != outcomes.end()) replaced = *before;
  remember(shared, "Outcome saved").also.push_back(act::OutcomeBack{record, replaced});
  remove(state.log, record);
  outcomes.insert(outcomes.begin(), record);
  write(state, shared, record);
  teach(state, shared);
}

void take_back_outcome(LogbookState& state, const Shared& shared, const OutcomeRecord& touched,
                       const std::optional<OutcomeRecord>& replaced) {
  remove(state.log, touched);
  if (replaced) state.log.outcomes.insert(state.log.outcomes.begin(), *replaced);
  write(state, shared, OutcomeTakenBack{touched});
  teach(state, shared);
}

void log_sweep(LogbookState& state, Shared& shared, const KeptSweep& kept) {
  // The logbook stores true directions, so a compass reading is corrected by the declination.
  if (kept.by != SweepBy::Compass || !shared.findings.field || !shared.findings.position) return;
  if (!accepts(state, shared)) return;
  const auto as_true = [&](Bearing<Dial> heading) {
    return to_true(as_magnetic(heading), shared.findings.field->declination);
  };
  SweepRecord record{.id = id_of(shared, "sweep"),
                     .stop_id = this_stop(state, shared).id,
                     .source = kept.station.source,
                     .station_id = kept.station.id,
                     .mark = mark(shared),
                     .band = kept.band,
                     .when = moment_of(shared),
                     .scale = kept.scale,
                     .peak = as_true(kept.peak),
                     .sigma_deg = kept.sigma_deg};
  for (const aim::Reading& reading : kept.readings) {
    if (reading.value) record.readings.push_back({as_true(reading.heading), *reading.value});
  }
  if (!shared.undo.empty()) shared.undo.back().also.push_back(act::SweepBack{record.id});
  write(state, shared, std::move(record));
}

void take_back_sweep(LogbookState& state, const Shared& shared, const std::string& id) {
  write(state, shared, SweepTakenBack{id});
}

const std::array<learning::Correction, 3>& Taught::corrections_with(const GearChoice& gear) const {
  const auto other = std::find(other_gears.begin(), other_gears.end(), gear);
  return other == other_gears.end()
             ? corrections
             : other_corrections[static_cast<std::size_t>(other - other_gears.begin())];
}

void teach(LogbookState& state, const Shared& shared) {
  std::vector<OutcomeRecord> real;
  for (const OutcomeRecord& outcome : state.log.outcomes) {
    const StopRecord* stop = stop_record(state.log, outcome.stop_id);
    const bool practice = stop != nullptr && is_practice(*stop);
    if (practice == shared.stop.practice) real.push_back(outcome);
  }
  Taught taught{.outcomes = real.size()};
  const auto forecasts = learning::forecasts(real);
  taught.bins = learning::reliability_table(forecasts);
  taught.brier = learning::brier_score(forecasts);
  const learning::Learned learned = learning::learn(learning::trials(real));
  taught.practice = shared.stop.practice;
  taught.gear = gear_name(shared);
  taught.stop_id = state.log.stop_id;
  const std::string stop_id = taught.stop_id.value_or("");
  taught.corrections = learned.corrections(taught.gear, stop_id);
  taught.other_gears = shared.settings.other_gears;
  for (const GearChoice& gear : taught.other_gears) {
    taught.other_corrections.push_back(learned.corrections(gear_of(gear).name, stop_id));
  }
  state.log.taught = std::move(taught);
}

namespace {

// The position in use is known.
bool is_at_this_place(const StopRecord& stop, const Shared& shared) {
  return is_practice(stop) == shared.stop.practice &&
         same_stop(stop.position, *shared.findings.position);
}

}  // namespace

std::optional<std::string> stop_here(const Log& log, const Shared& shared) {
  if (!shared.findings.position) return std::nullopt;
  const auto here = std::find_if(log.stops.begin(), log.stops.end(), [&](const StopRecord& stop) {
    return is_at_this_place(stop, shared);
  });
  return here == log.stops.end() ? std::nullopt : std::optional(here->id);
}

void derive_log(LogbookState& state, const Shared& shared, const World& world) {
  for (const StopRecord& stop : listed_stops(state.log)) {
    state.days.push_back(local_day(stop.arrived, *world.zone_of(stop.position).clocks));
  }
  if (!shared.findings.position) return;
  std::set<std::string> here;
  for (const StopRecord& stop : state.log.stops) {
    if (is_at_this_place(stop, shared)) here.insert(stop.id);
  }
  std::set<std::pair<std::string, std::string>> stations;
  std::vector<OutcomeRecord> before;
  for (const OutcomeRecord& outcome : state.log.outcomes) {  // the latest first
    if (!here.contains(outcome.stop_id)) continue;
    if (outcome.stop_id != state.log.stop_id) before.push_back(outcome);
    if (stations.emplace(outcome.source, outcome.station_id).second) {
      state.outcomes_here.push_back(outcome);
    }
  }
  for (const HeadingThatWorked& worked : headings_that_worked(before)) {
    std::string line = words::whole_degrees(worked.heading) + " true:";
    for (const std::string& call_sign : worked.call_signs) line += " " + call_sign;
    state.worked_before.push_back(std::move(line));
  }
}

std::string next_weather(const std::string& weather) {
  if (weather.empty()) return kWeathers.front();
  const auto now = std::find(kWeathers.begin(), kWeathers.end(), weather);
  if (now == kWeathers.end() || now + 1 == kWeathers.end()) return {};
  return *(now + 1);
}

}  // namespace mastwise
