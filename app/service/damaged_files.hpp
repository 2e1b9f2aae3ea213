#pragma once

#include "app/logbook/files.hpp"
#include "app/service/startup.hpp"
#include "core/logbook/logbook.hpp"

#include <optional>
#include <string>

// The user's databases at start. A damaged file is moved aside under a telling name, never deleted,
// and what can be read of it goes on.
namespace mastwise::service {

struct OpenedLogbook {
  std::optional<Logbook> logbook = {};  // empty: it cannot be written now
  Kept kept = {};
  LogbookRecords records = {};
  std::optional<Error> unwritable = {};  // then why
  std::string notice = {};               // for the screen, if anything is wrong
  bool rescued = false;
};
// Fails for a file that is not a logbook of this version or older, or cannot even be read.
Result<OpenedLogbook> open_logbook(const std::string& path, UtcTime now);

// Checks an existing catalog. Returns the screen's notice if it was damaged, else an empty text.
std::string check_catalog(const std::string& path, UtcTime now);

Result<LogbookRecords> read_records(Logbook& logbook);

}  // namespace mastwise::service
