#pragma once

#include "core/result.hpp"
#include "core/store/sqlite.hpp"

#include <string>

namespace mastwise::store {

// Writes a consistent copy of the whole file. The copy gets the name `path` only once it is
// complete and replaces a file of that name. Source: SQLite's VACUUM INTO.
Result<Done> save_copy(Database& database, const std::string& path);

// Gives a complete file its name and replaces a file that has it.
Result<Done> rename_file(const std::string& from, const std::string& to);

}  // namespace mastwise::store
