#pragma once

#include <functional>

namespace mastwise::platform {

// Whether a step may wait for events. In a browser it may not: nothing else would happen meanwhile.
enum class Wait { until_due, never };

// Calls `step` until it returns false. In a browser it returns at once, and the browser calls the
// steps before each of its frames; so `step` owns what it needs. One source file for each kind of
// system.
void run_steps(std::function<bool(Wait)> step);

// Whether threads can be started; else long work is done in turns between the steps.
bool has_threads();

}  // namespace mastwise::platform
