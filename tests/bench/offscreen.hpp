#pragma once

#include "app/shell/interface.hpp"
#include "app/shell/opening.hpp"
#include "app/shell/painter.hpp"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <memory>
#include <utility>
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

// The value, or the reason for not having it.
template <class Value>
Value need(Result<Value> result) {
  if (result) return *std::move(result);
  fmt::print(stderr, "{}\n", result.error().message());
  std::exit(1);
}

// Mastwise without a screen.
struct Offscreen {
  std::unique_ptr<shell::Runtime> runtime;
  std::unique_ptr<shell::Interface> interface;
  std::unique_ptr<shell::Painter> painter;
};

inline Offscreen begin_interface(std::unique_ptr<shell::Runtime> runtime,
                                 const ui::Metrics& metrics, ui::LoadFonts load_fonts) {
  auto interface = need(shell::Interface::make(runtime->session(), metrics, std::move(load_fonts)));
  return {std::move(runtime), std::move(interface), need(shell::Painter::make())};
}

// After all workers are done.
inline Offscreen start_program(const ui::Metrics& metrics, const shell::RuntimeWish& wish,
                               const std::vector<Action>& acts) {
  auto runtime = need(shell::Runtime::start(wish));
  for (const Action& action : acts) runtime->session().act(action);
  runtime->session().finish_errands();
  return begin_interface(std::move(runtime), metrics, ui::fonts_of(service::fonts_folder()));
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
