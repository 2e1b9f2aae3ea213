#pragma once

#include "core/geo/gpx.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

struct PlaceList {
  std::vector<GpxPlace> places = {};      // in the table's order
  std::vector<std::string> remarks = {};  // rows that were left out, at most 20
};

// Reads a table of places with one header line: a column "latitude" and one "longitude" (also
// "lat", "lon", "lng", "latitude_deg", "longitude_deg"), or one column "position" ("coordinates"),
// in any notation of parse_position; and, if there is one, a column "name" ("place", "title").
// Capitals do not count. Errors: no such columns, no row with a position.
Result<PlaceList> read_place_list(std::string_view text);

}  // namespace mastwise
