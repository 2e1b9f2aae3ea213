#include "core/geo/place_list.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

// Any bytes as a table of places: each is on the earth, and there are no more than rows.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto list = read_place_list(fuzz::text_of(data, size));
  if (!fuzz::read_or_told(list)) return 0;
  fuzz::require(!list->places.empty() && list->places.size() < size);
  fuzz::require(list->remarks.size() <= 20);
  for (const GpxPlace& place : list->places) {
    fuzz::require(std::fabs(place.position.latitude_deg()) <= 90.0);
    fuzz::require(std::fabs(place.position.longitude_deg()) <= 180.0);
    // A byte of Windows-1252 becomes three at most.
    fuzz::require(place.name.size() <= 3 * size);
  }
  return 0;
}
