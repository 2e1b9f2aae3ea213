#include "core/stations/networks.hpp"

#include "core/text/words.hpp"

#include <algorithm>

namespace mastwise {

std::vector<std::string> networks_of(const Station& station) {
  std::vector<std::string> networks;
  const auto add = [&](const std::string& network) {
    if (!network.empty() && !has_network(networks, network)) networks.push_back(network);
  };
  add(station.network);
  for (const Program& program : station.programs) add(program.network);
  return networks;
}

bool has_network(const std::vector<std::string>& networks, const std::string& network) {
  return std::any_of(networks.begin(), networks.end(),
                     [&](const std::string& one) { return words::same_word(one, network); });
}

}  // namespace mastwise
