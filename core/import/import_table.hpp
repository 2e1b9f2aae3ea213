#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <string_view>

namespace mastwise {

// Reads a delimited table (a header line, then a row for each station) by a mapping. Rows that
// cannot be read go to `rejected` with their line and the reason; the rest is read. Columns outside
// the mapping become notes. A second row of the same station is rejected. Error if no row can be
// read: the text is not UTF-8 or ISO 8859-1, has no header, or lacks a column of the mapping (the
// message lists the columns).
Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping);

}  // namespace mastwise
