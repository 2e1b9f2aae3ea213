#pragma once

#include "core/geo/position.hpp"
#include "core/zones/local_zone.hpp"
#include "core/zones/zone_map.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

namespace mastwise::service {

// Finds the clocks of a position: its zone from the assets, its rules from the system's tz
// database. Each zone is read once. For one thread.
class Clocks {
 public:
  using Rules = std::function<std::optional<TimeZone>(const std::string& name)>;
  // `places` is empty if the assets have no zones; `tablet` is the zone that the tablet is set to.
  Clocks(std::optional<zones::ZoneMap> places, Rules rules, std::optional<TimeZone> tablet);
  // By the assets and this system. Damaged assets leave the tablet's zone.
  static Clocks of_this_system();

  LocalZone at(const std::optional<Position>& position);

 private:
  std::optional<zones::ZoneMap> places_;
  Rules rules_;
  LocalZone elsewhere_;
  std::map<std::string, LocalZone> known_;
};

// The same as a function that shares one.
std::function<LocalZone(const std::optional<Position>&)> clocks_of_this_system();

}  // namespace mastwise::service
