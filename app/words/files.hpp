#pragma once

#include "core/logbook/logbook.hpp"

#include <string>
#include <vector>

namespace mastwise::words {

// The result of merging two logbooks, a line for each kind of record.
std::vector<std::string> merged(const MergeReport& report);

}  // namespace mastwise::words
