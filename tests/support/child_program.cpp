#include "tests/support/child_program.hpp"

#include "tests/support/folders.hpp"

#include <array>
#include <cstdlib>

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

namespace mastwise::test {
namespace {

// Both ends of a pipe that other children do not inherit.
std::array<int, 2> open_pipe() {
  std::array<int, 2> ends{};
  REQUIRE(::pipe2(ends.data(), O_CLOEXEC) == 0);
  return ends;
}

// Reads the available bytes; false at the end.
bool take(int from, std::string& into) {
  std::array<char, 4096> bytes;
  const ssize_t count = ::read(from, bytes.data(), bytes.size());
  if (count <= 0) return false;
  into.append(bytes.data(), static_cast<std::size_t>(count));
  return true;
}

}  // namespace

ChildProgram::ChildProgram(const std::vector<std::string>& arguments,
                           const std::string& data_folder,
                           const std::vector<std::pair<std::string, std::string>>& environment) {
  const char* other = std::getenv("MASTWISE_PROGRAM");
  const std::string program = other != nullptr ? other : build_folder() + "/mastwise";
  std::vector<char*> words{const_cast<char*>(program.c_str())};
  for (const std::string& argument : arguments)
    words.push_back(const_cast<char*>(argument.c_str()));
  words.push_back(nullptr);
  const auto output = open_pipe(), errors = open_pipe();
  id_ = ::fork();
  REQUIRE(id_ >= 0);
  if (id_ == 0) {
    ::dup2(output[1], STDOUT_FILENO);
    ::dup2(errors[1], STDERR_FILENO);
    ::setenv("MASTWISE_DATA", data_folder.c_str(), 1);
    // No leak check in the child: the drivers are unloaded before the checker can name their
    // memory.
    ::setenv("ASAN_OPTIONS", "detect_leaks=0", 1);
    for (const auto& [name, value] : environment) ::setenv(name.c_str(), value.c_str(), 1);
    ::execv(program.c_str(), words.data());
    ::_exit(127);
  }
  ::close(output[1]);
  ::close(errors[1]);
  output_ = output[0];
  errors_ = errors[0];
}

ChildProgram::Ended ChildProgram::wait() {
  Ended ended{};
  std::array<pollfd, 2> ends{pollfd{output_, POLLIN, 0}, pollfd{errors_, POLLIN, 0}};
  while (ends[0].fd >= 0 || ends[1].fd >= 0) {
    if (::poll(ends.data(), ends.size(), -1) < 0) continue;
    if (ends[0].revents != 0 && !take(output_, ended.output)) ends[0].fd = -1;
    if (ends[1].revents != 0 && !take(errors_, ended.errors)) ends[1].fd = -1;
  }
  int status = 0;
  REQUIRE(::waitpid(id_, &status, 0) == id_);
  id_ = -1;
  ended.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ended;
}

ChildProgram::~ChildProgram() {
  if (id_ > 0) {
    ::kill(id_, SIGKILL);
    ::waitpid(id_, nullptr, 0);
  }
  ::close(output_);
  ::close(errors_);
}

ChildProgram::Ended run_program(const std::vector<std::string>& arguments,
                                const std::string& data_folder) {
  return ChildProgram(arguments, data_folder).wait();
}

}  // namespace mastwise::test
