#pragma once

#include "core/geo/position.hpp"
#include "core/logbook/record.hpp"
#include "core/result.hpp"
#include "core/safety/drive_off.hpp"
#include "core/store/sqlite.hpp"

#include <chrono>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// An earlier stop near a place.
struct StopNear {
  StopRecord stop;
  double distance_m = 0.0;
  std::vector<OutcomeRecord> outcomes = {};
};

struct SalvagedLogbook;

// A heading with steady reception.
struct HeadingThatWorked {
  Bearing<True> heading;
  std::vector<std::string> call_signs = {};
  bool operator==(const HeadingThatWorked&) const = default;
};

// The headings of steady outcomes to the nearest whole degree, those with most stations first; a
// station received at one heading at several stops counts once.
std::vector<HeadingThatWorked> headings_that_worked(std::span<const OutcomeRecord> outcomes);

// The result of a merge for one type of record.
struct MergeCounts {
  std::size_t added = 0;    // not in this logbook before
  std::size_t renewed = 0;  // newer there than here
  std::size_t same = 0;
  std::size_t kept = 0;  // newer here than there
  bool operator==(const MergeCounts&) const = default;
};
struct MergeReport {
  MergeCounts stops = {};
  MergeCounts outcomes = {};
  MergeCounts sweeps = {};
  bool operator==(const MergeReport&) const = default;
};

// Data that must never be lost, in one SQLite file: every write is on the disk before it returns. A
// file of an older version is backed up beside itself and upgraded; a newer one is refused. One
// thread at a time.
class Logbook {
 public:
  // Opens the logbook, or creates a new one if the file is missing. The error of a damaged file is
  // marked as such; the file stays unchanged.
  static Result<Logbook> open(const std::string& path);

  // Why nothing can be written now, as on a read-only medium.
  Result<Done> check_writable();

  // Whether the antenna was marked raised; down in a new logbook.
  Result<safety::Antenna> antenna();
  // The state and the record of its change are written together or not at all.
  Result<Done> keep_antenna(const AntennaChange& change);
  // Latest first.
  Result<std::vector<AntennaChange>> antenna_changes();

  // The settings as the app writes them; std::nullopt in a new logbook.
  Result<std::optional<std::string>> settings();
  Result<Done> keep_settings(const std::string& settings);

  // What was being worked on, as the app writes it; std::nullopt in a new logbook.
  Result<std::optional<std::string>> working_state();
  Result<Done> keep_working_state(const std::string& state);

  // The last trusted date, as a floor for repairing a receiver's dates.
  Result<std::optional<std::chrono::sys_days>> trusted_date();
  Result<Done> keep_trusted_date(std::chrono::sys_days date);

  // Records. A record passed to put() replaces the one of the same name, even if the tablet's clock
  // was set back: its time of change is then one millisecond after the replaced one. A record that
  // cannot be kept is refused (see fault() in record.hpp), and nothing changes. The lists omit
  // deleted records and those of a deleted stop.
  Result<Done> put(const StopRecord& stop);
  Result<Done> put(const SweepRecord& sweep);  // its stop must be known
  // By one touch: the station's previous outcome here is replaced, and remembered for take_back().
  Result<Done> put(const OutcomeRecord& outcome);  // its stop must be known
  // Restores what the last touch replaced, or removes the outcome. Returns the current outcome.
  // Fails if this tablet has nothing to take back.
  Result<std::optional<OutcomeRecord>> take_back(const OutcomeRecord& touched, UtcTime now,
                                                 const std::string& tablet);
  Result<Done> remove_stop(const std::string& id, UtcTime now, const std::string& tablet);
  Result<Done> remove_sweep(const std::string& id, UtcTime now, const std::string& tablet);

  Result<std::optional<StopRecord>> stop(const std::string& id);
  Result<std::vector<StopRecord>> stops();  // latest first
  // Stops within a distance in meters (the geodesic on the WGS84 ellipsoid), nearest first; at
  // equal distance the latest first.
  Result<std::vector<StopNear>> stops_near(const Position& place, double within_m = 200.0);
  Result<std::vector<OutcomeRecord>> outcomes();  // latest first
  Result<std::vector<OutcomeRecord>> outcomes(const std::string& stop_id);
  Result<std::vector<SweepRecord>> sweeps(const std::string& stop_id);

  // Every record, also deleted ones, in a fixed order: logbooks with the same records are equal.
  Result<LogbookContent> content();
  // Merges the records of another logbook: the later version of each record wins, whichever side it
  // is on, so merges can be repeated in any order. All records are merged or none. The raised state
  // and the settings belong to each tablet and stay unchanged.
  Result<MergeReport> merge(const LogbookContent& other);

  // Fills a new logbook. Without a readable state of the antenna it counts as raised.
  Result<Done> restore(const SalvagedLogbook& salvaged);

  // Writes a copy of the whole logbook, reads it back and compares: an incomplete copy is an error.
  // A file of that name is replaced.
  Result<Done> back_up(const std::string& path);

 private:
  explicit Logbook(store::Database database) : database_(std::move(database)) {}
  Result<std::optional<std::string>> kept(const char* name);
  Result<Done> keep(const char* name, const std::string& value);

  store::Database database_;
};

// The records of a logbook file, such as a backup, which stays unchanged. Fails if the file is
// damaged, newer, or not a logbook; a version from before records returns none.
Result<LogbookContent> read_logbook(const std::string& path);

}  // namespace mastwise
