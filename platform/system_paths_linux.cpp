#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include "platform/system_paths.hpp"

namespace mastwise::platform {
namespace {

bool write_all(int file, const std::string& bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t count = ::write(file, bytes.data() + done, bytes.size() - done);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    done += static_cast<std::size_t>(count);
  }
  return ::fsync(file) == 0;
}

}  // namespace

std::string program_folder() {
  std::error_code ignored;
  return std::filesystem::read_symlink("/proc/self/exe", ignored).parent_path().string();
}

// XDG Base Directory Specification.
std::string user_data_folder() {
  if (const char* data = std::getenv("XDG_DATA_HOME"); data != nullptr && *data == '/') {
    return std::string(data) + "/mastwise";
  }
  const char* home = std::getenv("HOME");
  return std::string(home != nullptr ? home : ".") + "/.local/share/mastwise";
}

Result<Done> write_through(const std::string& path, const std::string& bytes) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  const bool written = file >= 0 && write_all(file, bytes);
  const int reason = errno;
  if (file >= 0) ::close(file);
  if (written) return Done{};
  return Error{.what = std::string("cannot write: ") + std::strerror(reason), .where = path};
}

}  // namespace mastwise::platform
