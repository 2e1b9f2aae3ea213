#include "core/zones/zone_map.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string_view>
#include <utility>
#include <vector>

namespace mastwise::zones {
namespace {

constexpr double kCellsPerDegree = 60.0;
constexpr std::size_t kRows = 10'800, kColumns = 21'600;
constexpr std::string_view kMagic = "MWZONES1";
constexpr std::size_t kHeaderBytes = 20, kStartBytes = 4, kRunBytes = 4;

Error damaged_zones(std::string what) {
  return {.what = "the time zones are damaged: " + std::move(what),
          .remedy = "install Mastwise again"};
}

std::uint32_t little_endian(std::string_view bytes, std::size_t at, std::size_t size) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < size; ++i) {
    value |= std::uint32_t{static_cast<std::uint8_t>(bytes[at + i])} << 8 * i;
  }
  return value;
}

// The cell of an angle, whose full range may be reached.
std::size_t cell_of(double from_edge_deg, std::size_t cells) {
  const double cell = std::floor(from_edge_deg * kCellsPerDegree);
  return std::min(static_cast<std::size_t>(std::max(cell, 0.0)), cells - 1);
}

}  // namespace

struct ZoneMap::Data {
  struct Run {
    std::uint16_t end, zone;
  };
  std::string file;                // its runs are decoded where they are needed
  std::vector<std::string> names;  // the first is of no zone
  std::vector<std::uint32_t> starts;
  std::size_t runs_at = 0, runs = 0;

  Run run(std::size_t number) const {
    const std::size_t at = runs_at + kRunBytes * number;
    return {static_cast<std::uint16_t>(little_endian(file, at, 2)),
            static_cast<std::uint16_t>(little_endian(file, at + 2, 2))};
  }

  // Whether the row's runs reach its last column, rising, with known zones.
  bool row_is_whole(std::size_t row) const {
    std::uint16_t reached = 0;
    for (std::size_t number = starts[row]; number < runs; ++number) {
      const Run next = run(number);
      if (next.end <= reached || next.zone >= names.size()) return false;
      reached = next.end;
      if (reached >= kColumns) return reached == kColumns;
    }
    return false;
  }
};

Result<ZoneMap> ZoneMap::load(std::string file) {
  auto data = std::make_shared<Data>();
  data->file = std::move(file);
  const std::string_view bytes = data->file;
  if (bytes.size() < kHeaderBytes || !bytes.starts_with(kMagic)) {
    return damaged_zones("another type of file");
  }
  const std::size_t name_bytes = little_endian(bytes, 8, 4), rows = little_endian(bytes, 12, 4);
  const std::size_t runs = little_endian(bytes, 16, 4);
  if (rows != kRows) return damaged_zones("another number of rows");
  if (bytes.size() != kHeaderBytes + name_bytes + kStartBytes * rows + kRunBytes * runs) {
    return damaged_zones("another length than it says");
  }
  data->names.emplace_back();
  std::string_view names = bytes.substr(kHeaderBytes, name_bytes);
  while (!names.empty()) {
    const std::size_t end = names.find('\n');
    if (end == std::string_view::npos || end == 0) return damaged_zones("a name without its end");
    data->names.emplace_back(names.substr(0, end));
    names.remove_prefix(end + 1);
  }
  std::size_t at = kHeaderBytes + name_bytes;
  for (std::size_t row = 0; row < rows; ++row, at += kStartBytes) {
    data->starts.push_back(little_endian(bytes, at, 4));
  }
  data->runs_at = at;
  data->runs = runs;
  for (std::size_t row = 0; row < rows; ++row) {
    // Rows that are alike share their runs.
    if (row > 0 && data->starts[row] == data->starts[row - 1]) continue;
    if (!data->row_is_whole(row)) return damaged_zones("a row that is not whole");
  }
  return ZoneMap(std::move(data));
}

std::string ZoneMap::zone_at(Position position) const {
  const std::size_t row = cell_of(position.latitude_deg() + 90.0, kRows);
  const std::size_t column = cell_of(position.longitude_deg() + 180.0, kColumns);
  // A row has 28 runs on average.
  std::size_t run = data_->starts[row];
  while (data_->run(run).end <= column) ++run;
  return data_->names[data_->run(run).zone];
}

}  // namespace mastwise::zones
