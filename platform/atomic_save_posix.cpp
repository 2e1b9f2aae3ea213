#include "platform/atomic_save.hpp"

#include <cerrno>
#include <cstdio>
#include <string>
#include <system_error>

#include <fcntl.h>
#include <unistd.h>

namespace mastwise::platform {
namespace {

Error write_error(const std::filesystem::path& path, const std::string& doing, int number) {
  return {.what = "cannot " + doing + ": " + std::generic_category().message(number),
          .where = path.string(),
          .remedy = "check that you may write to the folder and that it has free space"};
}

// 0 or the error's number.
int write_all(int file, std::span<const std::byte> bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    bytes = bytes.subspan(static_cast<std::size_t>(written));
  }
  return ::fsync(file) == 0 ? 0 : errno;
}

}  // namespace

Result<Done> write_durably(const std::filesystem::path& path, std::span<const std::byte> bytes) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (file < 0) return write_error(path, "write", errno);
  int failure = write_all(file, bytes);
  if (::close(file) != 0 && failure == 0) failure = errno;
  if (failure == 0) return Done{};
  ::unlink(path.c_str());
  return write_error(path, "write", failure);
}

Result<Done> put_in_place(const std::filesystem::path& from, const std::filesystem::path& to) {
  if (std::rename(from.c_str(), to.c_str()) != 0) return write_error(to, "replace", errno);
  // The new name is safe once the folder is on the disk. Some file systems of cards do not support
  // that: the system then writes the name in its own time.
  const std::filesystem::path parent = to.parent_path().empty() ? "." : to.parent_path();
  const int folder = ::open(parent.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (folder >= 0) {
    ::fsync(folder);
    ::close(folder);
  }
  return Done{};
}

Result<Done> save_atomically(const std::filesystem::path& path, std::span<const std::byte> bytes) {
  std::filesystem::path part = path;
  part += ".part";
  const auto written = write_durably(part, bytes);
  if (!written) return written.error();
  const auto placed = put_in_place(part, path);
  if (!placed) ::unlink(part.c_str());
  return placed;
}

}  // namespace mastwise::platform
