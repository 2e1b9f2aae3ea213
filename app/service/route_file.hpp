#pragma once

#include "app/data/state.hpp"
#include "core/geo/gpx.hpp"
#include "core/result.hpp"

#include <string>
#include <vector>

namespace mastwise {

// More stops than these would hide each other under Ahead; of a longer list the first ones count.
inline constexpr std::size_t kMostStops = 24;

// The stops of a route or track: each of its places if they are at most kMostStops, else its named
// ones, else six evenly along it. What lies between is the way from stop to stop, thinned to about
// 240 points.
RouteChoice choice_of(const GpxLine& line, RouteChoice::Kind kind);

// All points of a GPX file's first route, else of its first track, else its waypoints.
Result<std::vector<Position>> way_in_file(const std::string& path);

// The routes, tracks and places in a GPX file or a table of places (core/geo/place_list.hpp), 32 MB
// at most. Errors: the reader's, or nothing is in the file.
Result<RouteLook> look_into_routes(const std::string& path);

}  // namespace mastwise
