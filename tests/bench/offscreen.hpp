#pragma once

#include "app/shell/gl_window.hpp"
#include "app/shell/interface.hpp"
#include "app/shell/painter.hpp"
#include "app/shell/runtime.hpp"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include <SDL_opengl.h>
#include <fmt/format.h>

// Frames of Mastwise, drawn offscreen and timed.
namespace mastwise::bench {

using Clock = std::chrono::steady_clock;

inline constexpr int kFrames = 200;

inline double ms_since(Clock::time_point began) {
  return std::chrono::duration<double, std::milli>(Clock::now() - began).count();
}

inline double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// Mastwise without a screen. `settled`: after all workers are done; the first frame does not wait
// for them.
struct Offscreen {
  std::unique_ptr<shell::Runtime> runtime;
  std::unique_ptr<shell::Interface> interface;
  std::unique_ptr<shell::Painter> painter;
};

inline Offscreen start_program(const ui::Metrics& metrics, const shell::RuntimeWish& wish,
                               const std::vector<Action>& acts, bool settled = true) {
  Offscreen program;
  auto runtime = shell::Runtime::start(wish);
  if (!runtime) {
    fmt::print(stderr, "{}\n", runtime.error().message());
    std::exit(1);
  }
  program.runtime = *std::move(runtime);
  shell::Session& session = program.runtime->session();
  for (const Action& action : acts) session.act(action);
  if (settled) session.finish_errands();
  auto made = shell::Interface::make(session, metrics, ui::fonts_of(service::fonts_folder()));
  if (!made) {
    fmt::print(stderr, "{}\n", made.error().message());
    std::exit(1);
  }
  program.interface = *std::move(made);
  auto painter = shell::Painter::make();
  if (!painter) {
    fmt::print(stderr, "{}\n", painter.error().message());
    std::exit(1);
  }
  program.painter = *std::move(painter);
  return program;
}

inline void finish_frame(shell::GlWindow& window) {
  glFinish();
  window.present();
}

inline void draw_empty(shell::GlWindow& window) {
  glClearColor(0.9f, 0.9f, 0.9f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
  finish_frame(window);
}

// Median milliseconds of a frame, without the first ten.
template <class Frame>
double median_ms(Frame frame) {
  std::vector<double> times;
  for (int i = -10; i < kFrames; ++i) {
    const auto began = Clock::now();
    frame(i);
    if (i >= 0) times.push_back(ms_since(began));
  }
  return median(std::move(times));
}

}  // namespace mastwise::bench
