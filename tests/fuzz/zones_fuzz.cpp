#include "core/zones/zone_map.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>

namespace {

using namespace mastwise;

constexpr std::string_view kNames = "A\nBc\n";

void use(std::string file, bool known_names) {
  const auto read = zones::ZoneMap::load(std::move(file));
  if (!read) {
    if (read.error().what.empty()) std::abort();
    return;
  }
  for (const double latitude_deg : {-90.0, -45.0, -0.001, 0.0, 51.5, 90.0}) {
    for (const double longitude_deg : {-180.0, -179.99, -0.001, 0.0, 77.7, 179.999, 180.0}) {
      const std::string zone = read->zone_at(*Position::at_deg(latitude_deg, longitude_deg));
      constexpr std::array<std::string_view, 3> kKnown{"", "A", "Bc"};
      if (known_names && std::count(kKnown.begin(), kKnown.end(), zone) == 0) std::abort();
    }
  }
}

void append(std::string& file, std::uint32_t number) {
  for (int i = 0; i < 4; ++i) file.push_back(static_cast<char>(number >> 8 * i & 0xFF));
}

}  // namespace

// Reads the input as a file of zones, and as the runs after a valid beginning: rows of the south
// start with the first run, those of the north with the run of the first byte.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, std::size_t size) {
  use({data, data + size}, false);
  if (size == 0) return 0;
  constexpr std::uint32_t kRows = 10'800;
  const std::size_t runs = (size - 1) / 4;
  std::string file = "MWZONES1";
  append(file, static_cast<std::uint32_t>(kNames.size()));
  append(file, kRows);
  append(file, static_cast<std::uint32_t>(runs));
  file += kNames;
  for (std::uint32_t row = 0; row < kRows; ++row) append(file, row < kRows / 2 ? 0 : data[0]);
  file.append(data + 1, data + 1 + 4 * runs);
  use(std::move(file), true);
  return 0;
}
