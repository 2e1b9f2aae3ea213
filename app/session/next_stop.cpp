#include "app/session/next_stop.hpp"

#include "app/words/places.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>

namespace mastwise {

std::optional<NextStop> next_stop(const Model& model) {
  const std::vector<Position>& places = model.ahead.places;
  // Under way the receiver's fix counts, also where the stop was set by hand.
  const nmea::Fix fix = model.receiver.fix(model.now);
  const auto here = fix.position ? fix.position : model.findings.position;
  if (places.empty() || !here) return std::nullopt;
  auto next = places.begin();
  const auto& began = model.safety.departed;
  if (began) {
    const double gone_m = path_between(*began, *here).distance_m;
    next = std::find_if(places.begin(), places.end(), [&](const Position& place) {
      return path_between(*began, place).distance_m > gone_m;
    });
    if (next == places.end()) next = places.end() - 1;
  }
  NextStop stop{.left_m = path_between(*here, *next).distance_m};
  if (began) stop.whole_m = path_between(*began, *next).distance_m;
  if (const places::NearPlace* near = near_place_of(model, *next)) {
    // A distance from a far town beside the distance to the stop would be misread.
    constexpr double kThere_m = 8'000.0;
    if (near->distance_m < kThere_m) stop.name = words::place(near->place);
  }
  return stop;
}

}  // namespace mastwise
