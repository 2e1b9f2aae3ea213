#pragma once

#include "app/shared/shared.hpp"
#include "core/result.hpp"

#include <string>

namespace mastwise::shell {

// Writes the card of the target and the plan in use as a PDF file into the folder, which it creates
// if missing; returns the file's path. The name has day, time and station. The page is Letter with
// miles, else A4.
Result<std::string> save_card(const Shared& shared, const std::string& folder);

}  // namespace mastwise::shell
