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
  ui::LoadFonts load_fonts;  // the letters of the first picture are there already
};

// Opens the window, and while its driver loads, starts the rest in another thread; in a browser
// after it. Errors are those of the window first.
Result<Opening> open_and_start(const WindowWish& window, const RuntimeWish& runtime);

}  // namespace mastwise::shell
