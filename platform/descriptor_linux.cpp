#include "platform/descriptor_linux.hpp"

#include <cerrno>
#include <system_error>

#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

namespace mastwise::platform {

Descriptor::~Descriptor() {
  if (number_ >= 0) ::close(number_);
}

Error system_error(std::string what, std::string where) {
  const int cause = errno;
  Error error{.what = fmt::format("{}: {}", what, std::generic_category().message(cause)),
              .where = std::move(where)};
  if (cause == EACCES || cause == EPERM) {
    error.remedy = "add your user to the group that may use it, dialout on most systems";
  }
  if (cause == ECONNREFUSED) error.remedy = "check the port, and that the device's server is on";
  return error;
}

Result<Chunk> read_when_ready(const Descriptor& descriptor, std::span<char> into,
                              milliseconds timeout, const std::string& where) {
  pollfd waiting{descriptor.number(), POLLIN, 0};
  const int ready = ::poll(&waiting, 1, static_cast<int>(timeout.count()));
  if (ready < 0 && errno != EINTR) return system_error("waiting failed", where);
  if (ready <= 0) return Chunk{};
  const ssize_t size = ::read(descriptor.number(), into.data(), into.size());
  if (size > 0) return Chunk{static_cast<std::size_t>(size)};
  if (size < 0 && (errno == EAGAIN || errno == EINTR)) return Chunk{};
  if (size < 0) return system_error("reading failed", where);
  return Error{
      .what = "the device is disconnected", .where = where, .remedy = "check its cable and power"};
}

}  // namespace mastwise::platform
