#include "core/import/guess_mapping.hpp"
#include "core/import/import_table.hpp"
#include "core/import/mapping_parts.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

namespace {

void check_written(const TableMapping& mapping) {
  const auto again = parse_table_mapping(to_json(mapping));
  fuzz::require(again && to_json(*again) == to_json(mapping));
}

}  // namespace

// Any bytes as the head of a table whose columns must be guessed: a guessed mapping, and every
// correction of it that is offered, can be saved and read back, and the table is read by whole
// rows.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view head = fuzz::text_of(data, size);
  const auto guess = guess_mapping(head, {"fuzz", ""});
  if (!fuzz::read_or_told(guess)) return 0;
  check_written(guess->mapping);
  for (std::size_t i = 0; i < guess->doubts.size(); ++i) {
    const Doubt& doubt = guess->doubts[i];
    fuzz::require(doubt.chosen < doubt.options.size() && !part_of(doubt).empty());
    for (std::size_t option = 0; option < doubt.options.size(); ++option) {
      GuessedMapping other = *guess;
      choose(other, i, option);
      check_written(other.mapping);
    }
  }
  for (const MappingPart& part : mapping_parts(guess->mapping)) {
    for (const std::string& reading : part.readings) {
      TableMapping corrected = guess->mapping;
      correct(corrected, part.name, reading, {});
      check_written(corrected);
    }
  }
  TableMapping plain = guess->mapping;
  plain.datum = Datum::wgs84;  // preparing another takes longer than all of the rest
  const auto table = read_station_table(head, plain);
  if (!fuzz::read_or_told(table)) return 0;
  fuzz::require(table->stations.size() + table->rejected.size() == table->rows_read);
  for (const Station& station : table->stations) {
    fuzz::require(!station.erp_kw || std::isfinite(*station.erp_kw));
    fuzz::require(!station.haat_m || std::isfinite(*station.haat_m));
  }
  fuzz::require(sample_stations(head, plain).size() <= 10);
  return 0;
}
