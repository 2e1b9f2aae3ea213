#pragma once

#include "core/angles/bearing.hpp"
#include "core/catalog/station_change.hpp"
#include "core/import/program_table.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/stations/station_table.hpp"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// Whose changes an import lists, and how many.
struct ImportFocus {
  std::optional<Position> near = {};  // the nearest first; empty: by kind and call sign
  std::size_t most = 200;
};

// The result of an import.
struct ImportReport {
  static constexpr std::size_t kListedRows = 50'000;

  Source source = {};
  bool renews = false;  // there was a table of this source before
  std::size_t rows_read = 0;
  std::size_t stations_added = 0;             // not in the source's previous table
  std::size_t stations_changed = 0;           // in both tables, with different facts
  std::size_t stations_unchanged = 0;         // in both tables, the same
  std::size_t stations_gone = 0;              // no longer in the source's table
  std::size_t stations_moved = 0;             // among the changed: farther than kMove_m
  std::size_t stations_on_other_channel = 0;  // likewise
  std::size_t stations_of_other_power = 0;    // likewise
  std::size_t stations_renamed = 0;           // likewise
  std::size_t stations_changed_notably = 0;   // any of these four
  // Station by station, as the ImportFocus says; none unless a table was there before.
  std::vector<StationChange> changes = {};
  std::size_t rows_rejected = 0;
  std::vector<RejectedRow> rejected = {};  // at most kListedRows
  std::vector<std::string> remarks = {};
  bool operator==(const ImportReport&) const = default;
};

// The changes that the report does not list.
std::size_t changes_not_listed(const ImportReport& report);

// A station that a table of programs calls otherwise, by the number of its facility.
struct RenamedStation {
  std::string facility_id = {};
  std::string call_sign = {};  // in the catalog
  std::string now = {};        // in the table
  bool operator==(const RenamedStation&) const = default;
};

// The result of an import of programs.
struct ProgramReport {
  static constexpr std::size_t kListed = 50;

  Source source = {};
  std::size_t rows_read = 0;
  std::size_t programs = 0;
  std::size_t stations = 0;                 // of the catalog, that now have these programs
  std::size_t without_station = 0;          // programs whose station is not in the catalog
  std::vector<std::string> strangers = {};  // their call signs or numbers, at most kListed
  std::size_t stations_renamed = 0;
  std::vector<RenamedStation> renamed = {};  // at most kListed
  std::size_t rows_without_program = 0;
  std::vector<RejectedRow> rejected = {};
  bool operator==(const ProgramReport&) const = default;
};

// A source and the number of its stations in the catalog.
struct SourceSummary {
  Source source = {};
  std::size_t stations = 0;
  bool operator==(const SourceSummary&) const = default;
};

// A station as seen from a position: the geodesic on the WGS84 ellipsoid.
struct NearStation {
  Station station;
  double distance_m = 0.0;
  Bearing<True> bearing;  // from the position to the station, at the position; 0 at distance 0
};

// The tables of a damaged catalog, with the rows that can be read.
struct SalvagedCatalog {
  std::vector<StationTable> stations = {};
  std::vector<ProgramTable> programs = {};
};

// Called from time to time with the stations done and the total; returns false to stop the import.
using ImportProgress = std::function<bool(std::size_t done, std::size_t all)>;

// Reads a table into a sink.
using StationReader = std::function<Result<TableSummary>(StationSink& sink)>;

// Whether these are two sources' records of one transmitter: no two use one channel within 500 m.
bool same_transmitter(const Station& a, const Station& b);

// All known stations, in one SQLite file. The sources can always rebuild it, so a file of another
// version is refused with advice to import again.
//
// Threads: a Catalog is one connection with its prepared statements; only one thread may use it at
// a time. Each thread that needs the catalog opens it separately. During a write, other connections
// read the previous state (write-ahead log).
class Catalog {
 public:
  // Opens the catalog, or creates an empty one if the file is missing. ":memory:" keeps it in
  // memory. On a read-only medium it can only be read.
  static Result<Catalog> open(const std::string& path);
  // Reads every page of an existing file; a missing one is in order. Takes about as long as reading
  // the file. The error of a damaged file is marked as such.
  static Result<Done> check(const std::string& path);
  // The tables that can still be read of a damaged file. Never fails.
  static SalvagedCatalog salvage(const std::string& path);
  Catalog(Catalog&&) noexcept;
  Catalog& operator=(Catalog&&) noexcept;
  ~Catalog();

  // Replaces all stations of the source of that name with a table. If an error occurs or `progress`
  // stops the import, nothing changes.
  Result<ImportReport> replace_source(const StationTable& table,
                                      const ImportProgress& progress = {},
                                      const ImportFocus& focus = {});

  // The same for a table that need not fit the memory. A second row of one station is rejected. A
  // table without a readable row is an error, and so is one of the reader. Afterwards no more than
  // 4 MB of the log remain beside the file. A station that a table names by call sign and channel
  // only, and that has another channel now, counts as changed.
  Result<ImportReport> replace_source(const Source& source, const StationReader& reader,
                                      const ImportFocus& focus = {});

  // Removes a source's stations. Returns how many there were.
  Result<std::size_t> remove_source(std::string_view name);

  // Replaces the program table of that name. Its programs complete the stations they belong to, now
  // and after any later import of stations.
  Result<ProgramReport> replace_programs(const ProgramTable& table);
  Result<Done> remove_programs(std::string_view name);
  Result<std::vector<SourceSummary>> program_sources();  // by name; `stations`: programs

  // At most `limit` stations within a distance in meters, nearest first. Records of two sources on
  // one channel within 500 m are one station: that of the newer source, completed from the other,
  // which is a note (note_names.hpp).
  Result<std::vector<NearStation>> nearest(const Position& from, double max_distance_m,
                                           std::size_t limit);

  // The stations that match every word of the text. Words match the start of a word in call sign,
  // name, network, programs and place; "6" an RF or virtual channel, "6.1" a virtual channel, "rf
  // 23" an RF channel. An exact call sign comes first, then the nearest stations (without a
  // position, by call sign). Empty if the text has no letters or digits; words after the sixteenth
  // are ignored.
  Result<std::vector<NearStation>> search(std::string_view text, const Position& near,
                                          std::size_t limit);
  Result<std::vector<Station>> search(std::string_view text, std::size_t limit);

  // The stations of a call sign, ignoring case, ordered by source and id.
  Result<std::vector<Station>> with_call_sign(std::string_view call_sign);

  // The station of a source with this id; std::nullopt if missing.
  Result<std::optional<Station>> find(std::string_view source_name, std::string_view id);

  Result<std::size_t> count();
  Result<std::vector<SourceSummary>> sources();  // by name

 private:
  struct Connection;
  explicit Catalog(std::unique_ptr<Connection> connection);
  std::unique_ptr<Connection> connection_;
};

}  // namespace mastwise
