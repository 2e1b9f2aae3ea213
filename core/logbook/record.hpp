#pragma once

#include "core/angles/bearing.hpp"
#include "core/channels/channels.hpp"
#include "core/geo/position.hpp"
#include "core/reception/surroundings.hpp"
#include "core/result.hpp"
#include "core/safety/drive_off.hpp"
#include "core/time.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Records made at a stop. Texts are UTF-8; empty ones are unknown. Core has neither a clock nor a
// random generator: times, ids and the tablet's name come from the caller.
namespace mastwise {

// What two tablets need to merge their logbooks.
struct Mark {
  UtcTime changed{};        // when the record was last written
  std::string tablet = {};  // which tablet wrote it
  bool deleted = false;     // removed; kept so that another tablet removes it too
  bool operator==(const Mark&) const = default;
};

// A place where the rig was parked, once.
struct StopRecord {
  std::string id = {};  // unique over all tablets, like a UUID: 1 to 64 letters, digits and hyphens
  Mark mark = {};
  Position position;
  UtcTime arrived{};
  std::optional<UtcTime> left = {};
  std::string name = {};
  std::string note = {};
  std::optional<reception::Surroundings> surroundings = {};
  std::optional<RigHeading> rig_heading = {};
  std::string gear = {};  // its name, or how it was chosen
  std::string weather = {};
  bool operator==(const StopRecord&) const = default;
};

// The antenna was marked up or down on this tablet.
struct AntennaChange {
  safety::Antenna antenna = safety::Antenna::Down;
  UtcTime when{};
  std::optional<Position> place = {};  // of the rig, if known
  std::string confirmed = {};          // the statement that the user confirmed, or "Undo"
  bool operator==(const AntennaChange&) const = default;
};

// What was received.
enum class Outcome : std::uint8_t { steady, breaks_up, nothing };

// One station tried at one stop. Stop, source and station identify the record: a new trial replaces
// it.
struct OutcomeRecord {
  std::string stop_id = {};
  std::string source = {};      // the name of the station's table
  std::string station_id = {};  // unique within its source
  Mark mark = {};
  std::string call_sign = {};
  RfChannel rf_channel = {};
  std::string virtual_channel = {};
  Band band = Band::uhf;
  std::optional<Bearing<True>> heading = {};  // of the antenna
  Outcome outcome = Outcome::nothing;
  UtcTime when{};
  std::optional<double> chance_percent = {};  // as shown
  // The models' values before any correction by the logbook; learning from corrected values would
  // count the lesson twice.
  std::optional<double> margin_db = {};
  std::optional<double> deviation_db = {};
  std::string gear = {};
  std::string weather = {};
  std::optional<double> temperature_c = {};
  std::optional<bool> amplifier = {};  // on; std::nullopt if the gear has none, or of old records
  bool operator==(const OutcomeRecord&) const = default;
};

struct SweepReading {
  Bearing<True> heading;
  double value = 0.0;
  bool operator==(const SweepReading&) const = default;
};

// Meter readings of one station taken at several headings.
struct SweepRecord {
  std::string id = {};  // like a stop's id
  std::string stop_id = {};
  std::string source = {};
  std::string station_id = {};
  Mark mark = {};
  Band band = Band::uhf;
  UtcTime when{};
  std::string scale = {};  // of the meter, "quality"
  std::vector<SweepReading> readings = {};
  std::optional<Bearing<True>> peak = {};  // fitted
  std::optional<double> sigma_deg = {};    // of the peak
  bool operator==(const SweepRecord&) const = default;
};

// "steady", "breaks up", "nothing"; parsing ignores case.
std::string_view to_text(Outcome outcome);
Result<Outcome> parse_outcome(std::string_view text);

// "low VHF", "high VHF", "UHF"; parsing ignores case.
Result<Band> parse_band(std::string_view text);

// Why a record cannot be kept: an invalid id, text that is not UTF-8, a number that is not finite
// or out of range (a chance outside 0 to 100 %, a deviation or sigma that is not positive), a
// departure before the arrival.
std::optional<Error> fault(const StopRecord& stop);
std::optional<Error> fault(const OutcomeRecord& outcome);
std::optional<Error> fault(const SweepRecord& sweep);

// All records that two tablets share.
struct LogbookContent {
  std::vector<StopRecord> stops = {};        // by id
  std::vector<OutcomeRecord> outcomes = {};  // by stop, source and station
  std::vector<SweepRecord> sweeps = {};      // by id
  bool operator==(const LogbookContent&) const = default;
};

}  // namespace mastwise
