#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace mastwise {

// The list shows stations with at least this chance, in percent.
inline constexpr std::array kChanceFloors{0.0, 10.0, 40.0, 70.0, 90.0};

// How the stations are listed.
struct StationsState {
  std::size_t chance_floor = 0;  // of kChanceFloors
  bool by_network = false;       // only the best source of each network

  std::vector<std::string> brought = {};          // by network: the network of each listed row
  std::string pinnable = {};                      // the searched network
  std::vector<std::string> wanted = {};           // pinned networks and their stations here
  std::string data_caution = {};                  // on the age of the listed stations
  std::vector<std::string> networks_around = {};  // while the sheet that ticks them is open
  bool operator==(const StationsState&) const = default;
};

}  // namespace mastwise
