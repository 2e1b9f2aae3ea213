#include "core/store/versions.hpp"

#include "core/store/backup.hpp"

#include <fmt/format.h>

namespace mastwise::store {
namespace {

// An existing copy of that name is older than this file: a power cut came between the backup and
// the step it was made for.
Result<Done> back_up(Database& database, std::int64_t version) {
  return save_copy(database, fmt::format("{}.version-{}", database.path(), version));
}

}  // namespace

Result<Done> bring_up_to_date(Database& database, std::span<const char* const> steps,
                              std::string_view name) {
  const auto version = database.integer("PRAGMA user_version");
  if (!version) return version.error();
  const auto newest = static_cast<std::int64_t>(steps.size());
  if (*version < 0 || *version > newest) {
    return Error{
        .what = fmt::format("the {} was written by a newer version of Mastwise", name),
        .where = database.path(),
        .remedy = fmt::format("use that version, or move the file away to begin a new {}", name)};
  }
  if (*version == newest) return Done{};
  if (*version > 0) {
    if (const auto saved = back_up(database, *version); !saved) return saved;
  }
  return upgrade(database, steps);
}

Result<Done> upgrade(Database& database, std::span<const char* const> steps) {
  const auto version = database.integer("PRAGMA user_version");
  if (!version) return version.error();
  auto transaction = Transaction::begin(database);
  if (!transaction) return transaction.error();
  for (const char* step : steps.subspan(static_cast<std::size_t>(*version))) {
    if (const auto done = database.run(step); !done) return done;
  }
  const auto marked = database.run(fmt::format("PRAGMA user_version = {}", steps.size()));
  if (!marked) return marked;
  return transaction->commit();
}

}  // namespace mastwise::store
