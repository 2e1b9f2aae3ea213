#include "app/model/log.hpp"

#include "app/model/model.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr const char* kPractice = "PRACTICE";
constexpr std::array<const char*, 6> kWeathers{"clear", "overcast", "rain",
                                               "snow",  "wind",     "thunder"};

std::string gear_name(const Model& model) {
  return gear_of(model.settings.gear).name;
}

Mark mark(const Model& model) {
  return {.changed = moment_of(model), .tablet = model.settings.tablet};
}

std::string id_of(const Model& model, const char* kind) {
  return fmt::format("{}-{}-{}", model.settings.tablet, kind,
                     moment_of(model).time_since_epoch().count());
}

const StopRecord* stop_record(const Log& log, const std::string& id) {
  const auto found = std::find_if(log.stops.begin(), log.stops.end(),
                                  [&](const StopRecord& stop) { return stop.id == id; });
  return found == log.stops.end() ? nullptr : &*found;
}

void write(Model& model, LogWrite record) {
  if (!model.stop.practice) model.log_writes.push_back(std::move(record));
}

// A stop lasts a day, unless a record was made elsewhere since.
bool still_here(const Model& model, const StopRecord& stop) {
  constexpr auto kDay = std::chrono::hours(24);
  const bool latest = &stop == &model.log.stops.front();
  const bool practice = stop.name == kPractice;
  return latest && !stop.mark.deleted && practice == model.stop.practice &&
         same_stop(stop.position, *model.findings.position) &&
         moment_of(model) - stop.arrived < kDay;
}

// The record of this stop; a new one if the rig has moved on.
const StopRecord& this_stop(Model& model) {
  Log& log = model.log;
  const Position& here = *model.findings.position;
  if (log.stop_id) {
    const StopRecord* known = stop_record(log, *log.stop_id);
    if (known != nullptr && same_stop(known->position, here)) return *known;
  }
  // The app restarted at the same stop.
  const auto again = std::find_if(log.stops.begin(), log.stops.end(),
                                  [&](const StopRecord& stop) { return still_here(model, stop); });
  if (again != log.stops.end()) {
    log.stop_id = again->id;
    return *again;
  }
  StopRecord stop{.id = id_of(model, "stop"),
                  .mark = mark(model),
                  .position = here,
                  .arrived = moment_of(model),
                  .surroundings = model.stop.surroundings,
                  .rig_heading = model.findings.nose,
                  .gear = gear_name(model),
                  .weather = model.weather};
  if (model.stop.practice) stop.name = kPractice;
  log.stop_id = stop.id;
  write(model, stop);
  return *log.stops.insert(log.stops.begin(), std::move(stop));
}

OutcomeRecord record_of(const Model& model, const StopRecord& stop, const StationRow& row,
                        Outcome outcome) {
  OutcomeRecord record{.stop_id = stop.id,
                       .source = row.station.provenance.source.name,
                       .station_id = row.station.id,
                       .mark = mark(model),
                       .call_sign = row.station.call_sign,
                       .rf_channel = row.station.rf_channel,
                       .outcome = outcome,
                       .when = moment_of(model),
                       .gear = gear_name(model),
                       .weather = model.weather};
  if (!row.station.programs.empty()) {
    record.virtual_channel = row.station.programs.front().virtual_channel;
  }
  if (!row.outlook) return record;
  const reception::Outlook& outlook = *row.outlook;
  record.band = outlook.band;
  record.heading = outlook.bearing;
  record.chance_percent = outlook.chance_percent;
  if (!outlook.margin_db) return record;
  // As computed, before the logbook's corrections.
  const auto& learned = model.stations->question.learned[static_cast<std::size_t>(outlook.band)];
  reception::Deviations deviations = outlook.deviations;
  deviations.logbook_db = 0.0;
  record.margin_db = *outlook.margin_db - learned.bias_db;
  record.deviation_db = deviations.total_db();
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

void log_outcome(Model& model, const StationKey& key, Outcome outcome) {
  const StationRow* row = model.stations ? find_row(*model.stations, key) : nullptr;
  if (row == nullptr || !model.findings.position) return;
  const OutcomeRecord record = record_of(model, this_stop(model), *row, outcome);
  auto& outcomes = model.log.outcomes;
  const auto before = std::find_if(outcomes.begin(), outcomes.end(), [&](const OutcomeRecord& one) {
    return same_record(one, record);
  });
  if (model.taken_back) {
    model.taken_back->outcome = record;
    model.taken_back->replaced =
        before == outcomes.end() ? std::nullopt : std::optional<OutcomeRecord>(*before);
  }
  remove(model.log, record);
  outcomes.insert(outcomes.begin(), record);
  write(model, record);
  teach(model);
}

void take_back_outcome(Model& model, const OutcomeRecord& touched,
                       const std::optional<OutcomeRecord>& replaced) {
  remove(model.log, touched);
  if (replaced) model.log.outcomes.insert(model.log.outcomes.begin(), *replaced);
  write(model, OutcomeTakenBack{touched});
  teach(model);
}

void log_sweep(Model& model) {
  const auto result = model.sweep ? result_of(*model.sweep) : std::nullopt;
  if (!result || !model.findings.position) return;
  const Sweep& sweep = *model.sweep;
  // The logbook stores true directions, so a compass reading is corrected by the declination.
  if (sweep.by != SweepBy::Compass || !model.findings.field) return;
  const auto as_true = [&](Bearing<Dial> heading) {
    return to_true(as_magnetic(heading), model.findings.field->declination);
  };
  SweepRecord record{.id = id_of(model, "sweep"),
                     .stop_id = this_stop(model).id,
                     .source = sweep.station.source,
                     .station_id = sweep.station.id,
                     .mark = mark(model),
                     .band = sweep.band,
                     .when = moment_of(model),
                     .scale = std::string(aim::to_text(sweep.scale)),
                     .peak = as_true(result->peak),
                     .sigma_deg = result->sigma_deg};
  for (const aim::Reading& reading : sweep.readings) {
    if (reading.value) record.readings.push_back({as_true(reading.heading), *reading.value});
  }
  if (model.taken_back) model.taken_back->sweep_id = record.id;
  write(model, std::move(record));
}

void take_back_sweep(Model& model, const std::string& id) {
  write(model, SweepTakenBack{id});
}

void teach(Model& model) {
  std::vector<OutcomeRecord> real;
  for (const OutcomeRecord& outcome : model.log.outcomes) {
    const StopRecord* stop = stop_record(model.log, outcome.stop_id);
    const bool practice = stop != nullptr && is_practice(*stop);
    if (practice == model.stop.practice) real.push_back(outcome);
  }
  Taught taught{.outcomes = real.size()};
  const auto forecasts = learning::forecasts(real);
  taught.bins = learning::reliability_table(forecasts);
  taught.brier = learning::brier_score(forecasts);
  const learning::Learned learned = learning::learn(learning::trials(real));
  const std::string gear = gear_name(model), stop = model.log.stop_id.value_or("");
  for (const Band band : {Band::low_vhf, Band::high_vhf, Band::uhf}) {
    taught.corrections[static_cast<std::size_t>(band)] = learned.correction(band, gear, stop);
  }
  model.log.taught = std::move(taught);
}

void derive_log(const Model& model, Findings& findings) {
  findings.outcomes_here.clear();
  findings.worked_before.clear();
  for (const OutcomeRecord& outcome : model.log.outcomes) {
    if (model.log.stop_id && outcome.stop_id == *model.log.stop_id) {
      findings.outcomes_here.push_back(outcome);
    }
  }
  if (!findings.position) return;
  std::vector<OutcomeRecord> before;
  for (const StopRecord& stop : model.log.stops) {
    if (stop.id == model.log.stop_id || !same_stop(stop.position, *findings.position)) continue;
    for (const OutcomeRecord& outcome : model.log.outcomes) {
      if (outcome.stop_id == stop.id) before.push_back(outcome);
    }
  }
  for (const HeadingThatWorked& worked : headings_that_worked(before)) {
    std::string line = words::whole_degrees(worked.heading) + " true:";
    for (const std::string& call_sign : worked.call_signs) line += " " + call_sign;
    findings.worked_before.push_back(std::move(line));
  }
}

std::string next_weather(const std::string& weather) {
  if (weather.empty()) return kWeathers.front();
  const auto now = std::find(kWeathers.begin(), kWeathers.end(), weather);
  if (now == kWeathers.end() || now + 1 == kWeathers.end()) return {};
  return *(now + 1);
}

}  // namespace mastwise
