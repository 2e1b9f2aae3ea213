#pragma once

#include "app/logbook/state.hpp"
#include "core/logbook/logbook.hpp"

#include <functional>
#include <optional>
#include <string>
#include <utility>

namespace mastwise::shell {

// The logbook while the app runs. After a failed write the file is opened again for the next one:
// the disk may have been put back, the folder made writable, or the damaged file replaced.
class LogbookKeeper {
 public:
  using Change = std::function<Result<Done>(Logbook&)>;

  LogbookKeeper(std::string path, std::optional<Logbook> opened)
      : path_(std::move(path)), logbook_(std::move(opened)) {}

  // `known`: the records in memory, for a logbook that turns out to be damaged.
  Result<Done> write(const Change& change, const Log& known);
  Result<LogbookRecords> records();
  // What the person must know about the last write, once.
  std::string take_notice() { return std::exchange(notice_, {}); }

 private:
  Result<Done> open(const Log& known);

  std::string path_;
  std::optional<Logbook> logbook_;
  std::string notice_;
};

}  // namespace mastwise::shell
