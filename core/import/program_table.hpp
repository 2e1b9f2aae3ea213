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

// A program and the stations that send it: those with the call sign (ignoring case) or with the
// regulator's facility number, on the RF channel if one is given. Either is enough; if both are
// given, the call sign counts.
struct StationProgram {
  std::string call_sign = {};
  std::string facility_id = {};
  std::optional<RfChannel> rf_channel = {};
  Program program = {};
  bool operator==(const StationProgram&) const = default;
};

// One table of programs as a reader understood it: ready for Catalog::replace_programs.
struct ProgramTable {
  Source source = {};
  std::vector<StationProgram> programs = {};
  std::size_t rows_read = 0;
  std::vector<RejectedRow> rejected = {};
};

// Reads a small delimited table of programs (delimited as in import_csv.hpp), a row for each
// program. Columns in any order, in any case:
//   call_sign, facility_id   one of both in every row
//   rf_channel               optional or empty: any channel of the station
//   virtual_channel          "6.1"                                        must be there
//   name, network, language  texts; optional
// Other columns are ignored. Rows without a station or a virtual channel are rejected with their
// line. Error if the text has no header with virtual_channel and one of call_sign and facility_id.
Result<ProgramTable> read_program_csv(std::string_view text, const Source& source);

// A station's programs, completed: an added program replaces the one with the same virtual channel
// but keeps its texts where the added ones are unknown; other programs are appended.
std::vector<Program> merged_programs(std::vector<Program> own, const std::vector<Program>& added);

}  // namespace mastwise
