#include "core/store/versions.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>

#include <fmt/format.h>

namespace mastwise::store {
namespace {

std::string quoted(const std::string& text) {
  std::string result = "'";
  for (const char character : text) {
    if (character == '\'') result += '\'';
    result += character;
  }
  return result + "'";
}

// A backup takes its name only once it is whole. One of the same name is older than this file: a
// power cut came between its writing and the step that it was made for.
Result<Done> back_up(Database& database, std::int64_t version) {
  const std::string backup = fmt::format("{}.version-{}", database.path(), version);
  const std::string begun = backup + ".new";
  std::remove(begun.c_str());
  if (const auto saved = database.run("VACUUM INTO " + quoted(begun)); !saved) return saved;
  std::remove(backup.c_str());
  if (std::rename(begun.c_str(), backup.c_str()) == 0) return Done{};
  return Error{.what = std::string("cannot keep the backup: ") + std::strerror(errno),
               .where = backup,
               .remedy = "check that the folder may be written to"};
}

}  // namespace

Result<Done> bring_up_to_date(Database& database, std::span<const char* const> steps,
                              std::string_view name) {
  const auto version = database.integer("PRAGMA user_version");
  if (!version) return version.error();
  const auto newest = static_cast<std::int64_t>(steps.size());
  if (*version < 0 || *version > newest) {
    return Error{
        .what = fmt::format("the {} was written by a newer version of this program", name),
        .where = database.path(),
        .remedy = fmt::format("use that version, or move the file away to begin a new {}", name)};
  }
  if (*version == newest) return Done{};
  if (*version > 0) {
    if (const auto saved = back_up(database, *version); !saved) return saved;
  }
  auto transaction = Transaction::begin(database);
  if (!transaction) return transaction.error();
  for (const char* step : steps.subspan(static_cast<std::size_t>(*version))) {
    if (const auto done = database.run(step); !done) return done;
  }
  const auto marked = database.run(fmt::format("PRAGMA user_version = {}", newest));
  if (!marked) return marked;
  return transaction->commit();
}

}  // namespace mastwise::store
