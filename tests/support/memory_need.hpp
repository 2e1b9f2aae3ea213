#pragma once

#include <algorithm>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <sys/wait.h>
#include <unistd.h>

namespace mastwise::test {

// A line of /proc/self/status, in MB [Linux, proc(5): VmHWM is the peak of VmRSS].
inline long own_memory_mb(const std::string& name) {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;) {
    if (word != name + ":") continue;
    long kilobytes = 0;
    status >> kilobytes;
    return kilobytes / 1024;
  }
  return -1;
}

// By how many MB the memory grows at its peak while `act` runs, in a child process so that earlier
// tests do not count. `act` returns whether it went as expected, and must not use Catch's
// assertions.
template <class Act>
long memory_need_mb(Act act) {
  constexpr long kFailed = 255;
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    const long before_mb = own_memory_mb("VmRSS");
    const bool as_expected = act();
    const long need_mb = std::clamp(own_memory_mb("VmHWM") - before_mb, 0L, kFailed - 1);
    ::_exit(static_cast<int>(as_expected ? need_mb : kFailed));
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFEXITED(status));
  REQUIRE(WEXITSTATUS(status) != kFailed);
  return WEXITSTATUS(status);
}

}  // namespace mastwise::test
