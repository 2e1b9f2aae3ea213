#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"

#include <optional>
#include <vector>

namespace mastwise {

// Listed stations whose marks would cover one another, shown as one mark.
struct Cluster {
  MapOffset at;                              // of its first station
  std::vector<const StationRow*> rows = {};  // never empty; the first is named

  const StationRow& first() const { return *rows.front(); }
};

// The listed stations near the screen, gathered around the selected one, the target, the pinned
// ones and then the likeliest, in this order. Stations without an outlook have no mark. The rows
// belong to `shared`.
std::vector<Cluster> clusters(const MapView& view, const Shared& shared,
                              const std::optional<StationKey>& selected);

// What a touch on a cluster selects: its first station; if one of it is selected already, the one
// after it in the list, round and round. A single one that is selected is let go.
std::optional<StationKey> next_of(const Cluster& cluster, const std::optional<StationKey>& before);

}  // namespace mastwise
