#include "app/logbook/log.hpp"

#include "app/logbook/actions.hpp"
#include "app/logbook/tried.hpp"

#include <algorithm>
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

OutcomeRecord record_of(const LogbookState& state, const Shared& shared, const StopRecord& stop,
                        const SurveyedRow& surveyed, Outcome outcome) {
  const StationRow& row = *surveyed.row;
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
  if (!record.heading) return record;
  // Without a target an outcome is kept, but says nothing about a forecast.
  const auto forecast = forecast_at(shared, row, *record.heading, surveyed.learned);
  if (!forecast) return record;
  record.margin_db = forecast->margin_db;
  record.deviation_db = forecast->deviation_db;
  record.chance_percent = forecast->chance_percent;
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
  const SurveyedRow row = surveyed_row(state, shared, key);
  if (row.row == nullptr || !shared.findings.position || !accepts(state, shared)) return;
  const OutcomeRecord record = record_of(state, shared, this_stop(state, shared), row, outcome);
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
  // The logbook stores true directions, so a compass reading is corrected by the declination; the
  // sensor's are by map north.
  if (kept.by == SweepBy::Handle || !shared.findings.field || !shared.findings.position) return;
  if (!accepts(state, shared)) return;
  const auto as_true = [&](Bearing<Dial> heading) {
    if (kept.by == SweepBy::Sensor) return Bearing<True>::degrees(heading.degrees());
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
  std::set<std::string> stops;
  for (const OutcomeRecord& outcome : real) stops.insert(outcome.stop_id);
  Taught taught{.outcomes = real.size(), .stops = stops.size()};
  const auto forecasts = learning::forecasts(real);
  std::vector<learning::Forecast> vhf, uhf;
  for (const learning::Forecast& one : forecasts) {
    (one.band == Band::uhf ? uhf : vhf).push_back(one);
  }
  taught.vhf = learning::reliability_by_word(vhf);
  taught.uhf = learning::reliability_by_word(uhf);
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

std::vector<const OutcomeRecord*> outcomes_of_this_stop(const Log& log, const Shared& shared) {
  std::vector<const OutcomeRecord*> found;
  const StopRecord* stop = log.stop_id ? stop_record(log, *log.stop_id) : nullptr;
  if (stop == nullptr || !goes_on(log, shared, *stop)) return found;
  for (const OutcomeRecord& outcome : log.outcomes) {
    if (outcome.stop_id == stop->id) found.push_back(&outcome);
  }
  return found;
}

namespace {

// The nights at this place before this one.
void derive_nights(LogbookState& state, const Shared& shared, const World& world) {
  const StopRecord* now = state.log.stop_id ? stop_record(state.log, *state.log.stop_id) : nullptr;
  std::vector<StopRecord> before;
  for (const StopRecord& stop : state.log.stops) {
    const bool this_one = &stop == now && goes_on(state.log, shared, stop);
    if (!this_one && is_at_this_place(stop, shared)) before.push_back(stop);
  }
  const std::vector<Night> found = nights(before, state.log.outcomes);
  for (const Night& night : found) {
    NightShown shown{.night = night,
                     .day = local_day(night.arrived, *world.zone_of(night.position).clocks)};
    if (night.heading) shown.on_compass = on_compass_here(shared, *night.heading);
    state.found.nights.push_back(std::move(shown));
  }
  state.found.worked = heading_that_worked(found);
  if (state.found.worked) {
    state.found.worked_on_compass = on_compass_here(shared, state.found.worked->heading);
  }
}

}  // namespace

void derive_log(LogbookState& state, const Shared& shared, const World& world) {
  for (const StopRecord& stop : listed_stops(state.log)) {
    state.days.push_back(local_day(stop.arrived, *world.zone_of(stop.position).clocks));
  }
  const auto lesson = learning::main_lesson(state.log.taught.corrections);
  state.found.lesson = lesson;
  state.found.ask_inverter =
      lesson && lesson->bias_db < 0.0 && lesson->band != Band::uhf && !shared.stop.inverter_on;
  if (!shared.findings.position) return;
  std::set<std::string> here;
  for (const StopRecord& stop : state.log.stops) {
    if (is_at_this_place(stop, shared)) here.insert(stop.id);
  }
  std::set<std::pair<std::string, std::string>> stations;
  for (const OutcomeRecord& outcome : state.log.outcomes) {  // the latest first
    if (!here.contains(outcome.stop_id)) continue;
    if (stations.emplace(outcome.source, outcome.station_id).second) {
      state.outcomes_here.push_back(outcome);
    }
  }
  derive_nights(state, shared, world);
}

std::string next_weather(const std::string& weather) {
  if (weather.empty()) return kWeathers.front();
  const auto now = std::find(kWeathers.begin(), kWeathers.end(), weather);
  if (now == kWeathers.end() || now + 1 == kWeathers.end()) return {};
  return *(now + 1);
}

}  // namespace mastwise
