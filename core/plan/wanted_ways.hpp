#pragma once

#include "core/angles/bearing.hpp"
#include "core/stations/station.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

// Which stations decide how to park.
namespace mastwise {

// A station as one gear receives it at the stop.
struct SeenStation {
  std::optional<double> chance_percent = {};  // std::nullopt if unknown
  Bearing<True> bearing;
};

// What the traveler asked for by name.
struct WantedByName {
  std::vector<std::size_t> stations = {};  // indexes
  std::vector<std::string> networks = {};  // ignoring case
};

// Stations within this angle count as one direction [our choice, no source: less than any sector's
// half-width].
inline constexpr double kOneDirection_deg = 5.0;

// The stations whose way to the rig must stay clear, by index and sorted: every wanted station, and
// one station for each wanted network that none of them carries. If nothing is wanted, one station
// for each network that is at least likely, and each at least likely station whose networks are
// unknown. A network's station has the same word for its chance as its best one (chance.hpp); among
// those, the stations lie in the fewest directions, and of directions that serve the same networks
// in the one with the better chances. `seen` has one entry for each station.
std::vector<std::size_t> stations_to_keep_clear(std::span<const Station> stations,
                                                std::span<const SeenStation> seen,
                                                const WantedByName& wanted);

}  // namespace mastwise
