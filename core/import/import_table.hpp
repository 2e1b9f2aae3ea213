#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"
#include "core/text/byte_stream.hpp"

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

namespace mastwise {

// Reads a delimited table (a header line, then a row for each station) by a mapping. Rows that
// cannot be read go to `rejected` with their line and the reason; the rest is read. Columns outside
// the mapping become notes. A second row of the same station is rejected. Error if no row can be
// read: the text is binary, has no header, or lacks a column of the mapping (the
// message lists the columns).
Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping);

// Why a second row of a station is rejected.
std::string already_listed(std::string_view id, std::size_t line);

// Called from time to time with the bytes read; returns false to stop.
using TableProgress = std::function<bool(std::uint64_t done)>;

// The same for a text of any length, which need not fit the memory; the sink finds a second row of
// the same station. Errors besides those above: those of the stream and the sink, and a stop by
// `progress`.
Result<TableSummary> stream_station_table(ByteStream& text, const TableMapping& mapping,
                                          StationSink& sink, const TableProgress& progress = {});

}  // namespace mastwise
