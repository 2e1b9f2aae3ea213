#include "core/text/delimited.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

std::vector<DelimitedRow> rows_of(std::string_view text, char separator = ',',
                                  char comment = '\0') {
  DelimitedReader reader(text, separator, comment);
  std::vector<DelimitedRow> rows;
  while (auto row = reader.next()) rows.push_back(*row);
  return rows;
}

using Cells = std::vector<std::string>;

}  // namespace

// RFC 4180, section 2.
TEST_CASE("quoted cells keep separators, quotes and line ends, and line numbers stay right") {
  const auto rows = rows_of("a,\"b,c\",\"d \"\"e\"\"\"\r\n\"two\r\nlines\",x,\r\n\r\nlast,,\"\"");
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].cells == Cells{"a", "b,c", "d \"e\""});
  CHECK(rows[1].cells == Cells{"two\r\nlines", "x", ""});
  CHECK(rows[1].line == 2);
  CHECK(rows[2].cells == Cells{"last", "", ""});
  CHECK(rows[2].line == 5);
}

TEST_CASE("any line end, a byte-order mark and comments are accepted") {
  for (const char* text : {"\xEF\xBB\xBF"
                           "a,b\nc,d\n",
                           "a,b\r\nc,d", "a,b\rc,d\r", "#x\na,b\n  \nc,d"}) {
    const auto rows = rows_of(text, ',', '#');
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].cells == Cells{"a", "b"});
    CHECK(rows[1].cells == Cells{"c", "d"});
  }
  CHECK(rows_of("").empty());
  CHECK(rows_of("\n\n").empty());
}

TEST_CASE("a faulty row is reported with its line, and the rest is read") {
  const auto rows = rows_of("a,b\n\"x\"y,1\nc,\"never closed\nd,e\n");
  REQUIRE(rows.size() == 4);
  CHECK(rows[1].line == 2);
  CHECK(rows[1].fault.find("closing quote") != std::string::npos);
  CHECK(rows[2].line == 3);
  CHECK(rows[2].fault.find("never closed") != std::string::npos);
  CHECK(rows[3].line == 4);
  CHECK(rows[3].cells == Cells{"d", "e"});
}

TEST_CASE("the separator is found in the first line that is not a comment") {
  for (const char separator : {',', ';', '\t', '|'}) {
    const std::string text = std::string("# a, b, c; d | e\nx") + separator + "y\n";
    DelimitedReader reader(text, '\0', '#');
    CHECK(reader.separator() == separator);
    CHECK(reader.next()->cells == Cells{"x", "y"});
  }
}

TEST_CASE("a cell in Windows-1252 becomes UTF-8 and UTF-8 stays") {
  const auto rows = rows_of(
      "Qu\xE9"
      "bec,Qu\xC3\xA9"
      "bec,\xED\xA0\x80\n");
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].cells[0] ==
        "Qu\xC3\xA9"
        "bec");
  CHECK(rows[0].cells[1] ==
        "Qu\xC3\xA9"
        "bec");
  CHECK(rows[0].cells[2] == "\xC3\xAD\xC2\xA0\xE2\x82\xAC");  // the euro sign at 0x80
}
