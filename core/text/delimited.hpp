#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// One row of a delimited table. With a fault, the cells are those read before it.
struct DelimitedRow {
  std::size_t line = 0;  // on which the row begins; the first line of the text is 1
  std::vector<std::string> cells = {};
  std::string fault = {};  // empty when the row could be read
};

// The text itself where it is UTF-8 (RFC 3629), else taken for ISO 8859-1.
std::string to_utf8(std::string text);

// Reads delimited text by RFC 4180: quoted cells, doubled quotes, line ends within quotes; ends of
// line CR LF, LF or CR. A byte-order mark and blank lines are passed over. A cell that is not UTF-8
// is taken for ISO 8859-1. After a faulty row it goes on at the next line. The text must outlive
// the reader.
class DelimitedReader {
 public:
  // `separator` '\0': the one of comma, semicolon, tab and bar that the first line has most of.
  // Lines that begin with `comment` are passed over; '\0': none are.
  DelimitedReader(std::string_view text, char separator, char comment = '\0');

  // The next row, or nothing at the end.
  std::optional<DelimitedRow> next();
  char separator() const { return separator_; }

 private:
  bool skip_blank_line();
  bool at_row_end() const;
  void skip_line();
  void end_line();
  std::string read_plain_cell();
  std::string read_quoted_cell(std::string& fault);

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  char separator_;
  char comment_;
};

}  // namespace mastwise
