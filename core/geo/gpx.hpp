#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// A place of a GPX file. Empty texts are unknown.
struct GpxPlace {
  Position position;
  std::string name = {};
  std::string description = {};
  std::optional<double> elevation_m = {};  // above mean sea level
  std::optional<UtcTime> time = {};
  bool operator==(const GpxPlace&) const = default;
};

// A route, or one unbroken part of a track.
struct GpxLine {
  std::string name = {};
  std::vector<GpxPlace> places = {};
  bool operator==(const GpxLine&) const = default;
};

struct GpxPlaces {
  std::vector<GpxPlace> waypoints = {};
  std::vector<GpxLine> routes = {};
  std::vector<GpxLine> tracks = {};       // a segment each, by the name of its track
  std::vector<std::string> remarks = {};  // notes on the reading worth showing to the user
};

// Reads waypoints, routes and tracks. Tolerant: GPX 1.0 and 1.1, elements in any order; extensions
// are ignored. A place without a valid position is skipped with a remark. If the file is cut short,
// the part before the cut is used, with a remark. A line without places is left out. Fails on text
// that is not GPX or declares entities (which could grow without bound). If no XML can be read at
// all, the error names the line. Source: GPX 1.1, schema of the name space
// http://www.topografix.com/GPX/1/1.
Result<GpxPlaces> read_gpx(std::string_view text);

}  // namespace mastwise
