#include "core/logbook/logbook.hpp"

#include "core/logbook/logbook_file.hpp"

#include <charconv>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr const char* kSettings = "settings";
constexpr const char* kWorkingState = "working state";
constexpr const char* kTrustedDate = "trusted date, days since 1970";

}  // namespace

Result<Logbook> Logbook::open(const std::string& path) {
  if (path != store::kInMemory) {
    const auto existing = store::Database::open_existing(path);
    if (!existing) return existing.error();
    if (!*existing) {
      if (const auto made = logbook_file::create(path); !made) return made.error();
    }
  }
  auto database = store::Database::open(path);
  if (!database) return database.error();
  const auto durable = database->run("PRAGMA journal_mode = TRUNCATE; PRAGMA synchronous = EXTRA;");
  if (!durable) return durable.error();
  if (const auto whole = logbook_file::check(*database); !whole) return whole.error();
  const auto current = logbook_file::bring_up_to_date(*database);
  if (!current) return current.error();
  return Logbook(*std::move(database));
}

Result<Done> Logbook::check_writable() {
  if (!database_.is_read_only()) return Done{};
  return Error{.what = "the logbook is read-only",
               .where = database_.path(),
               .remedy = "check that you may write to the file and its folder"};
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

Result<std::optional<std::string>> Logbook::settings() {
  return kept(kSettings);
}

Result<Done> Logbook::keep_settings(const std::string& settings) {
  return keep(kSettings, settings);
}

Result<std::optional<std::string>> Logbook::working_state() {
  return kept(kWorkingState);
}

Result<Done> Logbook::keep_working_state(const std::string& state) {
  return keep(kWorkingState, state);
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
