#include "platform/start.hpp"

#include <malloc.h>

namespace mastwise::platform {
namespace {

// One heap for all threads, which grows in large steps. glibc gives every thread a heap that grows
// page by page, each time against the page faults of the others: a sixth of the time to the first
// picture. The survey's threads allocate nothing, so they do not wait for one another here.
void choose_heap() {
  constexpr int kMegabyte = 1 << 20;
  mallopt(M_ARENA_MAX, 1);
  mallopt(M_TOP_PAD, 16 * kMegabyte);
  // With a step of its own, glibc no longer adapts these two to what is freed.
  mallopt(M_MMAP_THRESHOLD, 16 * kMegabyte);
  mallopt(M_TRIM_THRESHOLD, 32 * kMegabyte);
}

}  // namespace

// The system has the rest.
char** start_program(int&, char* given[]) {
  choose_heap();
  return given;
}

}  // namespace mastwise::platform
