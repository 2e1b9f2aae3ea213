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
  std::string paper_folder;                // for the cards on paper
  std::string pattern_table = {};          // the antenna's own pattern, to be kept with the gear
  std::optional<std::string> device = {};  // a serial device, host:port, or a file; else searched
  std::optional<std::string> record = {};  // the session's actions go into this file
};

// The touch program, until its window is closed.
Result<Done> run_window(const WindowOptions& options);

}  // namespace mastwise::shell
