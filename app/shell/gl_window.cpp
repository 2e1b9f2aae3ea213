#include "app/shell/gl_window.hpp"

#include "app/service/png.hpp"
#include "platform/video_driver.hpp"

#include <cstring>
#include <vector>

#include <SDL_opengl.h>

namespace mastwise::shell {
namespace {

Error sdl_error(const char* what, const char* remedy) {
  return Error{.what = std::string(what) + ": " + SDL_GetError(), .remedy = remedy};
}

ui::Metrics metrics_on(int display, int width_px, int height_px, std::optional<float> wished) {
  const auto width = static_cast<float>(width_px), height = static_cast<float>(height_px);
  float told = 0.0f;
  // 96 is what systems say when they do not know.
  const bool known = display >= 0 && SDL_GetDisplayDPI(display, &told, nullptr, nullptr) == 0 &&
                     told > 100.0f && told < 600.0f;
  const float usual = ui::usual_dots_per_inch(width, height);
  return ui::metrics(width, height, wished.value_or(known ? told : usual));
}

ui::Metrics expected_metrics(const WindowWish& wish) {
  SDL_DisplayMode whole{};
  if (wish.fullscreen && SDL_GetDesktopDisplayMode(0, &whole) == 0) {
    return metrics_on(0, whole.w, whole.h, wish.dots_per_inch);
  }
  return metrics_on(0, wish.width_px, wish.height_px, wish.dots_per_inch);
}

}  // namespace

Result<std::unique_ptr<GlWindow>> GlWindow::open(const WindowWish& wish, const Expected& expected) {
  const char* const driver = platform::offscreen_video_driver();
  if (wish.offscreen && driver != nullptr) SDL_SetHint(SDL_HINT_VIDEODRIVER, driver);
  // Finger events only: SDL's mouse echo of the first finger would be a second tap.
  SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
  SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1");
  SDL_SetMainReady();  // `main` is ours, not SDL's
  if (SDL_Init(SDL_INIT_VIDEO) != 0) {
    return sdl_error("no screen to draw on", "use mastwise card or mastwise shot");
  }
  expected(expected_metrics(wish));
  const platform::OpenGl opengl = platform::opengl();
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK,
                      opengl.embedded ? SDL_GL_CONTEXT_PROFILE_ES : SDL_GL_CONTEXT_PROFILE_CORE);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, opengl.major);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, opengl.minor);
  SDL_GL_SetAttribute(SDL_GL_DOUBLEBUFFER, 1);
  SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);

  std::unique_ptr<GlWindow> result(new GlWindow);
  result->dots_per_inch_ = wish.dots_per_inch;
  Uint32 flags = SDL_WINDOW_OPENGL | SDL_WINDOW_ALLOW_HIGHDPI | SDL_WINDOW_RESIZABLE;
  if (wish.fullscreen) flags |= SDL_WINDOW_FULLSCREEN_DESKTOP;
  if (wish.offscreen) flags |= SDL_WINDOW_HIDDEN;
  result->window_ = SDL_CreateWindow("Mastwise", SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED,
                                     wish.width_px, wish.height_px, flags);
  if (result->window_ == nullptr) return sdl_error("no window", "check the display");
  result->context_ = SDL_GL_CreateContext(result->window_);
  if (result->context_ == nullptr) {
    return sdl_error("no OpenGL 3.3", "install Mesa's software driver, libgl1-mesa-dri");
  }
  SDL_GL_SetSwapInterval(wish.offscreen ? 0 : 1);
  return result;
}

GlWindow::~GlWindow() {
  if (context_ != nullptr) SDL_GL_DeleteContext(context_);
  if (window_ != nullptr) SDL_DestroyWindow(window_);
  SDL_Quit();
}

ui::Metrics GlWindow::metrics() const {
  int width = 0, height = 0;
  SDL_GL_GetDrawableSize(window_, &width, &height);
  return metrics_on(SDL_GetWindowDisplayIndex(window_), width, height, dots_per_inch_);
}

void GlWindow::present() {
  SDL_GL_SwapWindow(window_);
}

Result<Done> GlWindow::save_png(const std::string& path, ui::Eyes eyes) {
  const ui::Metrics size = metrics();
  const int width = static_cast<int>(size.width_px), height = static_cast<int>(size.height_px);
  const std::size_t row_bytes = static_cast<std::size_t>(width) * 3;
  std::vector<unsigned char> pixels(row_bytes * static_cast<std::size_t>(height));
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, pixels.data());
  std::vector<unsigned char> picture(pixels.size());
  for (std::size_t row = 0; row < static_cast<std::size_t>(height); ++row) {
    const std::size_t mirrored = static_cast<std::size_t>(height) - 1 - row;
    std::memcpy(&picture[row * row_bytes], &pixels[mirrored * row_bytes], row_bytes);
  }
  for (std::size_t i = 0; eyes != ui::Eyes::Usual && i < picture.size(); i += 3) {
    const ui::Color seen = ui::as_seen({picture[i], picture[i + 1], picture[i + 2]}, eyes);
    picture[i] = seen.red;
    picture[i + 1] = seen.green;
    picture[i + 2] = seen.blue;
  }
  return service::write_png(path, width, height, picture);
}

bool GlWindow::driver_polls() const {
  const std::string driver = SDL_GetCurrentVideoDriver();
  return driver == "offscreen" || driver == "dummy" || driver == "KMSDRM";
}

}  // namespace mastwise::shell
