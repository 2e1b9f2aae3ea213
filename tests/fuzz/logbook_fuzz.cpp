#include "core/geo/gpx.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/logbook/logbook_gpx.hpp"
#include "core/logbook/record_cells.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as a logbook's table. An accepted table is written with rounded figures, and that stays
// the same when read and written again; each row is counted, and its stops are waypoints of a GPX
// file.
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
  const std::string written = mastwise::logbook_csv(table->content);
  const auto again = mastwise::read_logbook_csv(written);
  if (!again || !again->rejected.empty()) std::abort();
  if (mastwise::logbook_csv(again->content) != written) std::abort();
  // As many waypoints as stops.
  const auto places = mastwise::read_gpx(mastwise::logbook_gpx(table->content));
  if (!places || !places->remarks.empty()) std::abort();
  const auto& stops = table->content.stops;
  const auto live = std::count_if(stops.begin(), stops.end(),
                                  [](const auto& stop) { return !stop.mark.deleted; });
  if (places->waypoints.size() != static_cast<std::size_t>(live)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  check_table(text);
  // Random bytes rarely make a whole header, so this adds a row under the right one.
  static const std::string kHeader = mastwise::logbook_csv({});
  check_table(kHeader + std::string(text));
  return 0;
}
