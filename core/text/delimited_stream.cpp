#include "core/text/delimited_stream.hpp"

#include <algorithm>

namespace mastwise {
namespace {

// More than the longest row, so that a row is whole unless the text ends.
constexpr std::size_t kRowWindow = 2 * DelimitedReader::kLongestRow;
constexpr std::size_t kRowPiece = std::size_t{1} << 20;

}  // namespace

Result<std::size_t> ViewStream::read(std::span<char> into) {
  const std::size_t given = std::min(into.size(), text_.size());
  std::copy_n(text_.begin(), given, into.begin());
  text_.remove_prefix(given);
  return given;
}

// Removes what was read, and reads until there are `least` bytes or the text ends.
Result<Done> DelimitedStream::fill(std::size_t least) {
  if (ended_ || buffer_.size() - at_ >= least) return Done{};
  buffer_.erase(0, at_);
  at_ = 0;
  std::size_t have = buffer_.size();
  // A small text gets a small buffer. One byte more than is left shows that the text has ended.
  const std::uint64_t size = stream_.size();
  const std::size_t most = least + kRowPiece;
  const std::uint64_t left = size > bytes_read_ ? size - bytes_read_ + 1 : most;
  buffer_.resize(static_cast<std::size_t>(std::min<std::uint64_t>(have + left, most)));
  while (!ended_ && have < buffer_.size()) {
    const auto got = stream_.read({buffer_.data() + have, buffer_.size() - have});
    if (!got) return got.error();
    have += *got;
    bytes_read_ += *got;
    ended_ = *got == 0;
  }
  buffer_.resize(have);
  return Done{};
}

void DelimitedStream::drop_rest_of_line() {
  const std::size_t end = buffer_.find_first_of("\r\n", at_);
  in_long_line_ = end == std::string::npos;
  at_ = in_long_line_ ? buffer_.size() : end;
}

Result<std::optional<DelimitedRow>> DelimitedStream::next() {
  for (std::size_t window = kRowWindow;; window *= 2) {
    if (const auto filled = fill(window); !filled) return filled.error();
    if (in_long_line_) {
      drop_rest_of_line();
      if (in_long_line_ && !ended_) {
        window = kRowWindow / 2;
        continue;
      }
    }
    DelimitedReader reader(std::string_view(buffer_).substr(at_), separator_, comment_,
                           begun_ ? line_ : 0);
    auto row = reader.next();
    const bool to_the_end = at_ + reader.at() >= buffer_.size() && !ended_;
    const bool too_long = row && row->fault == DelimitedReader::kTooLong;
    // What reaches the end of the window may go on behind it.
    constexpr std::size_t kMostWindow = std::size_t{64} << 20;
    if (to_the_end && !too_long && window < kMostWindow) continue;
    begun_ = true;
    separator_ = reader.separator();
    line_ = reader.line();
    in_long_line_ = too_long && to_the_end;
    at_ += reader.at();
    return row;
  }
}

}  // namespace mastwise
