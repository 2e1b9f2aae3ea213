#pragma once

#include "core/logbook/logbook.hpp"

#include <string>
#include <vector>

namespace mastwise::words {

// What a merge of two logbooks did, a line for each kind of record.
std::vector<std::string> merged(const MergeReport& report);

}  // namespace mastwise::words
