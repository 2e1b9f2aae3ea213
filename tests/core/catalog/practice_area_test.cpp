#include "core/import/import_csv.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <cmath>
#include <cstdint>
#include <filesystem>
#include <set>
#include <string>

#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

using namespace mastwise;

namespace {

constexpr int kSide = 1201;  // samples along a tile's edge

std::string built(const std::string& name) {
  return test::build_folder() + "/assets/practice/" + name;
}

std::string tile_name(int south, int west) {
  return fmt::format("N{:02}W{:03}.hgt", south, west);
}

std::string tile(int south, int west) {
  std::string bytes = test::read_file(built(tile_name(south, west)));
  REQUIRE(bytes.size() == 2u * kSide * kSide);
  return bytes;
}

// Big-endian, rows from the north, columns from the west [SRTM documentation, NASA/USGS].
int sample_m(const std::string& bytes, int row, int column) {
  const auto at = static_cast<std::size_t>(2 * (row * kSide + column));
  return static_cast<unsigned char>(bytes[at]) * 256 + static_cast<unsigned char>(bytes[at + 1]);
}

double ground_m(const Position& position) {
  const int south = static_cast<int>(std::floor(position.latitude_deg()));
  const int west = static_cast<int>(std::floor(position.longitude_deg()));
  const std::string bytes = tile(south, -west);
  const double row = (south + 1 - position.latitude_deg()) * (kSide - 1);
  const double column = (position.longitude_deg() - west) * (kSide - 1);
  const int r = static_cast<int>(row);
  const int c = static_cast<int>(column);
  const double down = row - r;
  const double right = column - c;
  return (sample_m(bytes, r, c) * (1 - right) + sample_m(bytes, r, c + 1) * right) * (1 - down) +
         (sample_m(bytes, r + 1, c) * (1 - right) + sample_m(bytes, r + 1, c + 1) * right) * down;
}

StationTable practice_stations() {
  auto table = read_station_csv(test::read_file(built("stations.csv")), {"practice", ""});
  REQUIRE(table);
  return std::move(table).value();
}

Position practice_stop() {
  const auto json = nlohmann::json::parse(test::read_file(built("practice.json")));
  return *Position::at_deg(json["stop"]["latitude_deg"], json["stop"]["longitude_deg"]);
}

}  // namespace

TEST_CASE("the practice stations are invented, marked and plausible") {
  CHECK(test::read_file(built("stations.csv")).find("PRACTICE") != std::string::npos);
  const StationTable table = practice_stations();
  CHECK(table.rejected.empty());
  CHECK(table.stations.size() == 32);

  std::set<std::string> call_signs, networks;
  std::set<Polarization> polarizations;
  std::size_t translators = 0;
  for (const Station& station : table.stations) {
    INFO(station.call_sign);
    CHECK(station.call_sign.size() == 4);
    CHECK(station.call_sign.front() == 'Q');
    CHECK(call_signs.insert(station.call_sign).second);
    CHECK(station.rf_channel.number >= 2);
    CHECK(station.rf_channel.number <= 36);
    CHECK_FALSE(station.programs.empty());
    for (const Program& program : station.programs) {
      CHECK(program.virtual_channel.find('.') != std::string::npos);
      CHECK_FALSE(program.name.empty());
    }
    networks.insert(station.network);
    polarizations.insert(station.polarization);
    REQUIRE(station.erp_kw);
    REQUIRE(station.translator);
    // A translator stays below the 15 kW of the US rule for UHF [47 CFR 74.735(b), from memory].
    if (*station.translator) {
      ++translators;
      CHECK(*station.erp_kw <= 15.0);
    }
    CHECK(*station.erp_kw <= 1000.0);  // 47 CFR 73.622(f)(8), from memory
  }
  CHECK(networks.size() == 6);
  CHECK(polarizations.size() == 3);
  CHECK(translators == 7);
}

TEST_CASE("every practice station is on its hill, 15 to 160 km from the stop") {
  const Position stop = practice_stop();
  for (const Station& station : practice_stations().stations) {
    INFO(station.call_sign);
    REQUIRE(station.site_amsl_m);
    REQUIRE(station.antenna_amsl_m);
    CHECK(std::fabs(ground_m(station.position) - *station.site_amsl_m) <= 1.0);
    const double tower_m = *station.antenna_amsl_m - *station.site_amsl_m;
    CHECK(tower_m >= 15.0);
    CHECK(tower_m <= 150.0);
    double meters = 0.0;
    GeographicLib::Geodesic::WGS84().Inverse(stop.latitude_deg(), stop.longitude_deg(),
                                             station.position.latitude_deg(),
                                             station.position.longitude_deg(), meters);
    CHECK(meters >= 15e3);
    CHECK(meters <= 160e3);
  }
}

TEST_CASE("the practice tiles cover 160 km around the stop and join without a step") {
  const Position stop = practice_stop();
  for (int bearing_deg = 0; bearing_deg < 360; bearing_deg += 5) {
    double latitude_deg = 0.0, longitude_deg = 0.0;
    GeographicLib::Geodesic::WGS84().Direct(stop.latitude_deg(), stop.longitude_deg(), bearing_deg,
                                            160e3, latitude_deg, longitude_deg);
    CHECK(std::filesystem::exists(built(tile_name(static_cast<int>(std::floor(latitude_deg)),
                                                  -static_cast<int>(std::floor(longitude_deg))))));
  }
  int steps = 0;
  for (int south = 41; south <= 43; ++south) {
    for (int west = 117; west <= 121; ++west) {
      const std::string here = tile(south, west);
      if (west > 117) {
        const std::string east = tile(south, west - 1);
        for (int row = 0; row < kSide; ++row) {
          steps += sample_m(here, row, kSide - 1) != sample_m(east, row, 0);
        }
      }
      if (south < 43) {
        const std::string north = tile(south + 1, west);
        for (int column = 0; column < kSide; ++column) {
          steps += sample_m(here, 0, column) != sample_m(north, kSide - 1, column);
        }
      }
    }
  }
  CHECK(steps == 0);
}

// The stations' heights belong to these hills: other hills would leave them in the air. FNV-1a, 64
// bits, over the fifteen tiles from the south-west, row by row of tiles.
TEST_CASE("the practice hills are the same bytes on every machine") {
  std::uint64_t hash = 0xCBF29CE484222325u;
  for (int south = 41; south <= 43; ++south) {
    for (int west = 121; west >= 117; --west) {
      for (const char c : tile(south, west)) {
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001B3u;
      }
    }
  }
  CHECK(hash == 0x324300b61c81e756u);
}
