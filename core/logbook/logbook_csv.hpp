#pragma once

#include "core/logbook/record.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// The logbook as one table for people and other software, by RFC 4180: a header line, then a row
// for each outcome with the facts of its stop in the columns "stop_...", oldest stop first. A stop
// without outcomes has one row. Sweeps and deleted records are left out; a backup has them. Times
// are UTC by ISO 8601, directions true.
// Figures are rounded to what they mean: positions to a tenth of a meter, the others to a tenth.
std::string logbook_csv(const LogbookContent& content);

// A table as a reader understood it.
struct LogbookTable {
  LogbookContent content = {};
  std::size_t rows_read = 0;  // rows below the header, blank lines not counted
  std::vector<RejectedRow> rejected = {};
};

// Reads the table of logbook_csv(), with columns in any order and extra columns ignored; the result
// can be merged into a logbook. If rows disagree about a stop or outcome, the later version wins. A
// row that cannot be read goes to `rejected` with its line and the reason. Fails if columns are
// missing, and names them.
Result<LogbookTable> read_logbook_csv(std::string_view text);

}  // namespace mastwise
