#pragma once

#include "core/result.hpp"
#include "core/text/byte_stream.hpp"
#include "core/text/delimited.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise {

// A text in memory as a stream; the text must outlive it.
class ViewStream : public ByteStream {
 public:
  explicit ViewStream(std::string_view text) : text_(text), size_(text.size()) {}
  Result<std::size_t> read(std::span<char> into) override;
  std::uint64_t size() const override { return size_; }

 private:
  std::string_view text_;
  std::size_t size_;
};

// DelimitedReader for a text of any length: in memory are a few MB at a time.
class DelimitedStream {
 public:
  // `stream` must outlive it; `separator` and `comment` as for DelimitedReader.
  DelimitedStream(ByteStream& stream, char separator, char comment = '\0')
      : stream_(stream), separator_(separator), comment_(comment) {}

  // The next row; std::nullopt at the end. Errors are those of the stream.
  Result<std::optional<DelimitedRow>> next();
  char separator() const { return separator_; }  // known after the first row
  std::uint64_t bytes_read() const { return bytes_read_; }

 private:
  Result<Done> fill(std::size_t least);
  void drop_rest_of_line();

  ByteStream& stream_;
  char separator_;
  char comment_;
  std::string buffer_ = {};
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  std::uint64_t bytes_read_ = 0;
  bool begun_ = false;
  bool ended_ = false;
  bool in_long_line_ = false;  // which was told as faulty, and goes on
};

}  // namespace mastwise
