#include "core/geo/geodesic.hpp"
#include "core/geo/notation.hpp"
#include "tests/fuzz/fuzz.hpp"

using namespace mastwise;
using fuzz::require;

namespace {

// The coarsest step is a tenth of a second: half of it on each axis is under 2.2 m.
void require_round_trip(Position position, Notation notation) {
  constexpr double kCoarsestM = 2.2;
  const auto back = parse_position(format_position(position, notation));
  require(static_cast<bool>(back));
  require(path_between(position, *back).distance_m <= kCoarsestM);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const auto position = parse_position(text);
  if (!position) {
    require(!position.error().what.empty() && !position.error().remedy.empty());
    require(position.error().character && *position.error().character <= size);
    return 0;
  }
  require(position->latitude_deg() >= -90.0 && position->latitude_deg() <= 90.0);
  require(position->longitude_deg() >= -180.0 && position->longitude_deg() < 180.0);
  for (const Notation notation :
       {Notation::Decimal, Notation::DegreesMinutes, Notation::DegreesMinutesSeconds,
        Notation::UtmUps, Notation::Mgrs}) {
    require_round_trip(*position, notation);
  }
  return 0;
}
