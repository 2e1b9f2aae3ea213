#pragma once

#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

// Logbooks as they lie on the disk: given out, found, taken in.
namespace mastwise::sources {

enum class LogbookForm { table, waypoints, backup };

// Writes the logbook whole into a file; one of that name is replaced.
Result<Done> give_out(Logbook& logbook, const LogbookContent& content, LogbookForm form,
                      const std::string& path);

// Records that were not deleted.
struct LogbookSize {
  std::size_t stops = 0, outcomes = 0, sweeps = 0;
};
LogbookSize size_of(const LogbookContent& content);

// A logbook's file or a table, by what it holds and not by its name.
Result<LogbookTable> read_any_logbook(const std::string& path);

// A file that may be one, by how it begins.
struct LogbookCandidate {
  std::string path = {};
  std::uint64_t bytes = 0;
  bool operator==(const LogbookCandidate&) const = default;
};
// Those of a folder, not of those in it, by name. `own`: the logbook in use, which is none of them.
// Nothing where the folder cannot be read.
std::vector<LogbookCandidate> logbooks_in(const std::string& folder, const std::string& own);

}  // namespace mastwise::sources
