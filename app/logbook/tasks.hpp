#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"

// Export of the logbook to the user's folders and sticks, and import from them.
namespace mastwise {

// Starts a task unless one is running. `path`: the file to import.
void ask_logbook_files(LogbookFiles& files, const Shared& shared, LogbookTask task,
                       const std::string& path = {});
void next_logbook_folder(LogbookFiles& files);
// Keeps the practice area's stops, which no logbook has, in memory.
void logbook_files_done(LogbookState& state, const LogbookFilesAnswer& answer);

}  // namespace mastwise
