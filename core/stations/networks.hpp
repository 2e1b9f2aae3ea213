#pragma once

#include "core/stations/station.hpp"

#include <string>
#include <vector>

namespace mastwise {

// The networks that a station or its programs carry, each once, ignoring case; empty if the tables
// name none.
std::vector<std::string> networks_of(const Station& station);

// Whether a list of networks has this one, in any case.
bool has_network(const std::vector<std::string>& networks, const std::string& network);

}  // namespace mastwise
