#include "app/shared/places.hpp"

#include "app/shared/shared.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

// Distances are shown to a tenth of a mile. A new question starts before the name gets too far, so
// that it does not flicker on the road.
constexpr double kSaysStill_m = 50.0, kAskAnew_m = 25.0;

bool within(const Position& a, const Position& b, double most_m) {
  if (a == b) return true;
  constexpr double kBox_deg = 0.001;  // of latitude 110 m: spares most geodesics
  if (std::fabs(a.latitude_deg() - b.latitude_deg()) > kBox_deg) return false;
  return path_between(a, b).distance_m <= most_m;
}

}  // namespace

bool same_places(const PlacesQuestion& asked, const PlacesQuestion& now) {
  const auto near = [](const Position& a, const Position& b) { return within(a, b, kAskAnew_m); };
  if (asked.typed != now.typed || asked.near.has_value() != now.near.has_value()) return false;
  if (asked.near && !near(*asked.near, *now.near)) return false;
  return std::equal(asked.shown.begin(), asked.shown.end(), now.shown.begin(), now.shown.end(),
                    near);
}

const places::NearPlace* near_place_of(const Shared& shared, const Position& position) {
  if (!shared.places) return nullptr;
  for (const PositionSaid& said : shared.places->said) {
    if (said.near && within(said.position, position, kSaysStill_m)) return &*said.near;
  }
  return nullptr;
}

}  // namespace mastwise
