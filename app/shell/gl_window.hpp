#pragma once

#include "app/look/color_vision.hpp"
#include "app/ui/metrics.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include <SDL.h>

namespace mastwise::shell {

struct WindowWish {
  int width_px = 1280, height_px = 800;
  bool offscreen = false;  // no display: drawn into memory
  bool fullscreen = false;
  std::optional<float> dots_per_inch = {};  // instead of the system's value
};

// An SDL window with an OpenGL 3 context. The interface thread only.
class GlWindow {
 public:
  // Calls `expected` with the metrics that the window will probably have, before it loads the
  // driver, which takes the longest. If the system has no screen, it never calls `expected`.
  using Expected = std::function<void(const ui::Metrics&)>;
  static Result<std::unique_ptr<GlWindow>> open(
      const WindowWish& wish, const Expected& expected = [](const auto&) {});
  ~GlWindow();
  GlWindow(const GlWindow&) = delete;
  GlWindow& operator=(const GlWindow&) = delete;

  ui::Metrics metrics() const;
  void present();
  // The picture as drawn since the last present, written as PNG, as these eyes see it.
  Result<Done> save_png(const std::string& path, ui::Eyes eyes = ui::Eyes::Usual);
  // The driver cannot wait for events and would poll: the caller lengthens the wait.
  bool driver_polls() const;

 private:
  GlWindow() = default;

  SDL_Window* window_ = nullptr;
  SDL_GLContext context_ = nullptr;
  std::optional<float> dots_per_inch_;
};

}  // namespace mastwise::shell
