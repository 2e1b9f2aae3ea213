#include "core/channels/channels.hpp"

#include "tests/support/reference.hpp"

#include <map>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const std::map<std::string, Raster> kRasterNames{
    {"Europe VHF III", Raster::europe},      {"Europe UHF (GE06)", Raster::europe},
    {"Australia VHF", Raster::australia},    {"Australia UHF", Raster::australia},
    {"Japan UHF (ISDB-T)", Raster::japan},   {"Brazil VHF (ISDB-Tb)", Raster::brazil},
    {"Brazil UHF (ISDB-Tb)", Raster::brazil}};

int channels_of(Raster raster) {
  int count = 0;
  for (int number = 0; number < 200; ++number) {
    for (const char letter : {'\0', 'A', 'B'}) {
      if (channel_slot(raster, RfChannel{number, letter})) ++count;
    }
  }
  return count;
}

}  // namespace

// 47 CFR 73.603(a).
TEST_CASE("the ATSC slots at the edges of their runs") {
  const ChannelSlot two{54.0, 60.0, 57.0, Band::low_vhf};
  CHECK(channel_slot(Raster::atsc, {2}) == two);
  CHECK(channel_slot(Raster::atsc, {4})->high_mhz == 72.0);
  CHECK(channel_slot(Raster::atsc, {5})->low_mhz == 76.0);
  CHECK(channel_slot(Raster::atsc, {6})->high_mhz == 88.0);
  CHECK(channel_slot(Raster::atsc, {13})->high_mhz == 216.0);
  CHECK(channel_slot(Raster::atsc, {36})->high_mhz == 608.0);
  CHECK_FALSE(channel_slot(Raster::atsc, {1}));
  CHECK_FALSE(channel_slot(Raster::atsc, {37}));
  CHECK_FALSE(channel_slot(Raster::atsc, {9, 'A'}));
  CHECK(to_text(channel_slot(Raster::atsc, {7})->band) == "high VHF");
}

TEST_CASE("every ATSC channel is that of the published table") {
  const auto path = test::reference("planning/us_atsc_channels.csv");
  if (!path) return;
  const auto lines = test::read_lines(*path);
  int rows = 0;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const auto cells = test::split(lines[i], ',');
    if (cells.size() < 6) continue;
    INFO(lines[i]);
    const auto slot = channel_slot(Raster::atsc, *parse_rf_channel(cells[0]));
    REQUIRE(slot);
    CHECK(slot->low_mhz == std::stod(cells[1]));
    CHECK(slot->high_mhz == std::stod(cells[2]));
    CHECK(slot->center_mhz == std::stod(cells[3]));
    const std::map<std::string, Band> bands{
        {"low-VHF", Band::low_vhf}, {"high-VHF", Band::high_vhf}, {"UHF", Band::uhf}};
    CHECK(slot->band == bands.at(cells[5]));
    ++rows;
  }
  CHECK(rows == 35);
  CHECK(channels_of(Raster::atsc) == rows);
}

TEST_CASE("every channel of the other rasters is that of the published band plans") {
  const auto path = test::reference("planning/other_rasters.csv");
  if (!path) return;
  const auto lines = test::read_lines(*path);
  std::map<Raster, int> rows;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const auto cells = test::split(lines[i], ',');
    if (cells.size() != 4) continue;
    INFO(lines[i]);
    const Raster raster = kRasterNames.at(cells[0]);
    const RfChannel channel = *parse_rf_channel(cells[1]);
    const auto slot = channel_slot(raster, channel);
    REQUIRE(slot);
    CHECK(slot->center_mhz == Approx(std::stod(cells[2])).margin(1e-6));
    CHECK(slot->bandwidth_mhz() == std::stod(cells[3]));
    CHECK(channel_at(raster, slot->center_mhz) == channel);
    ++rows[raster];
  }
  for (const auto& [raster, count] : rows) {
    INFO(to_text(raster));
    CHECK(channels_of(raster) == count);
  }
  CHECK(rows.size() == 4);
}

TEST_CASE("a frequency with an offset finds its channel") {
  CHECK(channel_at(Raster::europe, 474.167) == RfChannel{21});
  CHECK(channel_at(Raster::australia, 205.625) == RfChannel{9, 'A'});
  CHECK_FALSE(channel_at(Raster::europe, 470.0));
}

TEST_CASE("channels and rasters are read as they are written") {
  CHECK(*parse_rf_channel(" 9a ") == RfChannel{9, 'A'});
  CHECK(to_text(RfChannel{9, 'A'}) == "9A");
  for (const char* text : {"", "0", "-3", "9AB", "A9", "6.1", "99999999999"}) {
    INFO(text);
    CHECK_FALSE(parse_rf_channel(text));
  }
  CHECK(*parse_raster("atsc") == Raster::atsc);
  CHECK(parse_raster("Mars").error().message() ==
        "\"Mars\" is not a channel raster; known are ATSC, Europe, Australia, Japan, Brazil");
}
