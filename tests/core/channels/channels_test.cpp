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

// Source: 47 CFR 73.603(a), its runs of 6 MHz (US government, public domain).
TEST_CASE("every ATSC slot is within its range of the regulator's table") {
  const struct {
    int first, last;
    double from_mhz, to_mhz;
    Band band;
  } runs[] = {{2, 4, 54.0, 72.0, Band::low_vhf},
              {5, 6, 76.0, 88.0, Band::low_vhf},
              {7, 13, 174.0, 216.0, Band::high_vhf},
              {14, 36, 470.0, 608.0, Band::uhf}};
  for (const auto& run : runs) {
    double low_mhz = run.from_mhz;
    for (int number = run.first; number <= run.last; ++number, low_mhz += 6.0) {
      INFO("channel " << number);
      const ChannelSlot expected{low_mhz, low_mhz + 6.0, low_mhz + 3.0, run.band};
      CHECK(channel_slot(Raster::atsc, {number}) == expected);
      CHECK(channel_at(Raster::atsc, low_mhz + 3.0) == RfChannel{number});
    }
    CHECK(low_mhz == run.to_mhz);
  }
  CHECK(channels_of(Raster::atsc) == 35);
  CHECK_FALSE(channel_slot(Raster::atsc, {1}));
  CHECK_FALSE(channel_slot(Raster::atsc, {37}));
  CHECK_FALSE(channel_slot(Raster::atsc, {9, 'A'}));
  CHECK(to_text(channel_slot(Raster::atsc, {7})->band) == "high VHF");
}

// Source: the published band plans: GE06 (ITU) for Europe, ACMA's for Australia, ARIB STD-B31 for
// Japan and ABNT NBR 15601 for Brazil (their numbers from memory); the ends of each run.
TEST_CASE("the other channel plans have their published ends") {
  const struct {
    Raster raster;
    RfChannel channel;
    double center_mhz, bandwidth_mhz;
  } edges[] = {{Raster::europe, {5}, 177.5, 7.0},         {Raster::europe, {12}, 226.5, 7.0},
               {Raster::europe, {21}, 474.0, 8.0},        {Raster::europe, {48}, 690.0, 8.0},
               {Raster::australia, {6}, 177.5, 7.0},      {Raster::australia, {9}, 198.5, 7.0},
               {Raster::australia, {9, 'A'}, 205.5, 7.0}, {Raster::australia, {10}, 212.5, 7.0},
               {Raster::australia, {12}, 226.5, 7.0},     {Raster::australia, {28}, 529.5, 7.0},
               {Raster::australia, {51}, 690.5, 7.0},     {Raster::japan, {13}, 473.142857, 6.0},
               {Raster::japan, {52}, 707.142857, 6.0},    {Raster::brazil, {7}, 177.142857, 6.0},
               {Raster::brazil, {13}, 213.142857, 6.0},   {Raster::brazil, {14}, 473.142857, 6.0},
               {Raster::brazil, {51}, 695.142857, 6.0}};
  for (const auto& edge : edges) {
    INFO(to_text(edge.raster) << ' ' << to_text(edge.channel));
    const auto slot = channel_slot(edge.raster, edge.channel);
    REQUIRE(slot);
    CHECK(slot->center_mhz == Approx(edge.center_mhz).margin(1e-6).epsilon(0));
    CHECK(slot->bandwidth_mhz() == edge.bandwidth_mhz);
    CHECK(channel_at(edge.raster, slot->center_mhz) == edge.channel);
  }
}

TEST_CASE("every ATSC channel matches the published table") {
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

TEST_CASE("every channel of the other channel plans matches the published band plans") {
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

TEST_CASE("channels and channel plans read back as written") {
  CHECK(*parse_rf_channel(" 9a ") == RfChannel{9, 'A'});
  CHECK(to_text(RfChannel{9, 'A'}) == "9A");
  for (const char* text : {"", "0", "-3", "9AB", "A9", "6.1", "99999999999"}) {
    INFO(text);
    CHECK_FALSE(parse_rf_channel(text));
  }
  CHECK(*parse_raster("atsc") == Raster::atsc);
  CHECK(parse_raster("Mars").error().message() ==
        "\"Mars\" is not a channel plan; choose one of: ATSC, Europe, Australia, Japan, Brazil");
}
