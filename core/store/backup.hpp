#pragma once

#include "core/result.hpp"
#include "core/store/sqlite.hpp"

#include <string>

namespace mastwise::store {

// Writes a copy of the whole file, as one moment of it, which takes the name `path` only once it is
// whole; a file of that name is replaced. Source: SQLite's VACUUM INTO.
Result<Done> save_copy(Database& database, const std::string& path);

}  // namespace mastwise::store
