#pragma once

#include "core/result.hpp"
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

// Takes the stations of a table one by one, in the table's order, so that no table need fit the
// memory.
class StationSink {
 public:
  virtual ~StationSink() = default;
  // An error ends the reading.
  virtual Result<Done> take(Station station) = 0;
  virtual void reject(RejectedRow row) = 0;
};

// What a reader tells of a table besides its stations.
struct TableSummary {
  std::size_t rows_read = 0;
  std::vector<std::string> remarks = {};
};

}  // namespace mastwise
