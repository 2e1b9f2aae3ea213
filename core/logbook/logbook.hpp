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

// A heading at which stations came in steadily.
struct HeadingThatWorked {
  Bearing<True> heading;
  std::vector<std::string> call_signs = {};
  bool operator==(const HeadingThatWorked&) const = default;
};

// The headings of steady outcomes to the nearest whole degree, those with most stations first; a
// station that came in at one heading at several stops counts once.
std::vector<HeadingThatWorked> headings_that_worked(std::span<const OutcomeRecord> outcomes);

// What a merge did with one kind of records.
struct MergeCounts {
  std::size_t added = 0;    // not known here before
  std::size_t renewed = 0;  // written later there than here
  std::size_t same = 0;
  std::size_t kept = 0;  // written later here than there
  bool operator==(const MergeCounts&) const = default;
};
struct MergeReport {
  MergeCounts stops = {};
  MergeCounts outcomes = {};
  MergeCounts sweeps = {};
  bool operator==(const MergeReport&) const = default;
};

// What must never be lost, in one SQLite file: every write is on the disk before it returns. A file
// of an older version is backed up beside itself and brought up to date; one of a newer version is
// refused. One thread at a time.
class Logbook {
 public:
  // Opens the logbook, or begins a new one where there is no file.
  static Result<Logbook> open(const std::string& path);

  // Whether the antenna was marked raised; down in a new logbook.
  Result<safety::Antenna> antenna();
  // The state and the record of its change go in together or not at all.
  Result<Done> keep_antenna(const AntennaChange& change);
  // The latest first.
  Result<std::vector<AntennaChange>> antenna_changes();

  // The program's settings, in the program's own words; nothing in a new logbook.
  Result<std::optional<std::string>> settings();
  Result<Done> keep_settings(const std::string& settings);

  // The last trusted date, as a floor for repairing a receiver's dates.
  Result<std::optional<std::chrono::sys_days>> trusted_date();
  Result<Done> keep_trusted_date(std::chrono::sys_days date);

  // Records. What is put takes the place of the record of that name, however the tablet's clock
  // stood: where that is not later it is marked one millisecond after what it replaces. A record
  // that cannot be kept is refused (see fault() in record.hpp), and nothing changes. The lists
  // leave out what was deleted, and what belongs to a deleted stop.
  Result<Done> put(const StopRecord& stop);
  Result<Done> put(const SweepRecord& sweep);  // its stop must be known
  // By one touch: what the station did here before is replaced, and remembered for take_back().
  Result<Done> put(const OutcomeRecord& outcome);  // its stop must be known
  // What the last touch replaced stands again, at last nothing. Returns what stands now. Fails
  // where this tablet has nothing to take back.
  Result<std::optional<OutcomeRecord>> take_back(const OutcomeRecord& touched, UtcTime now,
                                                 const std::string& tablet);
  Result<Done> remove_stop(const std::string& id, UtcTime now, const std::string& tablet);
  Result<Done> remove_sweep(const std::string& id, UtcTime now, const std::string& tablet);

  Result<std::optional<StopRecord>> stop(const std::string& id);
  Result<std::vector<StopRecord>> stops();  // the latest first
  // Stops within a distance in meters (the geodesic on the WGS84 ellipsoid), the nearest first, of
  // equals the latest first.
  Result<std::vector<StopNear>> stops_near(const Position& place, double within_m = 200.0);
  Result<std::vector<OutcomeRecord>> outcomes();  // the latest first
  Result<std::vector<OutcomeRecord>> outcomes(const std::string& stop_id);
  Result<std::vector<SweepRecord>> sweeps(const std::string& stop_id);

  // Every record, also the deleted, in a fixed order: two logbooks with the same records are equal.
  Result<LogbookContent> content();
  // Takes in the records of another logbook: of each record the later writing holds, whichever side
  // it is on, so that it does not matter how often and in which order logbooks are merged. All go
  // in or none. The raised state and the settings are each tablet's own and stay as they are.
  Result<MergeReport> merge(const LogbookContent& other);

  // Writes a copy of the whole logbook, reads it again and compares: a copy that is not complete
  // is an error. A file of that name is replaced.
  Result<Done> back_up(const std::string& path);

 private:
  explicit Logbook(store::Database database) : database_(std::move(database)) {}
  Result<std::optional<std::string>> kept(const char* name);
  Result<Done> keep(const char* name, const std::string& value);

  store::Database database_;
};

// The records of a logbook's file, a backup say, which is left as it is. Fails when the file is
// damaged, of a newer version or no logbook; one of an older version that had no records gives
// none.
Result<LogbookContent> read_logbook(const std::string& path);

}  // namespace mastwise
