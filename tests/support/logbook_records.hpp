#pragma once

#include "core/logbook/record.hpp"

#include <string>

// Records to write into logbooks. Places and stations are invented.
namespace mastwise::test {

inline UtcTime at_second(long second) {
  constexpr UtcTime kStart{std::chrono::sys_days(std::chrono::year(2026) / 7 / 1)};
  return kStart + std::chrono::seconds(second);
}

inline StopRecord stop_record(const std::string& id, double latitude_deg, double longitude_deg,
                              long second = 0, const std::string& tablet = "dash") {
  return {.id = id,
          .mark = {.changed = at_second(second), .tablet = tablet},
          .position = *Position::at_deg(latitude_deg, longitude_deg),
          .arrived = at_second(second)};
}

inline OutcomeRecord outcome_record(const std::string& stop_id, const std::string& call_sign,
                                    Outcome outcome, long second = 0,
                                    const std::string& tablet = "dash") {
  return {.stop_id = stop_id,
          .source = "PRACTICE",
          .station_id = call_sign + "/1",
          .mark = {.changed = at_second(second), .tablet = tablet},
          .call_sign = call_sign,
          .rf_channel = {.number = 23},
          .outcome = outcome,
          .when = at_second(second)};
}

inline SweepRecord sweep_record(const std::string& id, const std::string& stop_id, long second = 0,
                                const std::string& tablet = "dash") {
  return {.id = id,
          .stop_id = stop_id,
          .source = "PRACTICE",
          .station_id = "QAAB/1",
          .mark = {.changed = at_second(second), .tablet = tablet},
          .when = at_second(second),
          .scale = "quality",
          .readings = {{Bearing<True>::degrees(208.5), 71.0}, {Bearing<True>::degrees(0.1), 12.5}},
          .peak = Bearing<True>::degrees(207.3),
          .sigma_deg = 1.25};
}

// A stop and an outcome with all fields known and with texts that are hard to store.
inline StopRecord full_stop(const std::string& id) {
  StopRecord stop = stop_record(id, 44.4352171234567, -71.6759931234567, 5);
  stop.mark.changed += milliseconds(7);
  stop.left = at_second(86'400);
  stop.name = "Höhe \"am See\", 2nd loop";
  stop.note = "=1+1\r\nsecond line; it's <wet> & cold ";
  stop.surroundings = reception::Surroundings::scattered_trees;
  stop.rig_heading = RigHeading::nose_at(Bearing<True>::degrees(300.1));
  stop.gear = "roof, amplified";
  stop.weather = " rain";
  return stop;
}
inline OutcomeRecord full_outcome(const std::string& stop_id) {
  OutcomeRecord outcome = outcome_record(stop_id, "QAAB", Outcome::breaks_up, 60);
  outcome.rf_channel = {.number = 9, .letter = 'A'};
  outcome.virtual_channel = "6.1";
  outcome.band = Band::high_vhf;
  outcome.heading = Bearing<True>::degrees(1.0 / 3.0);
  outcome.chance_percent = 83.123456789012345;
  outcome.margin_db = -0.1;
  outcome.deviation_db = 7.0 / 3.0;
  outcome.gear = "roof, amplified";
  outcome.weather = "calm";
  outcome.temperature_c = -4.5;
  outcome.amplifier = false;
  return outcome;
}

}  // namespace mastwise::test
