#pragma once

#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <filesystem>
#include <span>

namespace mastwise::platform {

// A file's bytes through the system's memory map: pages are loaded at first touch and cost no
// private memory. Move-only; any thread may read the bytes while it lives.
class MappedFile {
 public:
  // The bytes returned if the file was truncated, or its card pulled out, after it was mapped: this
  // pair repeated, from even offsets on, instead of a signal that ends the process.
  using Lost = std::array<std::byte, 2>;

  // An empty file has empty bytes. Errors: the file is missing, unreadable or not a regular file.
  static Result<MappedFile> open(const std::filesystem::path& path, Lost in_place_of_lost);

  MappedFile(MappedFile&& other) noexcept;
  MappedFile& operator=(MappedFile&& other) noexcept;
  ~MappedFile();

  std::span<const std::byte> bytes() const { return {start_, size_}; }

  // Whether bytes were requested that could no longer be read, or the file was found cut short.
  bool lost_bytes() const;

  // The file has only `length` bytes left. The system shows zeros from there to the end of the
  // page, which look like data: they become lost bytes. True the first time.
  bool cut(std::size_t length) const;

  // Lets the system drop the pages that were read; the next touch loads them again.
  void forget() const;

  struct Guard;

 private:
  MappedFile(const std::byte* start, std::size_t size, Guard* guard)
      : start_(start), size_(size), guard_(guard) {}
  const std::byte* start_ = nullptr;
  std::size_t size_ = 0;
  Guard* guard_ = nullptr;
};

}  // namespace mastwise::platform
