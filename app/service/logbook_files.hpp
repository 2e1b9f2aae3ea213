#pragma once

#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

// Logbook files on disk: export, search and import.
namespace mastwise::sources {

enum class LogbookForm { table, waypoints, backup };

// Writes the whole logbook to a file and replaces an existing one.
Result<Done> give_out(Logbook& logbook, const LogbookContent& content, LogbookForm form,
                      const std::string& path);

// Records without the deleted ones.
struct LogbookSize {
  std::size_t stops = 0, outcomes = 0, sweeps = 0;
};
LogbookSize size_of(const LogbookContent& content);

// Whether a file is a logbook or a table, by its content and not by its name.
Result<LogbookTable> read_any_logbook(const std::string& path);

// A file that may be a logbook, by its first bytes.
struct LogbookCandidate {
  std::string path = {};
  std::uint64_t bytes = 0;
  bool operator==(const LogbookCandidate&) const = default;
};
// The logbook files of a folder by name, without subfolders and without `own`, the logbook in use.
// Empty if the folder is unreadable.
std::vector<LogbookCandidate> logbooks_in(const std::string& folder, const std::string& own);

}  // namespace mastwise::sources
