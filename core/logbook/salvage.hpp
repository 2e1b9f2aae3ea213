#pragma once

#include "core/logbook/record.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace mastwise {

// What can still be read of a damaged logbook.
struct SalvagedLogbook {
  static constexpr const char* kAntenna = "antenna";  // its name in `kept`

  std::map<std::string, std::string> kept = {};  // antenna, settings, working state, date
  std::vector<AntennaChange> changes = {};       // the earliest first
  LogbookContent content = {};
  safety::Antenna antenna_if_lost = safety::Antenna::Raised;  // then somebody has to look
  std::size_t unreadable = 0;  // records that were found but make no sense, or lost their stop
};

// Never fails: a file that cannot be read at all gives nothing.
SalvagedLogbook salvage_logbook(const std::string& path);

}  // namespace mastwise
