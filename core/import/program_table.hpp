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

// A program and the stations that send it: those of the call sign (without notice of case) or of
// the regulator's facility number, on the RF channel where one is told. Either
// is enough; where both are told, the call sign counts.
struct StationProgram {
  std::string call_sign = {};
  std::string facility_id = {};
  std::optional<RfChannel> rf_channel = {};
  Program program = {};
  bool operator==(const StationProgram&) const = default;
};

// What a reader made of a table of programs: ready for Catalog::replace_programs.
struct ProgramTable {
  Source source = {};
  std::vector<StationProgram> programs = {};
  std::size_t rows_read = 0;
  std::vector<RejectedRow> rejected = {};
};

// Reads a small delimited table of programs (delimited as in import_csv.hpp), a row for each
// program. Columns in any order, in whatever case:
//   call_sign, facility_id   one of both in every row
//   rf_channel               may be left out or empty: on whatever channel the station sends
//   virtual_channel          "6.1"                                        must be there
//   name, network, language  texts; may be left out
// Other columns are passed over. Rows that say neither station nor virtual channel are rejected
// with their line. An error when the text has no header with virtual_channel and one of call_sign
// and facility_id.
Result<ProgramTable> read_program_csv(std::string_view text, const Source& source);

// A station's own programs, completed: an added one takes the place of that of the same virtual
// channel, whose texts it does not know stay; others come behind.
std::vector<Program> merged_programs(std::vector<Program> own, const std::vector<Program>& added);

}  // namespace mastwise
