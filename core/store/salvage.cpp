#include "core/store/salvage.hpp"

namespace mastwise::store {

Result<Database> open_damaged(const std::string& path) {
  auto database = Database::open_existing(path);
  if (!database) return database.error();
  if (!*database) return Error{.what = "the file is missing", .where = path};
  // Source: SQLite's documentation of this pragma; without it one bad page of the schema hides all.
  if (const auto set = (*database)->run("PRAGMA writable_schema = ON"); !set) return set.error();
  return *std::move(*database);
}

void read_from_both_ends(Database& database, const std::string& query, const std::string& backward,
                         const std::function<bool(const Statement&)>& take) {
  for (const std::string& one : {query, backward}) {
    auto statement = database.prepare(one);
    if (!statement) continue;
    while (true) {
      const auto row = statement->step();
      if (!row) break;  // the damage: the other end is next
      if (!*row) return;
      if (!take(*statement)) break;
    }
  }
}

}  // namespace mastwise::store
