#pragma once

#include "app/shell/gl_window.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>

namespace mastwise::shell {

struct WindowOptions {
  WindowWish window = {};
  std::string catalog_path;
  std::string terrain_folder;
  std::string logbook_path;
  std::string paper_folder;                // for paper cards
  std::string pattern_table = {};          // a custom antenna pattern, saved with the gear
  std::optional<std::string> device = {};  // a serial device, host:port, or a file; empty: search
  std::optional<std::string> meter = {};   // a signal meter, kept in the settings; "none" ends it
  std::optional<std::string> record = {};  // record the session's actions in this file
};

// Runs the touch app until its window closes.
Result<Done> run_window(const WindowOptions& options);

}  // namespace mastwise::shell
