#include "core/import/record_reader.hpp"

#include "tests/support/made_tables.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

struct Kept {
  std::size_t line;
  std::vector<std::string> cells;
  bool operator==(const Kept&) const = default;
};

std::vector<Kept> records(const std::string& text, const RecordFormat& format,
                          std::size_t chunk = 1 << 16) {
  test::TextStream stream(text, chunk);
  RecordReader reader(stream, format);
  std::vector<Kept> all;
  Record record;
  while (true) {
    const auto more = reader.next(record);
    REQUIRE(more);
    if (!*more) return all;
    all.push_back({record.line, {record.cells.begin(), record.cells.end()}});
  }
}

const RecordFormat kMarked{.separator = '|', .record_end = "|^|"};

}  // namespace

TEST_CASE("a record ends at its mark and a line end, with any line ends inside") {
  const std::string text =
      "id|note|city|^|\n1|two\nlines|Alder|^|\r\n\n2|a mark |^| within|Birch|^|\n3||^|";
  const auto all = records(text, kMarked);
  REQUIRE(all.size() == 4);
  CHECK(all[0] == Kept{1, {"id", "note", "city"}});
  CHECK(all[1] == Kept{2, {"1", "two\nlines", "Alder"}});
  CHECK(all[2].cells == std::vector<std::string>{"2", "a mark", "^", "within", "Birch"});
  CHECK(all[3].cells == std::vector<std::string>{"3", ""});
  for (std::size_t chunk = 1; chunk < text.size(); ++chunk) {
    CHECK(records(text, kMarked, chunk) == all);
  }
}

TEST_CASE("without the mark in the first line every line is a record") {
  const auto all = records("\xEF\xBB\xBFid|city\r\n1| Alder \n2|Birch", kMarked);
  REQUIRE(all.size() == 3);
  CHECK(all[0].cells == std::vector<std::string>{"id", "city"});
  CHECK(all[1] == Kept{2, {"1", "Alder"}});
  CHECK(all[2] == Kept{3, {"2", "Birch"}});
  const auto headless = records("1|a\nb|^|\n", {'|', "|^|", false});
  REQUIRE(headless.size() == 1);
  CHECK(headless[0].cells == std::vector<std::string>{"1", "a\nb"});
}

TEST_CASE("a record without an end is skipped and counted, and the next is read") {
  const std::string text = "id|a|^|\n1|" + std::string(3 << 20, 'x') + "|^|\n2|b|^|\n";
  test::TextStream stream(text, 1 << 18);
  RecordReader reader(stream, kMarked);
  Record record;
  REQUIRE(*reader.next(record));
  REQUIRE(*reader.next(record));
  CHECK(record.cells.at(0) == "2");
  CHECK(reader.too_long() == 1);
  CHECK_FALSE(*reader.next(record));
  CHECK(reader.bytes_read() == text.size());
}

TEST_CASE("an empty file has no records") {
  CHECK(records("", kMarked).empty());
  CHECK(records("\n \n", kMarked).empty());
}
