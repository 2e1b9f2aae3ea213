#pragma once

#include "core/import/joined_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"
#include "core/text/byte_stream.hpp"

#include <cstdint>
#include <functional>
#include <string>

namespace mastwise {

// Called from time to time with the current file, the position in it, and its size (0: unknown);
// returns false to stop.
using JoinProgress =
    std::function<bool(const std::string& file, std::uint64_t done, std::uint64_t all)>;

// Reads a set of tables joined by keys. Each file is streamed once, in the mapping's order; only
// the mapping's columns are kept, and only for rows that belong to a station. Memory: the kept
// cells (at most kMostKept), one record and a chunk of a file.
//
// `rows_read` counts the joined rows, `line` is that of the first table's row. A joined row that
// cannot be a station is rejected with the reason. Of two rows with one identity, such as two
// antennas at one site, the one with more power is kept and the other rejected. Stations without a
// row in a table that is not optional are left out. The remarks count them, as well as records with
// a wrong number of cells and patterns that cannot be used. Errors: a file or a column is missing,
// a file cannot be read, the data exceeds kMostKept, or `progress` stops it.
inline constexpr std::size_t kMostKept = std::size_t{256} << 20;  // bytes
Result<StationTable> read_joined_tables(TableFiles& files, const JoinedMapping& mapping,
                                        const JoinProgress& progress = {});

}  // namespace mastwise
