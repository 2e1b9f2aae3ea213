#pragma once

#include <catch2/catch.hpp>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

namespace mastwise::test {

// Runs `act` in a child process that then dies without cleanup. `act` must not use Catch's
// assertions.
template <class Act>
void in_killed_child(Act act) {
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    act();
    ::kill(::getpid(), SIGKILL);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFSIGNALED(status));
  CHECK(WTERMSIG(status) == SIGKILL);
}

}  // namespace mastwise::test
