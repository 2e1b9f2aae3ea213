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
  std::optional<std::string> logbook_path = {};  // empty: no logbook
  // The user's folders, sticks and cards now, the default first. Called in the worker's thread.
  std::function<std::vector<LogbookFolder>()> folders;
  // Reads the logbook in its thread after an import. Called in the thread that receives the answer,
  // so that no touch in between is lost from the screen.
  std::function<Result<LogbookRecords>()> read_again;
};

// Exports the logbook and imports others over a separate connection.
std::unique_ptr<Errand> logbook_files_errand(LogbookFilesSources sources,
                                             std::function<void()> wake);

}  // namespace mastwise
