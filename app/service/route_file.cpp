#include "app/service/route_file.hpp"

#include "app/service/browsing.hpp"
#include "app/service/station_source.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/place_list.hpp"
#include "platform/files.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace mastwise {
namespace {

constexpr std::size_t kEvenStops = 6, kViaPoints = 240;

// Kilometers along the line to each of its places.
std::vector<double> along_km(const std::vector<GpxPlace>& places) {
  std::vector<double> along(places.size(), 0.0);
  for (std::size_t i = 1; i < places.size(); ++i) {
    const double leg_m = path_between(places[i - 1].position, places[i].position).distance_m;
    along[i] = along[i - 1] + leg_m / 1000.0;
  }
  return along;
}

// The indices of the places where one may stop, in order; the last place is one.
std::vector<std::size_t> stops_of(const std::vector<GpxPlace>& places,
                                  const std::vector<double>& along) {
  std::vector<std::size_t> stops;
  const auto few = [&] { return stops.size() >= 2 && stops.size() <= kMostStops; };
  if (places.size() <= kMostStops) {
    for (std::size_t i = 0; i < places.size(); ++i) stops.push_back(i);
    return stops;
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i].name.empty()) stops.push_back(i);
  }
  if (few()) return stops;
  stops.clear();
  for (std::size_t k = 1; k <= kEvenStops; ++k) {
    const double at_km = along.back() * static_cast<double>(k) / kEvenStops;
    const auto found = std::lower_bound(along.begin(), along.end(), at_km);
    const auto index = std::min(static_cast<std::size_t>(found - along.begin()), along.size() - 1);
    if (stops.empty() || stops.back() != index) stops.push_back(index);
  }
  return stops;
}

RouteChoice places_choice(const std::vector<GpxPlace>& places, std::string name,
                          std::vector<std::string>& remarks) {
  RouteChoice choice{
      .kind = RouteChoice::Kind::Places, .name = std::move(name), .points = places.size()};
  for (std::size_t i = 0; i < std::min(places.size(), kMostStops); ++i) {
    choice.stops.push_back({.position = places[i].position, .name = places[i].name});
  }
  if (places.size() > kMostStops) {
    remarks.push_back(words::fill(words::say("Only the first {number} places are used."),
                                  {{"number", std::to_string(kMostStops)}}));
  }
  return choice;
}

}  // namespace

RouteChoice choice_of(const GpxLine& line, RouteChoice::Kind kind) {
  RouteChoice choice{.kind = kind, .name = line.name, .points = line.places.size()};
  if (line.places.empty()) return choice;
  const auto along = along_km(line.places);
  choice.length_km = along.back();
  const double apart_km = choice.length_km / kViaPoints;
  std::size_t at = 0;
  for (const std::size_t stop : stops_of(line.places, along)) {
    AheadStop next{.position = line.places[stop].position, .name = line.places[stop].name};
    // A track's way to its first stop counts too: the rig is near its beginning.
    double last_km = choice.stops.empty() ? -apart_km : along[at];
    for (std::size_t i = choice.stops.empty() ? 0 : at + 1; i < stop; ++i) {
      if (along[i] - last_km < apart_km) continue;
      next.via.push_back(line.places[i].position);
      last_km = along[i];
    }
    choice.stops.push_back(std::move(next));
    at = stop;
  }
  return choice;
}

Result<std::vector<Position>> way_in_file(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  const auto read = read_gpx(*text);
  if (!read) return read.error();
  const std::vector<GpxPlace>& places = !read->routes.empty()   ? read->routes.front().places
                                        : !read->tracks.empty() ? read->tracks.front().places
                                                                : read->waypoints;
  std::vector<Position> points;
  for (const GpxPlace& place : places) points.push_back(place.position);
  if (points.empty()) {
    return Error{.what = "the file has no routes, tracks or places",
                 .where = path,
                 .remedy = "choose another file"};
  }
  return points;
}

Result<RouteLook> look_into_routes(const std::string& path) {
  const auto text = sources::read_whole(path);
  if (!text) return text.error();
  const std::string name = std::filesystem::path(path).stem().string();
  RouteLook look;
  if (!sources::is_route(path)) {
    auto list = read_place_list(*text);
    if (!list) return list.error();
    look.remarks = std::move(list->remarks);
    look.choices.push_back(places_choice(list->places, name, look.remarks));
    return look;
  }
  auto gpx = read_gpx(*text);
  if (!gpx) return gpx.error();
  look.remarks = std::move(gpx->remarks);
  for (const GpxLine& line : gpx->routes) {
    look.choices.push_back(choice_of(line, RouteChoice::Kind::Route));
  }
  for (const GpxLine& line : gpx->tracks) {
    look.choices.push_back(choice_of(line, RouteChoice::Kind::Track));
  }
  if (!gpx->waypoints.empty()) {
    look.choices.push_back(places_choice(gpx->waypoints, name, look.remarks));
  }
  if (look.choices.empty()) {
    return Error{.what = "the file has no routes, tracks or places",
                 .where = path,
                 .remedy = "choose another file"};
  }
  return look;
}

}  // namespace mastwise
