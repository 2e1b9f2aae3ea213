#include "core/geo/place_list.hpp"

#include "core/geo/notation.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

std::optional<std::size_t> column_called(const std::vector<std::string>& header,
                                         std::initializer_list<const char*> names) {
  for (const char* const name : names) {
    for (std::size_t i = 0; i < header.size(); ++i) {
      if (words::same_word(words::trimmed(header[i]), name)) return i;
    }
  }
  return std::nullopt;
}

struct PlaceColumns {
  std::optional<std::size_t> latitude, longitude, position, name;
};

std::string cell_of(const DelimitedRow& row, std::optional<std::size_t> column) {
  if (!column || *column >= row.cells.size()) return {};
  return std::string(words::trimmed(row.cells[*column]));
}

Result<Position> position_in(const DelimitedRow& row, const PlaceColumns& columns) {
  if (!row.fault.empty()) return Error{.what = row.fault};
  if (columns.position) return parse_position(cell_of(row, columns.position));
  return parse_position(cell_of(row, columns.latitude) + ", " + cell_of(row, columns.longitude));
}

}  // namespace

Result<PlaceList> read_place_list(std::string_view text) {
  const std::string whole = to_utf8(std::string(text));
  DelimitedReader reader(whole, '\0');
  const auto header = reader.next();
  PlaceColumns columns;
  if (header && header->fault.empty()) {
    columns = {
        .latitude = column_called(header->cells, {"latitude", "lat", "latitude_deg"}),
        .longitude = column_called(header->cells, {"longitude", "lon", "lng", "longitude_deg"}),
        .position = column_called(header->cells, {"position", "coordinates"}),
        .name = column_called(header->cells, {"name", "place", "title"})};
  }
  if (!columns.position && !(columns.latitude && columns.longitude)) {
    return Error{.what = "the table has no columns \"latitude\" and \"longitude\"",
                 .where = "line 1",
                 .remedy = "write name,latitude,longitude into its first line"};
  }
  PlaceList list;
  constexpr std::size_t kMostRemarks = 20;
  while (const auto row = reader.next()) {
    const auto position = position_in(*row, columns);
    if (position) {
      list.places.push_back({.position = *position, .name = cell_of(*row, columns.name)});
    } else if (list.remarks.size() < kMostRemarks) {
      list.remarks.push_back(fmt::format("line {}: {}", row->line, position.error().what));
    }
  }
  if (list.places.empty()) {
    return Error{.what = list.remarks.empty() ? "the table has no rows"
                                              : "no row has a position; " + list.remarks.front(),
                 .remedy = "write each place as name,latitude,longitude"};
  }
  return list;
}

}  // namespace mastwise
