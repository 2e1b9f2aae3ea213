#pragma once

#include "core/stations/station.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise {

// A row that could not be read, and why.
struct RejectedRow {
  std::size_t line = 0;  // where the row begins, counted from 1
  std::string reason = {};
  bool operator==(const RejectedRow&) const = default;
};

// One source's table as a reader understood it: ready for Catalog::replace_source.
struct StationTable {
  Source source = {};
  std::vector<Station> stations = {};
  std::size_t rows_read = 0;  // rows below the header, blank and comment lines not counted
  std::vector<RejectedRow> rejected = {};
  std::vector<std::string> remarks = {};  // notes on the reading worth showing to the user
};

}  // namespace mastwise
