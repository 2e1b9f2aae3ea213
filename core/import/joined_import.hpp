#pragma once

#include "core/import/joined_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"
#include "core/text/byte_stream.hpp"

#include <cstdint>
#include <functional>
#include <string>

namespace mastwise {

// Called now and then with the file that is read, how far, and its size (0: not known); returns
// false to stop.
using JoinProgress =
    std::function<bool(const std::string& file, std::uint64_t done, std::uint64_t all)>;

// Reads a set of tables joined by keys. Each file is streamed once, in the mapping's order; of each
// only the columns that the mapping names are kept, and only for rows that belong to a station so
// far. Memory: what is kept (at most kMostKept), one record and a chunk of a file.
//
// `rows_read` counts the joined rows, `line` is that of the first table's row. A joined row that
// cannot be a station is rejected with the reason; of two with one identity, as of two antennas at
// one site, the one of more power is kept and the other rejected. Stations without a row in a table
// that is not optional are left out and counted in the remarks, as are records that do not have as
// many cells as the header and patterns that cannot be used. An error when a file or a column is
// missing, a file cannot be read, more would be kept than kMostKept, or `progress` stops it.
inline constexpr std::size_t kMostKept = std::size_t{256} << 20;  // bytes
Result<StationTable> read_joined_tables(TableFiles& files, const JoinedMapping& mapping,
                                        const JoinProgress& progress = {});

}  // namespace mastwise
