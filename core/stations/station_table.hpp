#pragma once

#include "core/stations/station.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise {

// A row that could not be read, and why.
struct RejectedRow {
  std::size_t line = 0;  // on which the row begins; the first line of the text is 1
  std::string reason = {};
  bool operator==(const RejectedRow&) const = default;
};

// What a reader made of one source's table: ready for Catalog::replace_source.
struct StationTable {
  Source source = {};
  std::vector<Station> stations = {};
  std::size_t rows_read = 0;  // rows below the header, blank and comment lines not counted
  std::vector<RejectedRow> rejected = {};
  std::vector<std::string> remarks = {};  // what a careful person would want to know of the reading
};

}  // namespace mastwise
