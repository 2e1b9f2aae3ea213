#include "core/text/delimited.hpp"

#include "core/text/utf8.hpp"

#include <algorithm>
#include <array>

namespace mastwise {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// The letters of the bytes 0x80 to 0x9F; the five that have none stay control characters.
constexpr std::array<char32_t, 32> kWindows1252{
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

bool is_line_end(char c) {
  return c == '\n' || c == '\r';
}

// Where the line that goes on at `from` ends.
std::size_t end_of_line(std::string_view text, std::size_t from) {
  const auto end =
      std::find_if(text.begin() + static_cast<std::ptrdiff_t>(from), text.end(), is_line_end);
  return static_cast<std::size_t>(end - text.begin());
}

char detect_separator(std::string_view text) {
  const std::string_view line = text.substr(0, end_of_line(text, 0));
  char best = ',';
  std::ptrdiff_t most = 0;
  for (const char candidate : {',', ';', '\t', '|'}) {
    const auto count = std::count(line.begin(), line.end(), candidate);
    if (count > most) {
      most = count;
      best = candidate;
    }
  }
  return best;
}

}  // namespace

std::string to_utf8(std::string cell) {
  if (is_utf8(cell)) return cell;
  std::string result;
  for (const char c : cell) {
    const auto byte = static_cast<unsigned char>(c);
    append_utf8(byte >= 0x80 && byte < 0xA0 ? kWindows1252[byte - 0x80] : byte, result);
  }
  return result;
}

DelimitedReader::DelimitedReader(std::string_view text, char separator, char comment,
                                 std::size_t line)
    : text_(text), line_(std::max<std::size_t>(line, 1)), separator_(separator), comment_(comment) {
  if (line == 0 && text_.substr(0, kByteOrderMark.size()) == kByteOrderMark)
    at_ = kByteOrderMark.size();
  if (separator_ == '\0') {
    while (skip_blank_line()) {
    }
    separator_ = detect_separator(text_.substr(at_, kLongestRow));
  }
}

std::optional<DelimitedRow> DelimitedReader::next() {
  while (skip_blank_line()) {
  }
  if (at_ >= text_.size()) return std::nullopt;

  DelimitedRow row{.line = line_};
  const std::size_t start = at_;
  const std::string_view all = text_;
  text_ = all.substr(0, start + kLongestRow);
  read_cells(row);
  const bool cut = at_ >= text_.size() && text_.size() < all.size();
  text_ = all;
  if (cut) {
    row.cells.clear();
    row.fault = kTooLong;
  }
  if (row.fault.empty()) {
    end_line();
    return row;
  }
  at_ = start;
  line_ = row.line;
  skip_line();
  return row;
}

void DelimitedReader::read_cells(DelimitedRow& row) {
  while (true) {
    const bool quoted = at_ < text_.size() && text_[at_] == '"';
    row.cells.push_back(to_utf8(quoted ? read_quoted_cell(row.fault) : read_plain_cell()));
    if (!row.fault.empty() || at_row_end()) return;
    ++at_;
  }
}

bool DelimitedReader::at_row_end() const {
  return at_ >= text_.size() || is_line_end(text_[at_]);
}

bool DelimitedReader::skip_blank_line() {
  if (at_ >= text_.size()) return false;
  if (comment_ != '\0' && text_[at_] == comment_) {
    skip_line();
    return true;
  }
  const std::size_t past = std::min(text_.find_first_not_of(" ", at_), text_.size());
  if (past < text_.size() && !is_line_end(text_[past])) return false;
  at_ = past;
  end_line();
  return true;
}

void DelimitedReader::skip_line() {
  at_ = end_of_line(text_, at_);
  end_line();
}

void DelimitedReader::end_line() {
  if (at_ >= text_.size()) return;
  at_ += text_.compare(at_, 2, "\r\n") == 0 ? 2 : 1;
  ++line_;
}

std::string DelimitedReader::read_plain_cell() {
  const std::size_t start = at_;
  while (!at_row_end() && text_[at_] != separator_) ++at_;
  return std::string(text_.substr(start, at_ - start));
}

std::string DelimitedReader::read_quoted_cell(std::string& fault) {
  std::string cell;
  ++at_;
  while (at_ < text_.size()) {
    if (text_[at_] == '"') {
      ++at_;
      if (at_row_end() || text_[at_] == separator_) return cell;
      if (text_[at_] != '"') {
        fault = "text follows the closing quote of a cell; double the quotes within a quoted cell";
        return cell;
      }
    } else if (text_[at_] == '\n' || (text_[at_] == '\r' && text_.substr(at_ + 1, 1) != "\n")) {
      ++line_;
    }
    cell += text_[at_++];
  }
  fault = "a quote is never closed";
  return cell;
}

}  // namespace mastwise
