#include "core/logbook/logbook.hpp"

#include <array>
#include <charconv>

#include <fmt/format.h>

namespace mastwise {
namespace {

// Each brings a file from the version of its index to the next. Never changed once released: a new
// version appends one.
constexpr std::array kMigrations{
    "CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;",
};
constexpr auto kVersion = static_cast<std::int64_t>(kMigrations.size());

constexpr const char* kAntenna = "antenna";
constexpr const char* kRaised = "raised";
constexpr const char* kDown = "down";
constexpr const char* kSettings = "settings";
constexpr const char* kTrustedDate = "trusted date, days since 1970";

std::string quoted(const std::string& text) {
  std::string result = "'";
  for (const char character : text) {
    if (character == '\'') result += '\'';
    result += character;
  }
  return result + "'";
}

}  // namespace

Result<Logbook> Logbook::open(const std::string& path) {
  auto database = store::Database::open(path);
  if (!database) return database.error();
  const auto durable = database->run("PRAGMA journal_mode = TRUNCATE; PRAGMA synchronous = EXTRA;");
  if (!durable) return durable.error();
  Logbook logbook(*std::move(database));
  const auto current = logbook.bring_up_to_date();
  if (!current) return current.error();
  return logbook;
}

Result<Done> Logbook::bring_up_to_date() {
  const auto version = database_.integer("PRAGMA user_version");
  if (!version) return version.error();
  if (*version > kVersion) {
    return Error{.what = "the logbook was written by a newer version of this program",
                 .where = database_.path(),
                 .remedy = "use that version, or move the file away to begin a new logbook"};
  }
  if (*version == kVersion) return Done{};
  if (*version > 0) {
    const std::string backup = fmt::format("{}.version-{}", database_.path(), *version);
    const auto saved = database_.run("VACUUM INTO " + quoted(backup));
    if (!saved) return saved;
  }
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  for (std::int64_t step = *version; step < kVersion; ++step) {
    const auto done = database_.run(kMigrations[static_cast<std::size_t>(step)]);
    if (!done) return done;
  }
  const auto marked = database_.run(fmt::format("PRAGMA user_version = {}", kVersion));
  if (!marked) return marked;
  return transaction->commit();
}

Result<std::optional<std::string>> Logbook::kept(const char* name) {
  auto select = database_.prepare("SELECT value FROM kept WHERE name = ?");
  if (!select) return select.error();
  const auto row = select->bind(std::string_view(name)).step();
  if (!row) return row.error();
  return *row ? std::optional(select->text(0)) : std::nullopt;
}

Result<Done> Logbook::keep(const char* name, const std::string& value) {
  auto insert = database_.prepare("INSERT OR REPLACE INTO kept (name, value) VALUES (?, ?)");
  if (!insert) return insert.error();
  return insert->bind(std::string_view(name), std::string_view(value)).run();
}

Result<safety::Antenna> Logbook::antenna() {
  const auto value = kept(kAntenna);
  if (!value) return value.error();
  // Whatever is not plainly "down" is taken for raised: that mistake is the harmless one.
  const bool down = !*value || **value == kDown;
  return down ? safety::Antenna::Down : safety::Antenna::Raised;
}

Result<Done> Logbook::keep_antenna(safety::Antenna antenna) {
  return keep(kAntenna, antenna == safety::Antenna::Raised ? kRaised : kDown);
}

Result<std::optional<std::string>> Logbook::settings() {
  return kept(kSettings);
}

Result<Done> Logbook::keep_settings(const std::string& settings) {
  return keep(kSettings, settings);
}

Result<std::optional<std::chrono::sys_days>> Logbook::trusted_date() {
  const auto value = kept(kTrustedDate);
  if (!value) return value.error();
  if (!*value) return std::optional<std::chrono::sys_days>();
  int days = 0;
  const std::string& text = **value;
  const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), days);
  if (trouble != std::errc{} || end != text.data() + text.size()) {
    return Error{.what = "the trusted date is damaged: " + text, .where = database_.path()};
  }
  return std::optional(std::chrono::sys_days(std::chrono::days(days)));
}

Result<Done> Logbook::keep_trusted_date(std::chrono::sys_days date) {
  return keep(kTrustedDate, std::to_string(date.time_since_epoch().count()));
}

}  // namespace mastwise
