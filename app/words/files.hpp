#pragma once

#include "core/logbook/logbook.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise::words {

// The result of merging two logbooks, a line for each kind of record.
std::vector<std::string> merged(const MergeReport& report);

// "The setting gear could not be read and has its default".
std::string settings_dropped(const std::vector<std::string>& names);
// The last stop could not be read back.
std::string state_dropped(const std::string& why);

// "3 records are not saved: the disk is full. Mastwise keeps trying."
std::string unsaved(std::size_t records, const std::string& why);

}  // namespace mastwise::words
