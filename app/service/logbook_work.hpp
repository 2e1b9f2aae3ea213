#pragma once

#include "app/logbook/files.hpp"
#include "app/service/worker.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

using FilesWorker = Worker<LogbookFilesQuestion, LogbookFilesAnswer>;

struct LogbookFilesSources {
  std::optional<std::string> logbook_path = {};  // empty: no logbook
  // The user's folders, sticks and cards now, the default first. Called in the worker's thread.
  std::function<std::vector<LogbookFolder>()> folders;
};

// Exports the logbook and imports others over a separate connection.
FilesWorker::Answerer logbook_files_answerer(LogbookFilesSources sources);

}  // namespace mastwise
