#include "core/import/file_scan.hpp"
#include "core/import/joined_import.hpp"
#include "core/import/record_reader.hpp"
#include "tests/support/made_tables.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

using namespace mastwise;

std::vector<std::vector<std::string>> records(const std::string& text, const RecordFormat& format,
                                              std::size_t chunk) {
  test::TextStream stream(text, chunk);
  RecordReader reader(stream, format);
  std::vector<std::vector<std::string>> all;
  Record record;
  std::size_t line = 1;
  while (true) {
    const auto more = reader.next(record);
    if (!more) std::abort();
    if (!*more) break;
    if (record.cells.empty() || record.line < line) std::abort();
    line = record.line;
    all.emplace_back(record.cells.begin(), record.cells.end());
  }
  if (reader.bytes_read() != text.size()) std::abort();
  return all;
}

const JoinedMapping& mapping() {
  static const auto kMapping = parse_joined_mapping(R"({
    "source": {"name": "fuzz"}, "separator": "|", "record_end": "|^|", "raster": "ATSC",
    "datum": "WGS84",
    "tables": [{"name": "a", "file": "a"},
               {"name": "b", "file": "b", "key": "k", "joins": "a.k", "optional": true}],
    "pattern": {"file": "p", "key": "k", "joins": "a.k", "azimuth": "az", "field": "f",
                "rotation": "b.r"},
    "latitude": {"notation": "decimal", "column": "a.y", "positive": "north"},
    "longitude": {"notation": "decimal", "column": "a.x", "positive": "east"},
    "fields": {"call_sign": "a.c", "rf_channel": "b.ch", "erp_kw": "b.e"}})");
  if (!kMapping) std::abort();
  return *kMapping;
}

}  // namespace

// Any bytes as records: the same for all chunk sizes. And as three tables, separated by a zero
// byte: all joined rows are counted.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  for (const bool header : {true, false}) {
    const RecordFormat format{'|', "|^|", header};
    const auto whole = records(text, format, text.size() + 1);
    if (records(text, format, 1) != whole || records(text, format, 5) != whole) std::abort();
  }
  static_cast<void>(is_joined_mapping(text));
  static_cast<void>(parse_joined_mapping(text));

  const std::size_t first = std::min(text.find('\0'), text.size());
  const std::size_t second = std::min(text.find('\0', first + 1), text.size());
  test::MadeTables tables(
      {{"a", "k|y|x|c\n" + text.substr(0, first)},
       {"b", "k|ch|e|r\n" + (first < second ? text.substr(first + 1, second - first - 1) : "")},
       {"p", "k|az|f\n" + (second < text.size() ? text.substr(second + 1) : "")}});
  const auto table = read_joined_tables(tables, mapping());
  if (!table) {
    if (table.error().message().empty()) std::abort();
    return 0;
  }
  if (table->stations.size() + table->rejected.size() != table->rows_read) std::abort();
  return 0;
}
