#include "core/zones/zone_map.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace mastwise;

constexpr std::string_view kNames = "A\nBc\n";

void use(std::span<const std::byte> bytes, bool known_names) {
  const auto read = zones::ZoneMap::load(bytes);
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

void append(std::vector<std::byte>& bytes, std::uint32_t number) {
  for (int i = 0; i < 4; ++i) bytes.push_back(std::byte(number >> 8 * i & 0xFF));
}

}  // namespace

// Reads the input as a file of zones, and as the runs after a valid beginning: rows of the south
// start with the first run, those of the north with the run of the first byte.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, std::size_t size) {
  use(std::as_bytes(std::span(data, size)), false);
  if (size == 0) return 0;
  constexpr std::uint32_t kRows = 10'800;
  const std::size_t runs = (size - 1) / 4;
  std::vector<std::byte> bytes(8);
  std::memcpy(bytes.data(), "MWZONES1", 8);
  append(bytes, static_cast<std::uint32_t>(kNames.size()));
  append(bytes, kRows);
  append(bytes, static_cast<std::uint32_t>(runs));
  const auto names = std::as_bytes(std::span(kNames));
  bytes.insert(bytes.end(), names.begin(), names.end());
  for (std::uint32_t row = 0; row < kRows; ++row) append(bytes, row < kRows / 2 ? 0 : data[0]);
  const auto input = std::as_bytes(std::span(data + 1, 4 * runs));
  bytes.insert(bytes.end(), input.begin(), input.end());
  use(bytes, true);
  return 0;
}
