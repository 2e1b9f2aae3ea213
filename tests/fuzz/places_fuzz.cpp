#include "core/places/gazetteer.hpp"

#include <algorithm>
#include <cmath>
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

// The bytes after a matching header, so that the fuzzer gets past it.
std::vector<std::byte> with_header(std::span<const uint8_t> data) {
  constexpr std::size_t kCellsBytes = 2 * 180 * 360, kBytesOfPlace = 11, kTexts = 5;
  const auto take = [&]() -> std::size_t {
    if (data.empty()) return 0;
    const std::size_t value = data.front();
    data = data.subspan(1);
    return value;
  };
  const std::size_t places = take() % 4, cell = take() % 64'800;
  std::size_t sizes[kTexts];
  std::size_t body = kBytesOfPlace * places;
  for (std::size_t& size : sizes) body += size = take() % 64;
  std::vector<std::byte> bytes(32 + kCellsBytes + body);
  std::memcpy(bytes.data(), "MWPLACE1", 8);
  bytes[8] = std::byte(places);
  for (std::size_t i = 0; i < kTexts; ++i) bytes[12 + 4 * i] = std::byte(sizes[i]);
  bytes[32 + 2 * cell] = std::byte(places);
  const std::size_t given = std::min(body, data.size());
  std::memcpy(bytes.data() + 32 + kCellsBytes, data.data(), given);
  return bytes;
}

void use(const places::Gazetteer& gazetteer, std::string_view typed) {
  const Position here = *Position::at_deg(10.0, 20.0);
  for (std::size_t i = 0; i < gazetteer.size(); ++i) gazetteer.place(i);
  for (const auto& found : gazetteer.search(typed, 5, here)) {
    if (!std::isfinite(found.way->distance_m)) std::abort();
  }
  const auto near = gazetteer.nearest_place(here);
  if (near && !std::isfinite(near->distance_m)) std::abort();
  if (near && gazetteer.size() == 0) std::abort();
}

}  // namespace

// Reads the input as a places file, and as the bytes after its header.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, std::size_t size) {
  const std::span input(data, size);
  const std::string_view typed(reinterpret_cast<const char*>(data), size);
  if (const auto read = places::Gazetteer::load(std::as_bytes(input))) use(*read, typed);
  if (const auto read = places::Gazetteer::load(with_header(input))) use(*read, typed);
  return 0;
}
