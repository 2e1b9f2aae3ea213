#include "core/geo/gpx.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

namespace {

std::size_t check(const GpxPlace& place, std::size_t bytes) {
  fuzz::require(std::fabs(place.position.latitude_deg()) <= 90.0);
  fuzz::require(std::fabs(place.position.longitude_deg()) <= 180.0);
  fuzz::require(!place.elevation_m || std::isfinite(*place.elevation_m));
  // The parser writes a byte of another encoding with at most three.
  fuzz::require(place.name.size() <= 3 * bytes && place.description.size() <= 3 * bytes);
  return 1;
}

}  // namespace

// Any bytes as a GPX file: places are on the earth, no line is empty, and there are no more places
// than the file has tags.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto read = read_gpx(fuzz::text_of(data, size));
  if (!fuzz::read_or_told(read)) return 0;
  std::size_t places = 0;
  for (const auto& place : read->waypoints) places += check(place, size);
  for (const auto& lines : {read->routes, read->tracks}) {
    for (const GpxLine& line : lines) {
      fuzz::require(!line.places.empty());
      for (const auto& place : line.places) places += check(place, size);
    }
  }
  constexpr std::size_t kShortestPlace = 20;
  fuzz::require(places * kShortestPlace <= size);
  fuzz::require(read->remarks.size() <= 22);
  return 0;
}
