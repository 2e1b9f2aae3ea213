#include "tests/support/assets.hpp"

#include "platform/zipped_file.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <cstring>

#include <catch2/catch.hpp>

namespace mastwise::test {

std::vector<std::byte> places_bytes() {
  auto bytes = platform::unpack_one(
      source_folder() + "/assets/places/places.zip", [](auto) { return true; },
      [](auto) { return true; });
  REQUIRE(bytes);
  return *std::move(bytes);
}

const places::Gazetteer& gazetteer() {
  static const places::Gazetteer all = [] {
    const auto bytes = places_bytes();
    auto read = places::Gazetteer::load(bytes);
    REQUIRE(read);
    return *std::move(read);
  }();
  return all;
}

namespace {

std::string asset(const std::string& name) {
  return read_file(source_folder() + "/assets/" + name);
}

}  // namespace

std::vector<std::byte> borders_bytes() {
  const std::string text = asset("borders/borders.bin");
  std::vector<std::byte> bytes(text.size());
  std::memcpy(bytes.data(), text.data(), text.size());
  return bytes;
}

std::string zones_file() {
  return asset("zones/zones.bin");
}

const zones::ZoneMap& zone_map() {
  static const zones::ZoneMap all = [] {
    auto read = zones::ZoneMap::load(zones_file());
    REQUIRE(read);
    return *std::move(read);
  }();
  return all;
}

const map::Borders& borders() {
  static const map::Borders all = [] {
    auto read = map::Borders::load(borders_bytes());
    REQUIRE(read);
    return *std::move(read);
  }();
  return all;
}

}  // namespace mastwise::test
