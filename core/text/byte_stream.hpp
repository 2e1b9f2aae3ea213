#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>

namespace mastwise {

// Bytes that come in pieces, from a file or out of an archive.
class ByteStream {
 public:
  virtual ~ByteStream() = default;
  // Fills the beginning of `into` and returns how much; 0 at the end. Not called after an error.
  virtual Result<std::size_t> read(std::span<char> into) = 0;
  // How many bytes there are in all; 0 where that is not known.
  virtual std::uint64_t size() const = 0;
};

// The files of a set of tables.
class TableFiles {
 public:
  virtual ~TableFiles() = default;
  // Opens the file of that name, without notice of case. An error says which files there are.
  virtual Result<std::unique_ptr<ByteStream>> open(const std::string& name) = 0;
};

}  // namespace mastwise
