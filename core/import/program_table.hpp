#pragma once

#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/stations/station_table.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// A program and the stations that send it: those with the regulator's facility number or with the
// call sign (ignoring case), on the RF channel if one is given. Either is enough. Where both the
// program and a station have a number, the number decides: call signs change hands.
struct StationProgram {
  std::string call_sign = {};
  std::string facility_id = {};
  std::optional<RfChannel> rf_channel = {};
  Program program = {};
  bool operator==(const StationProgram&) const = default;
};

// The columns of a table of programs; an empty one is not in the table.
struct ProgramColumns {
  std::string call_sign = {};
  std::string facility_id = {};
  std::string rf_channel = {};
  std::string virtual_channel = {};
  std::string name = {};
  std::string network = {};
  std::string language = {};
  bool operator==(const ProgramColumns&) const = default;
};

// One table of programs as a reader understood it: ready for Catalog::replace_programs.
struct ProgramTable {
  Source source = {};
  std::vector<StationProgram> programs = {};
  std::size_t rows_read = 0;
  std::vector<RejectedRow> rejected = {};
  std::size_t rows_without_program = 0;  // neither virtual channel nor network nor name
};

// The columns whose header words fit; for a person to complete.
ProgramColumns program_columns_named(std::string_view head);

// Guesses the columns of a table of programs from its header, by the words of guess_columns.cpp.
// Empty if none looks like the virtual channel, or like call sign or facility number.
std::optional<ProgramColumns> guess_program_columns(std::string_view head);

// Reads a small delimited table of programs (delimited as in import_csv.hpp), a row for each
// program. Columns in any order, in any case:
//   call_sign, facility_id   one of both in every row
//   rf_channel               optional or empty: any channel of the station
//   virtual_channel          "6.1", or "6"                                must be there
//   name, network, language  texts; optional
// or as `columns` calls them. Other columns are ignored. Rows without a station are rejected with
// their line; rows that name no program are counted. Error if the text has no header with
// virtual_channel and one of call_sign and facility_id.
Result<ProgramTable> read_program_csv(std::string_view text, const Source& source,
                                      const std::optional<ProgramColumns>& columns = {});

// A station's programs, completed: an added program replaces the one with the same virtual channel
// but keeps its texts where the added ones are unknown; other programs are appended. One without a
// virtual channel is appended unless the station has the very same.
std::vector<Program> merged_programs(std::vector<Program> own, const std::vector<Program>& added);

}  // namespace mastwise
