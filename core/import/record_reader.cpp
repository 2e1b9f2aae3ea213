#include "core/import/record_reader.hpp"

#include "core/text/words.hpp"

#include <algorithm>

namespace mastwise {
namespace {

constexpr std::size_t kChunk = std::size_t{256} << 10;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

}  // namespace

RecordReader::RecordReader(ByteStream& stream, RecordFormat format)
    : stream_(stream), format_(std::move(format)) {}

// Removes the consumed part of the buffer and reads more; false at the stream's end.
Result<bool> RecordReader::fill() {
  if (ended_) return false;
  buffer_.erase(0, at_);
  at_ = 0;
  const std::size_t before = buffer_.size();
  buffer_.resize(before + kChunk);
  const auto got = stream_.read({buffer_.data() + before, kChunk});
  buffer_.resize(before + (got ? std::min(*got, kChunk) : 0));
  if (!got) return got.error();
  bytes_read_ += *got;
  ended_ = *got == 0;
  return !ended_;
}

Result<Done> RecordReader::begin() {
  begun_ = true;
  while (buffer_.find('\n') == std::string::npos && buffer_.size() < kLongestRecord) {
    const auto more = fill();
    if (!more) return more.error();
    if (!*more) break;
  }
  if (std::string_view(buffer_).substr(0, kByteOrderMark.size()) == kByteOrderMark) {
    at_ = kByteOrderMark.size();
  }
  if (format_.record_end.empty() || !format_.end_as_in_first_line) return Done{};
  const std::string_view line =
      words::trimmed(std::string_view(buffer_).substr(0, buffer_.find('\n')));
  const std::size_t end = format_.record_end.size();
  if (line.size() < end || line.substr(line.size() - end) != format_.record_end) {
    format_.record_end.clear();
  }
  return Done{};
}

// std::nullopt if the end is not in the buffer yet.
RecordReader::End RecordReader::find_end(std::size_t from) const {
  const std::string_view all(buffer_);
  const std::string_view told(format_.record_end);
  const std::string_view mark = told.empty() ? std::string_view("\n") : told;
  for (std::size_t at = all.find(mark, from); at != std::string_view::npos;
       at = all.find(mark, at + 1)) {
    std::size_t next = at + mark.size();
    if (format_.record_end.empty()) return {at, next};
    if (next < all.size() && all[next] == '\r') ++next;
    if (next >= all.size()) return ended_ ? End{at, next} : End{};
    if (all[next] == '\n') return {at, next + 1};
  }
  return ended_ ? End{all.size(), all.size()} : End{};
}

Result<RecordReader::End> RecordReader::end_of_record() {
  std::size_t searched = at_;
  while (true) {
    const End end = find_end(searched);
    if (end.at != std::string::npos) return end;
    // The chunk's end may cut the mark and a carriage return after it.
    constexpr std::size_t kCut = 16;
    const std::size_t known = buffer_.size() - at_;
    if (known > kLongestRecord) {
      ++too_long_;
      while (true) {
        advance(buffer_.size() - std::min(buffer_.size() - at_, kCut));
        const auto more = fill();
        if (!more) return more.error();
        const End late = find_end(at_);
        if (late.at == std::string::npos) continue;
        advance(late.next);
        break;
      }
      searched = at_;
      continue;
    }
    const auto more = fill();
    if (!more) return more.error();
    searched = at_ + (known > kCut ? known - kCut : 0);
  }
}

void RecordReader::advance(std::size_t to) {
  line_ +=
      static_cast<std::size_t>(std::count(buffer_.begin() + static_cast<std::ptrdiff_t>(at_),
                                          buffer_.begin() + static_cast<std::ptrdiff_t>(to), '\n'));
  at_ = to;
}

void RecordReader::split(std::string_view text, Record& record) const {
  record.cells.clear();
  while (true) {
    const std::size_t end = std::min(text.find(format_.separator), text.size());
    record.cells.push_back(words::trimmed(text.substr(0, end)));
    if (end == text.size()) return;
    text.remove_prefix(end + 1);
  }
}

Result<bool> RecordReader::next(Record& record) {
  if (!begun_) {
    if (const auto done = begin(); !done) return done.error();
  }
  while (true) {
    const auto end = end_of_record();
    if (!end) return end.error();
    const std::string_view text = std::string_view(buffer_).substr(at_, end->at - at_);
    const bool last = end->next >= buffer_.size() && ended_;
    if (words::trimmed(text).empty()) {
      advance(end->next);
      if (last) return false;
      continue;
    }
    record.line = line_;
    split(text, record);
    advance(end->next);
    return true;
  }
}

}  // namespace mastwise
