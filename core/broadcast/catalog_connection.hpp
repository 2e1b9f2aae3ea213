#pragma once

#include "core/broadcast/catalog.hpp"
#include "core/store/sqlite.hpp"

#include <cstdint>
#include <string_view>

namespace mastwise {

// The catalog's database with every statement it uses, prepared once.
struct Catalog::Connection {
  explicit Connection(store::Database opened) : database(std::move(opened)) {}

  // Makes the tables where the file is new, checks the version where it is not, prepares.
  Result<Done> set_up();

  Result<std::int64_t> insert(std::int64_t source, const Station& station);
  // Removes a source with its stations; returns how many there were, 0 where there is no such
  // source.
  Result<std::size_t> drop_source(std::string_view name);
  Result<Station> read(std::int64_t row);

  store::Database database;

  store::Statement insert_source, select_source, delete_source, list_sources;
  store::Statement insert_station, insert_programme, insert_note, insert_place, insert_words;
  store::Statement delete_words, delete_places, delete_stations;
  store::Statement select_station, select_programmes, select_notes;
  store::Statement count_stations, count_of_source, by_id, by_call_sign;
  store::Statement in_box, matching;

 private:
  Result<Done> create();
  Result<Done> prepare();
  Result<Done> read_parts(std::int64_t row, Station& station);
};

}  // namespace mastwise
