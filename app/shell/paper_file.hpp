#pragma once

#include "app/model/model.hpp"
#include "core/result.hpp"

#include <string>

namespace mastwise::shell {

// Writes the card of the aim and the plan in use as a PDF file into the folder, which is made where
// it is missing; gives the file's path. Its name tells day, time and station. The page is Letter
// where miles are in use, else A4.
Result<std::string> save_card(const Model& model, const std::string& folder);

}  // namespace mastwise::shell
