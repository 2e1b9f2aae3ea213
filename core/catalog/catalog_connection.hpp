#pragma once

#include "core/catalog/catalog.hpp"
#include "core/store/sqlite.hpp"

#include <cstdint>
#include <set>
#include <string_view>
#include <vector>

namespace mastwise {

// The catalog's database with every statement it uses, prepared once.
struct Catalog::Connection {
  explicit Connection(store::Database opened) : database(std::move(opened)) {}

  // Creates the tables in a new file, checks the version of an existing one, prepares statements.
  Result<Done> set_up();
  // The same for a file that cannot be written.
  Result<Done> set_up_frozen();
  // Prepares all statements that can be; the error is the first one's.
  Result<Done> prepare();

  Result<std::int64_t> insert(std::int64_t source, const Station& station);
  // Removes a source with its stations; returns how many there were, 0 if the source is unknown.
  Result<std::size_t> drop_source(std::string_view name);
  // With the programs of the overlay, or else as its source lists it.
  Result<Station> read(std::int64_t row, bool with_overlay = true);
  // The words a search finds the station by, including the programs of the overlay.
  Result<Done> insert_words_of(std::int64_t row, const Station& station);

  // Within a transaction: inserts what the reader reads, instead of the stations of that name.
  Result<ImportReport> replace(const Source& source, const StationReader& reader,
                               const ImportFocus& focus);
  // Shortens the write-ahead log to nothing if no other connection needs it.
  void shorten_log();

  // Stations that programs of the overlay belong to.
  Result<std::set<std::int64_t>> rows_of_overlay();
  Result<Done> find_words_anew(const std::set<std::int64_t>& rows);
  Result<Done> insert_programs(const ProgramTable& table);
  Result<Done> count_renamed(const Source& source, ProgramReport& report);
  Result<Done> count_strangers(const ProgramTable& table, ProgramReport& report);

  store::Database database;

  store::Statement insert_source, select_source, delete_source, list_sources;
  store::Statement insert_station, insert_program, insert_note, insert_place, insert_words;
  store::Statement delete_words, delete_places, delete_stations;
  store::Statement select_station, select_programs, select_notes;
  store::Statement insert_program_source, delete_program_source, list_program_sources;
  store::Statement insert_overlay, select_overlay, stations_of_overlay, delete_words_of;
  store::Statement station_of_program, renamed_stations;
  store::Statement gone_from_source, successors, rename_source, line_of_station;
  store::Statement count_stations, count_of_source, by_id, by_call_sign;
  store::Statement in_box, matching;

 private:
  class Inserter;
  class Missing;
  Result<Done> create();
  Result<bool> knows_multiplexes();
  Result<Done> add_what_older_ones_lack();
  Result<Done> check_version(std::int64_t application, std::int64_t version) const;
  Result<Done> read_parts(std::int64_t row, Station& station);
  Result<std::vector<Program>> overlay_of(const Station& station);
};

// The rows of a prepared list of sources (name, date, count).
Result<std::vector<SourceSummary>> read_summaries(store::Statement& statement);

}  // namespace mastwise
