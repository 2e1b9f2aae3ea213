#pragma once

#include "core/angles/bearing.hpp"
#include "core/broadcast/station.hpp"
#include "core/geo/position.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// What the worker is asked for the list of stations.
struct StationsQuestion {
  std::optional<Position> from = {};
  std::string search = {};
  bool practice = false;
  bool operator==(const StationsQuestion&) const = default;
};

// A station as seen from the stop.
struct StationRow {
  Station station;
  // Of the way from the stop; unknown without a position.
  std::optional<Bearing<True>> bearing = {};
  std::optional<double> distance_m = {};
  std::optional<double> horizon_m = {};  // radio horizon over smooth earth; needs a known height
  bool operator==(const StationRow&) const = default;
};

struct StationsAnswer {
  StationsQuestion question;
  std::vector<StationRow> rows = {};  // best first
  std::string trouble = {};           // why there are none, if something failed
  bool operator==(const StationsAnswer&) const = default;
};

}  // namespace mastwise
