#pragma once

#include <string>
#include <string_view>

namespace mastwise::test {

// A real pseudo-terminal: the test is the device at its one end, the program opens `path()`, the
// other. Fails the test when the system refuses. One thread may send while others read path().
class Pty {
 public:
  Pty();
  ~Pty();
  Pty(const Pty&) = delete;
  Pty& operator=(const Pty&) = delete;

  const std::string& path() const { return path_; }
  // Sends all the bytes, as fast as the other end takes them. Gives up, with false, after ten
  // seconds without progress.
  bool send(std::string_view bytes);
  // The speed that the program has set, in baud; 0 for one that is not known here.
  int baud() const;

 private:
  int master_;
  int keep_open_;  // so that bytes sent before the program opens its end are kept
  std::string path_;
};

}  // namespace mastwise::test
