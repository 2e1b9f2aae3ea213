#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>

namespace mastwise {

// Bytes that arrive in pieces, from a file or from an archive.
class ByteStream {
 public:
  virtual ~ByteStream() = default;
  // Fills the beginning of `into` and returns the number of bytes; 0 at the end. Not called after
  // an error.
  virtual Result<std::size_t> read(std::span<char> into) = 0;
  // The total number of bytes; 0 if unknown.
  virtual std::uint64_t size() const = 0;
};

// The files of a set of tables.
class TableFiles {
 public:
  virtual ~TableFiles() = default;
  // Opens the file of that name, ignoring case. The error lists the files that exist.
  virtual Result<std::unique_ptr<ByteStream>> open(const std::string& name) = 0;
  // Whether open() would find it.
  virtual bool has(const std::string& name) const = 0;
};

}  // namespace mastwise
