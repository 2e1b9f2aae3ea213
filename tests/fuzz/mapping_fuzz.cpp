#include "core/import/import_table.hpp"
#include "core/import/table_mapping.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as a mapping; after a line of "---", a table to read by it.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  constexpr std::string_view kMark = "\n---\n";
  const std::size_t mark = text.find(kMark);
  const auto mapping = mastwise::parse_table_mapping(text.substr(0, mark));
  if (!mapping) {
    if (mapping.error().message().empty()) std::abort();
    return 0;
  }
  if (mark == std::string_view::npos) return 0;
  const auto table = mastwise::read_station_table(text.substr(mark + kMark.size()), *mapping);
  if (table && table->stations.size() + table->rejected.size() != table->rows_read) std::abort();
  return 0;
}
