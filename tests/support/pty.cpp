#include "tests/support/pty.hpp"

#include <cstdlib>
#include <map>

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <poll.h>
#include <termios.h>
#include <unistd.h>

namespace mastwise::test {

Pty::Pty() : master_(::posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK)) {
  REQUIRE(master_ >= 0);
  REQUIRE(::grantpt(master_) == 0);
  REQUIRE(::unlockpt(master_) == 0);
  path_ = ::ptsname(master_);
  keep_open_ = ::open(path_.c_str(), O_RDWR | O_NOCTTY);
  REQUIRE(keep_open_ >= 0);
  termios settings{};
  REQUIRE(::tcgetattr(keep_open_, &settings) == 0);
  ::cfmakeraw(&settings);
  REQUIRE(::cfsetspeed(&settings, B4800) == 0);
  REQUIRE(::tcsetattr(keep_open_, TCSANOW, &settings) == 0);
}

// Close the master first, so that the reader of the other end sees the device disappear.
Pty::~Pty() {
  ::close(master_);
  ::close(keep_open_);
}

bool Pty::send(std::string_view bytes) {
  while (!bytes.empty()) {
    pollfd waiting{master_, POLLOUT, 0};
    if (::poll(&waiting, 1, 10000) <= 0) return false;
    const ssize_t size = ::write(master_, bytes.data(), bytes.size());
    if (size > 0) bytes.remove_prefix(static_cast<std::size_t>(size));
  }
  return true;
}

int Pty::baud() const {
  static const std::map<speed_t, int> kBauds = {
      {B4800, 4800}, {B9600, 9600}, {B38400, 38400}, {B115200, 115200}};
  termios settings{};
  if (::tcgetattr(keep_open_, &settings) != 0) return 0;
  const auto baud = kBauds.find(::cfgetospeed(&settings));
  return baud == kBauds.end() ? 0 : baud->second;
}

}  // namespace mastwise::test
