#pragma once

#include <functional>

namespace mastwise::platform {

// Whether a step may wait for events. In a browser it may not: nothing else would happen meanwhile.
enum class Wait { until_due, never };

// Calls `step` until it returns false. In a browser it returns at once, and the browser calls the
// steps before each of its frames; so `step` owns what it needs. One source file for each kind of
// system.
void run_steps(std::function<bool(Wait)> step);

bool in_browser();

// Whether threads can be started; else long work is done in turns between the steps. In a browser
// only an isolated page has them.
bool has_threads();

// How many threads to compute with, at least 1.
unsigned computing_threads();

// Whether a thread can wait for a device; else it is read in turns between the steps.
bool has_device_threads();

}  // namespace mastwise::platform
