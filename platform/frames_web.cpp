#include "platform/frames.hpp"

#include <memory>
#include <utility>

#include <emscripten.h>
#include <emscripten/threading.h>

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

bool has_threads() {
  return ::emscripten_has_threading_support() != 0;
}

}  // namespace mastwise::platform
