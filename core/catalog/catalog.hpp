#pragma once

#include "core/angles/bearing.hpp"
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

// A station that an import found elsewhere than before.
struct StationMove {
  std::string call_sign = {};
  double distance_m = 0.0;
  bool operator==(const StationMove&) const = default;
};

// What an import did. The lists hold the first kListedStations at most.
struct ImportReport {
  static constexpr std::size_t kListedStations = 50;
  // Less than this is a coordinate written anew: a second of arc is 31 m, a changed datum up to 100
  // m, and neither turns an antenna (100 m at 10 km is 0.6 degrees).
  static constexpr double kMove_m = 100.0;

  Source source = {};
  std::size_t rows_read = 0;
  std::size_t stations_added = 0;                  // not in the source's former table
  std::size_t stations_changed = 0;                // there before, with other facts
  std::size_t stations_unchanged = 0;              // there before, the same
  std::size_t stations_gone = 0;                   // no longer in the source's table
  std::size_t stations_moved = 0;                  // among the changed: by more than kMove_m
  std::vector<std::string> added_call_signs = {};  // in the table's order
  std::vector<std::string> gone_call_signs = {};   // by call sign
  std::vector<StationMove> moved = {};             // the farthest first
  std::vector<RejectedRow> rejected = {};
  std::vector<std::string> remarks = {};
  bool operator==(const ImportReport&) const = default;
};

// What an import of programs did.
struct ProgramReport {
  Source source = {};
  std::size_t rows_read = 0;
  std::size_t programs = 0;
  std::size_t stations = 0;                 // of the catalog, that programs now belong to
  std::size_t without_station = 0;          // programs whose station the catalog does not have
  std::vector<std::string> strangers = {};  // their call signs or facility numbers, 50 at most
  std::vector<RejectedRow> rejected = {};
  bool operator==(const ProgramReport&) const = default;
};

// A source and how many stations of it the catalog holds.
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

// Called now and then with the number of stations done of all; returns false to stop the import.
using ImportProgress = std::function<bool(std::size_t done, std::size_t all)>;

// The stations known, in one SQLite file. Nothing in it is lost that the sources could not give
// again: a file of another version is refused with that advice.
//
// Threads: a Catalog is one connection with its prepared statements and is used by one thread at a
// time; each thread that needs the catalog opens its own. While one writes, others read the state
// before it (write-ahead log).
class Catalog {
 public:
  // Opens the catalog, or makes an empty one where there is no file. ":memory:" keeps it in memory.
  static Result<Catalog> open(const std::string& path);
  Catalog(Catalog&&) noexcept;
  Catalog& operator=(Catalog&&) noexcept;
  ~Catalog();

  // Puts a table in, in place of all that the catalog holds of the source of that name. All of it
  // goes in or, on an error or when `progress` stops it, nothing changes.
  Result<ImportReport> replace_source(const StationTable& table,
                                      const ImportProgress& progress = {});

  // Takes a source's stations out. Returns how many there were.
  Result<std::size_t> remove_source(std::string_view name);

  // Puts a table of programs in, in place of that of the same name. They complete the programs
  // of whatever stations they belong to, now and after any later import of stations.
  Result<ProgramReport> replace_programs(const ProgramTable& table);
  Result<Done> remove_programs(std::string_view name);
  Result<std::vector<SourceSummary>> program_sources();  // by name; `stations`: programs

  // The stations within a distance in meters, nearest first, at most `limit`.
  Result<std::vector<NearStation>> nearest(const Position& from, double max_distance_m,
                                           std::size_t limit);

  // The stations that fit every word of the text: words by their beginning in call sign, name,
  // network, programs and place; "6" an RF or virtual channel, "6.1" a virtual channel, "rf 23"
  // an RF channel. A station whose call sign is the text comes first, then the nearest first
  // (without a position, by call sign). A text without letters and digits finds nothing;
  // words after the sixteenth are left out.
  Result<std::vector<NearStation>> search(std::string_view text, const Position& near,
                                          std::size_t limit);
  Result<std::vector<Station>> search(std::string_view text, std::size_t limit);

  // The stations of a call sign, without notice of case, in the order of sources and ids.
  Result<std::vector<Station>> with_call_sign(std::string_view call_sign);

  // The station of a source by its id; nothing where there is none.
  Result<std::optional<Station>> find(std::string_view source_name, std::string_view id);

  Result<std::size_t> count();
  Result<std::vector<SourceSummary>> sources();  // by name

 private:
  struct Connection;
  explicit Catalog(std::unique_ptr<Connection> connection);
  std::unique_ptr<Connection> connection_;
};

}  // namespace mastwise
