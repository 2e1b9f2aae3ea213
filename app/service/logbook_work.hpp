#pragma once

#include "app/service/errand.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

struct LogbookFilesSources {
  std::optional<std::string> logbook_path = {};  // nothing: nothing is kept
  // Folders of the user, and sticks and cards, as they are now; the first is the usual one. Called
  // in the worker's thread.
  std::function<std::vector<LogbookFolder>()> folders;
  // The logbook as it is read by the thread that owns it, once another has been taken in. Called in
  // the thread that takes the answer, so that no touch in between is lost from the screen.
  std::function<Result<LogbookRecords>()> read_again;
};

// Gives the logbook out and takes others in, through a connection of its own.
std::unique_ptr<Errand> logbook_files_errand(LogbookFilesSources sources,
                                             std::function<void()> wake);

}  // namespace mastwise
