#pragma once

#include "app/shell/gl_window.hpp"
#include "app/shell/runtime.hpp"
#include "app/ui/fonts.hpp"
#include "core/result.hpp"

#include <memory>

namespace mastwise::shell {

// A window and what it shows. The window outlives the rest.
struct Opening {
  std::unique_ptr<GlWindow> window;
  std::unique_ptr<Runtime> runtime;
  ui::LoadFonts load_fonts;  // has the first picture's letters ready
};

// Opens the window. While its driver loads, another thread starts the rest; in a browser the rest
// starts afterward. If both fail, the error is the window's.
Result<Opening> open_and_start(const WindowWish& window, const RuntimeWish& runtime);

}  // namespace mastwise::shell
