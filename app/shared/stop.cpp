#include "app/shared/stop.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise {

bool same_stop(const Position& a, const Position& b) {
  constexpr double kBox_deg = 0.01;  // of latitude 1.1 km: spares most geodesics
  if (std::fabs(a.latitude_deg() - b.latitude_deg()) > kBox_deg) return false;
  return path_between(a, b).distance_m <= kSameStop_m;
}

void stand_at(Stop& stop, const Position& position, double error_m, std::string name) {
  stop.by_hand = position;
  stop.by_hand_error_m = error_m;
  stop.by_name = std::move(name);
  stop.source = PositionSource::ByHand;
}

bool is_pinned(const Stop& stop, const StationKey& key) {
  return std::find(stop.pinned.begin(), stop.pinned.end(), key) != stop.pinned.end();
}

}  // namespace mastwise
