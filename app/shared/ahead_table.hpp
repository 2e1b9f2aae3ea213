#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"

#include <optional>
#include <string>
#include <vector>

// Possible stops side by side.
namespace mastwise {

// The best station for one of the networks at one place.
struct AheadOffer {
  std::string call_sign = {};
  double chance_percent = 0.0;
  double distance_m = 0.0;
  Bearing<True> bearing = {};
  bool operator==(const AheadOffer&) const = default;
};

struct AheadPlace {
  Position position;
  bool here = false;                                   // the stop itself
  std::vector<std::optional<AheadOffer>> offers = {};  // one for each network
  bool operator==(const AheadPlace&) const = default;
};

// Places sorted by their weakest network, best first.
struct AheadTable {
  std::vector<std::string> networks = {};
  std::vector<AheadPlace> places = {};
  bool operator==(const AheadTable&) const = default;
};

}  // namespace mastwise
