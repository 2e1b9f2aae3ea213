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

// The text unchanged if it is UTF-8 (RFC 3629), else converted from Windows-1252, which holds ISO
// 8859-1. Source: Unicode's mapping table CP1252.TXT.
std::string to_utf8(std::string text);

// Reads delimited text by RFC 4180: quoted cells, doubled quotes, line ends within quotes; line
// ends are CR LF, LF or CR. Skips a byte-order mark and blank lines. A cell that is not UTF-8 is
// read as Windows-1252. After a faulty row, reading continues at the next line. The text must
// outlive the reader. A row of more than 1 MB is faulty, so that no table can fill the memory.
class DelimitedReader {
 public:
  static constexpr std::size_t kLongestRow = std::size_t{1} << 20;

  static constexpr std::string_view kTooLong =
      "the row is longer than 1 MB; look for a missing line end or closing quote";

  // `separator` '\0': whichever of comma, semicolon, tab and bar is most frequent in the first
  // line. Lines that begin with `comment` are skipped; '\0' skips none. `line`: the text goes on
  // within a table, at this line; 0: it begins one.
  DelimitedReader(std::string_view text, char separator, char comment = '\0', std::size_t line = 0);

  // The next row; std::nullopt at the end.
  std::optional<DelimitedRow> next();
  char separator() const { return separator_; }
  std::size_t at() const { return at_; }      // bytes read
  std::size_t line() const { return line_; }  // of the next row, or before it

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
