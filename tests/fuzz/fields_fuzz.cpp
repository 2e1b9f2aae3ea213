#include "core/catalog/catalog_search.hpp"
#include "core/import/station_fields.hpp"
#include "core/logbook/record.hpp"
#include "core/stations/transmit_pattern.hpp"
#include "core/text/iso_time.hpp"
#include "core/text/json_text.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

// Any bytes as each small thing that a cell, a query or a kept value holds: what is read is within
// its range, and written and read again it is the same.
namespace {

void check_times(std::string_view text) {
  if (const auto day = parse_iso_day(text)) fuzz::require(iso_day(UtcTime(*day)) == text);
  if (const auto time = parse_iso_utc(text)) fuzz::require(parse_iso_utc(iso_utc(*time)) == time);
}

void check_pattern(std::string_view text) {
  const auto pattern = parse_transmit_pattern(text);
  if (!fuzz::read_or_told(pattern)) return;
  const auto again = parse_transmit_pattern(to_text(*pattern));
  fuzz::require(again && *again == *pattern);
  for (double degrees = 0.0; degrees < 360.0; degrees += 7.3) {
    const auto direction = Bearing<True>::degrees(degrees);
    const double field = pattern->relative_field(direction);
    fuzz::require(field >= 0.0 && field <= 1.0);
    const double loss_db = pattern->loss_db(direction);
    fuzz::require(loss_db >= 0.0 && loss_db <= 40.0);
  }
}

template <class Parse>
void check_choice(Parse parse, std::string_view text) {
  const auto choice = parse(text);
  if (fuzz::read_or_told(choice)) fuzz::require(*parse(to_text(*choice)) == *choice);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  check_times(text);
  check_pattern(text);
  check_choice(parse_rf_channel, text);
  check_choice(parse_raster, text);
  check_choice(parse_broadcast_standard, text);
  check_choice(parse_polarization, text);
  check_choice(parse_outcome, text);
  check_choice(parse_band, text);
  for (const bool comma : {false, true}) {
    const auto number = fields::parse_number(text, comma);
    fuzz::require(!number || std::isfinite(*number));
  }
  static_cast<void>(catalog_search::match_query(text));
  // What is read as JSON can be copied and written.
  if (const auto json = read_json(text); !json.is_discarded()) {
    const auto written = json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    fuzz::require(read_json(written) == json);
  }
  return 0;
}
