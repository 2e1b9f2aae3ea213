#pragma once

#include <string>
#include <string_view>

namespace mastwise::test {

// A real pseudo-terminal: the test is the device at one end, and Mastwise opens the other,
// `path()`. Fails the test if the system refuses. One thread may send while others read path().
class Pty {
 public:
  Pty();
  ~Pty();
  Pty(const Pty&) = delete;
  Pty& operator=(const Pty&) = delete;

  const std::string& path() const { return path_; }
  // Sends all the bytes, as fast as the other end reads them. Returns false after ten seconds
  // without progress.
  bool send(std::string_view bytes);
  // The speed that Mastwise has set, in baud; 0 if unknown here.
  int baud() const;

 private:
  int master_;
  int keep_open_;  // keeps bytes sent before Mastwise opens its end
  std::string path_;
};

}  // namespace mastwise::test
