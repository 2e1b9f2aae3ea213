#pragma once

#include "core/import/joined_import.hpp"
#include "core/import/joined_mapping.hpp"
#include "core/result.hpp"
#include "core/text/byte_stream.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

// One pass over a file of a set of tables.
namespace mastwise::joined {

// A record that passed the file's filters: the wanted cells, in the order of the wanted columns.
struct Row {
  std::size_t line = 0;
  std::vector<std::string_view> cells = {};
};

// A column to read; the file may lack an optional one, whose cells are then empty.
struct Wanted {
  std::string column = {};
  bool optional = false;
};

struct ScanCounts {
  std::size_t records = 0;    // below the header
  std::size_t passed = 0;     // that passed the filters
  std::size_t malformed = 0;  // with another number of cells than the header, or too long
  std::vector<std::string> missing = {};  // optional columns
};

// Calls `each` with every record that passes the filters. An error from `each` ends the pass.
// Errors: see read_joined_tables.
Result<ScanCounts> scan(TableFiles& files, const TableFile& file, const RecordFormat& format,
                        const std::vector<Wanted>& wanted, const JoinProgress& progress,
                        const std::function<Result<Done>(const Row&)>& each);

}  // namespace mastwise::joined
