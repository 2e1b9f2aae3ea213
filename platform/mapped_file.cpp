#include "platform/mapped_file.hpp"

#include <utility>

namespace mastwise::platform {

MappedFile::MappedFile(MappedFile&& other) noexcept
    : start_(std::exchange(other.start_, nullptr)),
      size_(std::exchange(other.size_, 0)),
      guard_(std::exchange(other.guard_, nullptr)) {}

MappedFile& MappedFile::operator=(MappedFile&& other) noexcept {
  std::swap(start_, other.start_);
  std::swap(size_, other.size_);
  std::swap(guard_, other.guard_);
  return *this;
}

}  // namespace mastwise::platform
