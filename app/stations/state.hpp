#pragma once

#include "app/shared/names.hpp"
#include "app/shared/survey.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// Which stations are listed.
enum class ListOf {
  All,
  Likely,    // at the usual floor of the turn plan or above
  Networks,  // only the best source of each network
  Pinned,
};
template <>
inline constexpr std::array kStoredNames<ListOf> = names({"all", "likely", "networks", "pinned"});
inline constexpr std::size_t kListCount = 4;

// Listed stations that one heading brings in.
struct ListGroup {
  std::optional<std::size_t> turn = {};  // of the answer's turns; empty: each by its own heading
  std::vector<std::size_t> listed = {};  // of Findings::listed, in order
  std::size_t networks = 0;              // that the heading brings
  bool operator==(const ListGroup&) const = default;
};

// How the stations are listed.
struct StationsState {
  ListOf list_of = ListOf::All;

  std::array<std::size_t, kListCount> counts = {};  // of stations or networks, by ListOf
  std::vector<ListGroup> groups = {};

  std::vector<std::string> brought = {};          // by network: the network of each listed row
  std::string pinnable = {};                      // the searched network
  std::vector<std::string> wanted = {};           // pinned networks and their stations here
  std::string data_caution = {};                  // on the age of the listed stations
  std::vector<LostPin> lost_pins = {};            // that are still pinned
  std::vector<std::string> networks_around = {};  // while the sheet that ticks them is open
  bool operator==(const StationsState&) const = default;
};

}  // namespace mastwise
