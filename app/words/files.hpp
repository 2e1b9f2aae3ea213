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

// Says that the logbook or the catalog was damaged, what was kept, and where the damaged file is.
std::string logbook_rescued(const std::string& file, std::size_t stops, std::size_t outcomes);
std::string catalog_rescued(const std::string& file, std::size_t stations);
// The damaged file is still in place.
std::string catalog_damaged(const std::string& why);
// The logbook cannot be written; what happens is kept in memory.
std::string logbook_unwritable(const std::string& why);

// "3 records are not saved: the disk is full. Mastwise keeps trying."
std::string unsaved(std::size_t records, const std::string& why);
// Says how many records were refused because too many are waiting.
std::string refused(std::size_t records);

}  // namespace mastwise::words
