#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// One row of a delimited table. If it has a fault, the cells are those read before the fault.
struct DelimitedRow {
  std::size_t line = 0;  // where the row begins, counted from 1
  std::vector<std::string> cells = {};
  std::string fault = {};  // empty if the row could be read
};

// The text unchanged if it is UTF-8 (RFC 3629), else converted from ISO 8859-1.
std::string to_utf8(std::string text);

// Reads delimited text by RFC 4180: quoted cells, doubled quotes, line ends within quotes; line
// ends are CR LF, LF or CR. Skips a byte-order mark and blank lines. A cell that is not UTF-8 is
// read as ISO 8859-1. After a faulty row, reading continues at the next line. The text must outlive
// the reader. A row of more than 1 MB is faulty, so that no table can fill the memory.
class DelimitedReader {
 public:
  static constexpr std::size_t kLongestRow = std::size_t{1} << 20;

  // `separator` '\0': whichever of comma, semicolon, tab and bar is most frequent in the first
  // line. Lines that begin with `comment` are skipped; '\0' skips none.
  DelimitedReader(std::string_view text, char separator, char comment = '\0');

  // The next row; std::nullopt at the end.
  std::optional<DelimitedRow> next();
  char separator() const { return separator_; }

 private:
  void read_cells(DelimitedRow& row);
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
