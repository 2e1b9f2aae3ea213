#include "core/map/borders.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <span>
#include <vector>

namespace {

using namespace mastwise;

void use(std::span<const std::byte> bytes) {
  const auto read = map::Borders::load(bytes);
  if (!read) return;
  const auto plane = map::Projection::around(*Position::at_deg(10.0, 20.0));
  if (!plane) std::abort();
  for (const auto& line : read->on_plane(*plane, 9'000e3)) {
    if (line.points.size() < 2) std::abort();
    for (const auto& point : line.points) {
      if (!(std::hypot(point.east_m, point.north_m) <= map::Projection::kFarthestM)) std::abort();
    }
  }
}

}  // namespace

// Reads the input as a borders file, and as the rows and steps after a valid header.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, std::size_t size) {
  const auto input = std::as_bytes(std::span(data, size));
  use(input);
  constexpr std::size_t kRowBytes = 22, kMostRows = 3;
  const std::size_t rows = std::min(size / (2 * kRowBytes), kMostRows);
  std::vector<std::byte> bytes(16);
  std::memcpy(bytes.data(), "MWBORDR1", 8);
  bytes[8] = std::byte(rows);
  const std::size_t steps = size - rows * kRowBytes;
  for (std::size_t i = 0; i < 4; ++i) bytes[12 + i] = std::byte(steps >> 8 * i & 0xFF);
  bytes.insert(bytes.end(), input.begin(), input.end());
  use(bytes);
  return 0;
}
