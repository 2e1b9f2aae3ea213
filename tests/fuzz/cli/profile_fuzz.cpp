#include "app/cli/profile_table.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

// Any bytes as a path profile: refused with a reason, or columns of equal length with numbers.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Scratch scratch;
  const std::string path = scratch.write("profile.csv", fuzz::text_of(data, size));
  const auto table = cli::read_profile_table(path);
  if (!fuzz::read_or_told(table)) return 0;
  const std::size_t points = table->distances_km.size();
  fuzz::require(table->heights_m.size() == points);
  fuzz::require(table->clutter_m.empty() || table->clutter_m.size() == points);
  fuzz::require(table->zones.empty() || table->zones.size() == points);
  for (const auto* column : {&table->distances_km, &table->heights_m, &table->clutter_m}) {
    for (const double number : *column) fuzz::require(std::isfinite(number));
  }
  const auto spacing_m = table->spacing_m();
  fuzz::require(!spacing_m || std::isfinite(*spacing_m));
  return 0;
}
