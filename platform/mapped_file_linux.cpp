#include "platform/mapped_file.hpp"

#include <cerrno>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

namespace mastwise::platform {
namespace {

Error system_error(const std::filesystem::path& path, const char* doing, int number) {
  return {.what = std::string("cannot ") + doing + ": " + std::generic_category().message(number),
          .where = path.string(),
          .remedy = "check that the file is there and may be read"};
}

}  // namespace

Result<MappedFile> MappedFile::open(const std::filesystem::path& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return system_error(path, "open", errno);
  struct stat status = {};
  if (::fstat(file, &status) != 0 || !S_ISREG(status.st_mode)) {
    ::close(file);
    return system_error(path, "map", EINVAL);
  }
  const auto size = static_cast<std::size_t>(status.st_size);
  if (size == 0) {
    ::close(file);
    return MappedFile(nullptr, 0);
  }
  void* const start = ::mmap(nullptr, size, PROT_READ, MAP_SHARED, file, 0);
  const int failure = errno;
  ::close(file);
  if (start == MAP_FAILED) return system_error(path, "map", failure);
  return MappedFile(static_cast<const std::byte*>(start), size);
}

MappedFile::MappedFile(MappedFile&& other) noexcept
    : start_(std::exchange(other.start_, nullptr)), size_(std::exchange(other.size_, 0)) {}

MappedFile& MappedFile::operator=(MappedFile&& other) noexcept {
  std::swap(start_, other.start_);
  std::swap(size_, other.size_);
  return *this;
}

MappedFile::~MappedFile() {
  if (start_ != nullptr) ::munmap(const_cast<std::byte*>(start_), size_);
}

}  // namespace mastwise::platform
