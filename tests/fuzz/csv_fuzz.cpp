#include "core/catalog/catalog_search.hpp"
#include "core/import/import_csv.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as Mastwise's station table, and as a search: all rows are counted, line numbers are
// within the text, and every station has a channel of its channel plan.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  static_cast<void>(mastwise::catalog_search::match_query(text));
  const auto table = mastwise::read_station_csv(text, {"fuzz", ""});
  if (!table) {
    if (table.error().message().empty()) std::abort();
    return 0;
  }
  if (table->stations.size() + table->rejected.size() != table->rows_read) std::abort();
  for (const auto& row : table->rejected) {
    if (row.line < 2 || row.line > size + 1 || row.reason.empty()) std::abort();
  }
  for (const auto& station : table->stations) {
    if (!mastwise::channel_slot(station.raster, station.rf_channel)) std::abort();
    if (station.id.empty() || station.provenance.line < 2) std::abort();
    static_cast<void>(mastwise::catalog_search::words_of(station));
  }
  return 0;
}
