#include "platform/frames.hpp"
#include "platform/system_web.hpp"

#include <algorithm>
#include <memory>
#include <thread>
#include <utility>

#include <emscripten.h>

namespace mastwise::platform {
namespace {

using Step = std::function<bool(Wait)>;

void take_step(void* kept) {
  if ((*static_cast<Step*>(kept))(Wait::never)) return;
  ::emscripten_cancel_main_loop();
  delete static_cast<Step*>(kept);
}

}  // namespace

void run_steps(Step step) {
  auto kept = std::make_unique<Step>(std::move(step));
  ::emscripten_set_main_loop_arg(take_step, kept.release(), 0, false);
}

bool in_browser() {
  return true;
}

bool has_threads() {
  return web_isolated() != 0;
}

// In a browser each thread costs memory.
unsigned computing_threads() {
  constexpr unsigned kMost = 4;
  return has_threads() ? std::clamp(std::thread::hardware_concurrency(), 1U, kMost) : 1;
}

// Devices belong to the page's own thread.
bool has_device_threads() {
  return false;
}

}  // namespace mastwise::platform
