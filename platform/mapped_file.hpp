#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <filesystem>
#include <span>

namespace mastwise::platform {

// A file's bytes read through the system's memory map: pages are loaded at first touch and cost no
// private memory. Move-only; the bytes are readable by any thread while it lives.
class MappedFile {
 public:
  // An empty file has empty bytes. Errors: the file is missing, unreadable or not a regular file.
  static Result<MappedFile> open(const std::filesystem::path& path);

  MappedFile(MappedFile&& other) noexcept;
  MappedFile& operator=(MappedFile&& other) noexcept;
  ~MappedFile();

  std::span<const std::byte> bytes() const { return {start_, size_}; }

 private:
  MappedFile(const std::byte* start, std::size_t size) : start_(start), size_(size) {}
  const std::byte* start_ = nullptr;
  std::size_t size_ = 0;
};

}  // namespace mastwise::platform
