#pragma once

#include "core/broadcast/station.hpp"
#include "core/broadcast/station_table.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// A programme and the stations that send it: those of the call sign (without notice of case) or of
// the regulator's facility number, on the RF channel where one is told. Either
// is enough; where both are told, the call sign counts.
struct StationProgramme {
  std::string call_sign = {};
  std::string facility_id = {};
  std::optional<RfChannel> rf_channel = {};
  Programme programme = {};
  bool operator==(const StationProgramme&) const = default;
};

// What a reader made of a table of programmes: ready for Catalog::replace_programmes.
struct ProgrammeTable {
  Source source = {};
  std::vector<StationProgramme> programmes = {};
  std::size_t rows_read = 0;
  std::vector<RejectedRow> rejected = {};
};

// Reads a small delimited table of programmes (delimited as in import_csv.hpp), a row for each
// programme. Columns in any order, in whatever case:
//   call_sign, facility_id   one of both in every row
//   rf_channel               may be left out or empty: on whatever channel the station sends
//   virtual_channel          "6.1"                                        must be there
//   name, network, language  texts; may be left out
// Other columns are passed over. Rows that say neither station nor virtual channel are rejected
// with their line. An error when the text has no header with virtual_channel and one of call_sign
// and facility_id.
Result<ProgrammeTable> read_programme_csv(std::string_view text, const Source& source);

// A station's own programmes, completed: an added one takes the place of that of the same virtual
// channel, whose texts it does not know stay; others come behind.
std::vector<Programme> merged_programmes(std::vector<Programme> own,
                                         const std::vector<Programme>& added);

}  // namespace mastwise
