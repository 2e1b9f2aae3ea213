#pragma once

#include "core/store/sqlite.hpp"

#include <functional>
#include <string>

// Reading of a damaged database.
namespace mastwise::store {

// Opens a damaged file as far as SQLite can: also with a schema that is read only in part, and with
// pages missing at the end.
Result<Database> open_damaged(const std::string& path);

// Reads rows from both ends of an index up to the first damage on the way, so that one damaged page
// costs only its rows. `query`: a SELECT with its ORDER BY; `backward`: the same in descending
// order. `take` gets each row, some of them twice, and returns whether to read on.
void read_from_both_ends(Database& database, const std::string& query, const std::string& backward,
                         const std::function<bool(const Statement&)>& take);

}  // namespace mastwise::store
