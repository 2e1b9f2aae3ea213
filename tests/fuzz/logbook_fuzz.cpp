#include "core/geo/gpx.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/logbook/record_cells.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as a logbook's table and as a GPX file. An accepted table stays the same when written
// and read again, and each row is counted. Places are on the earth.
namespace {

void check_table(std::string_view text) {
  const auto table = mastwise::read_logbook_csv(text);
  if (!table) {
    if (table.error().message().empty()) std::abort();
    return;
  }
  if (table->rejected.size() > table->rows_read) std::abort();
  for (const auto& row : table->rejected) {
    if (row.line < 2 || row.line > text.size() + 1 || row.reason.empty()) std::abort();
  }
  for (const auto& outcome : table->content.outcomes) {
    if (mastwise::fault(outcome)) std::abort();
  }
  const auto again = mastwise::read_logbook_csv(mastwise::logbook_csv(table->content));
  if (!again || !again->rejected.empty() || again->content != table->content) std::abort();
}

void check_places(std::string_view text) {
  const auto places = mastwise::read_gpx(text);
  if (!places) {
    if (places.error().message().empty()) std::abort();
    return;
  }
  for (const auto& place : places->waypoints) {
    if (!(std::fabs(place.position.latitude_deg()) <= 90.0)) std::abort();
  }
  for (const auto& lines : {places->routes, places->tracks}) {
    for (const auto& line : lines) {
      if (line.places.empty()) std::abort();
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  check_table(text);
  // Random bytes rarely make a whole header, so this adds a row under the right one.
  static const std::string kHeader = mastwise::logbook_csv({});
  check_table(kHeader + std::string(text));
  check_places(text);
  return 0;
}
