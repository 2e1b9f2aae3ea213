#pragma once

#include "core/text/byte_stream.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <string>
#include <utility>

namespace mastwise::test {

// A text as a stream that gives at most `chunk` bytes at once.
class TextStream : public ByteStream {
 public:
  TextStream(std::string text, std::size_t chunk) : text_(std::move(text)), chunk_(chunk) {}
  Result<std::size_t> read(std::span<char> into) override {
    const std::size_t count = std::min({chunk_, into.size(), text_.size() - at_});
    std::copy_n(text_.begin() + static_cast<std::ptrdiff_t>(at_), count, into.begin());
    at_ += count;
    return count;
  }
  std::uint64_t size() const override { return text_.size(); }

 private:
  std::string text_;
  std::size_t chunk_;
  std::size_t at_ = 0;
};

// Files by name, in memory.
class MadeTables : public TableFiles {
 public:
  explicit MadeTables(std::map<std::string, std::string> files, std::size_t chunk = 1 << 16)
      : files_(std::move(files)), chunk_(chunk) {}
  Result<std::unique_ptr<ByteStream>> open(const std::string& name) override {
    const auto found = files_.find(name);
    if (found == files_.end()) return Error{.what = "missing file " + name};
    return std::unique_ptr<ByteStream>(std::make_unique<TextStream>(found->second, chunk_));
  }
  bool has(const std::string& name) const override { return files_.count(name) > 0; }

 private:
  std::map<std::string, std::string> files_;
  std::size_t chunk_;
};

}  // namespace mastwise::test
