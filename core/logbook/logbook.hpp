#pragma once

#include "core/result.hpp"
#include "core/safety/drive_off.hpp"
#include "core/store/sqlite.hpp"

#include <chrono>
#include <optional>
#include <string>

namespace mastwise {

// What must never be lost, in one SQLite file: every write is on the disk before it returns. A file
// of an older version is backed up beside itself and brought up to date; one of a newer version is
// refused. One thread at a time.
class Logbook {
 public:
  // Opens the logbook, or begins a new one where there is no file.
  static Result<Logbook> open(const std::string& path);

  // Whether the antenna was marked raised; down in a new logbook.
  Result<safety::Antenna> antenna();
  Result<Done> keep_antenna(safety::Antenna antenna);

  // The program's settings, in the program's own words; nothing in a new logbook.
  Result<std::optional<std::string>> settings();
  Result<Done> keep_settings(const std::string& settings);

  // The last trusted date, as a floor for repairing a receiver's dates.
  Result<std::optional<std::chrono::sys_days>> trusted_date();
  Result<Done> keep_trusted_date(std::chrono::sys_days date);

 private:
  explicit Logbook(store::Database database) : database_(std::move(database)) {}
  Result<std::optional<std::string>> kept(const char* name);
  Result<Done> keep(const char* name, const std::string& value);

  store::Database database_;
};

}  // namespace mastwise
