#pragma once

#include "core/result.hpp"
#include "core/text/byte_stream.hpp"

#include <cstdint>
#include <memory>
#include <string>

namespace mastwise {

// A text's bytes as UTF-8. UTF-16 of either byte order is recognized by its byte-order mark, or
// without one by the zero bytes of its plain letters (RFC 2781); a surrogate without its partner is
// read as U+FFFD. Other bytes pass unchanged.
class DecodedStream : public ByteStream {
 public:
  enum class Encoding : std::uint8_t { bytes, utf16_little, utf16_big };

  explicit DecodedStream(std::unique_ptr<ByteStream> stream) : stream_(std::move(stream)) {}
  Result<std::size_t> read(std::span<char> into) override;
  // Of the bytes before decoding.
  std::uint64_t size() const override { return stream_->size(); }
  // Known after the first read.
  Encoding encoding() const { return encoding_; }

 private:
  Result<Done> begin();
  Result<Done> more();
  void decode(bool last);

  std::unique_ptr<ByteStream> stream_;
  Encoding encoding_ = Encoding::bytes;
  std::string raw_ = {};      // not decoded yet
  std::string decoded_ = {};  // not given yet
  std::size_t given_ = 0;
  bool begun_ = false;
  bool ended_ = false;
};

}  // namespace mastwise
