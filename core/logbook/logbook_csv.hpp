#pragma once

#include "core/logbook/record.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// The logbook as one table for people and other programs, by RFC 4180: a header line, then a row
// for each outcome with the facts of its stop in the columns "stop_...", the oldest stop first. A
// stop where nothing was tried has a row without an outcome. Sweeps and what was deleted are left
// out: a backup has them. Times are UTC by ISO 8601, directions true.
std::string logbook_csv(const LogbookContent& content);

// What a reader made of a table.
struct LogbookTable {
  LogbookContent content = {};
  std::size_t rows_read = 0;  // rows below the header, blank lines not counted
  std::vector<RejectedRow> rejected = {};
};

// Reads the table of logbook_csv(), its columns in any order and others passed over; what it gives
// can be merged into a logbook. Where rows tell the same stop or outcome differently, the later
// writing holds. A row that cannot be read is kept in `rejected` with its line and the reason.
// Fails where a column is missing, and names those.
Result<LogbookTable> read_logbook_csv(std::string_view text);

}  // namespace mastwise
