#include "core/gear/modes.hpp"

#include <cmath>
#include <string>
#include <string_view>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::gear;

namespace {

constexpr auto kAll = {BroadcastStandard::atsc1, BroadcastStandard::atsc3, BroadcastStandard::dvb_t,
                       BroadcastStandard::dvb_t2, BroadcastStandard::isdb_t};

const Mode* named(BroadcastStandard standard, std::string_view name) {
  for (const Mode& mode : modes(standard)) {
    if (mode.name == name) return &mode;
  }
  return nullptr;
}

void check_mode(BroadcastStandard standard, std::string_view name, double gaussian, double ricean,
                double rayleigh) {
  INFO(name);
  const Mode* mode = named(standard, name);
  REQUIRE(mode);
  CHECK(mode->gaussian_cn_db == gaussian);
  CHECK(mode->ricean_cn_db == ricean);
  CHECK(mode->rayleigh_cn_db == rayleigh);
}

double bits_of(std::string_view modulation) {
  if (modulation == "QPSK") return 2.0;
  if (modulation == "16QAM") return 4.0;
  if (modulation == "64QAM") return 6.0;
  REQUIRE(modulation == "256QAM");
  return 8.0;
}

// Bits in each carrier's cell, from the mode's name: "64QAM 3/4" has 4.5.
double bits_per_cell(const Mode& mode) {
  const std::string name(mode.name);
  const auto blank = name.find(' ');
  const auto stroke = name.find('/');
  const double rate = std::stod(name.substr(blank + 1)) / std::stod(name.substr(stroke + 1));
  return bits_of(std::string_view(name).substr(0, blank)) * rate;
}

}  // namespace

// ITU-R BT.2033-2, table 2.
TEST_CASE("DVB-T2 has the C/N of the Report") {
  const auto t2 = BroadcastStandard::dvb_t2;
  CHECK(modes(t2).size() == 14);
  check_mode(t2, "QPSK 1/2", 2.4, 2.6, 3.4);
  check_mode(t2, "16QAM 2/3", 10.3, 10.5, 12.2);
  check_mode(t2, "64QAM 5/6", 18.2, 18.7, 21.8);
  check_mode(t2, "256QAM 3/5", 18.2, 18.4, 20.5);
  check_mode(t2, "256QAM 2/3", 19.7, 20.0, 22.1);
  check_mode(t2, "256QAM 5/6", 23.9, 24.4, 28.0);
}

// EN 300 744 annex A, from memory.
TEST_CASE("DVB-T has the C/N of its standard") {
  const auto t = BroadcastStandard::dvb_t;
  CHECK(modes(t).size() == 15);
  check_mode(t, "64QAM 1/2", 14.4, 14.7, 16.0);
  check_mode(t, "64QAM 2/3", 16.5, 17.1, 19.3);
  check_mode(t, "64QAM 3/4", 18.0, 18.6, 21.7);
  CHECK(named(t, "64QAM 2/3")->basis == Basis::from_memory);
}

// ARIB STD-B31, from memory; echoes cost as much as with DVB-T's same code and modulation.
TEST_CASE("ISDB-T has the C/N of its standard") {
  const auto t = BroadcastStandard::isdb_t;
  CHECK(named(t, "64QAM 1/2")->gaussian_cn_db == 16.5);
  CHECK(named(t, "64QAM 2/3")->gaussian_cn_db == 18.7);
  CHECK(named(t, "64QAM 3/4")->gaussian_cn_db == 20.1);
  CHECK(named(t, "64QAM 5/6")->gaussian_cn_db == 21.3);
  CHECK(named(t, "64QAM 7/8")->gaussian_cn_db == 22.0);
  for (const Mode& mode : modes(t)) {
    INFO(mode.name);
    const Mode* like = named(BroadcastStandard::dvb_t, mode.name);
    REQUIRE(like);
    CHECK(mode.ricean_cn_db - mode.gaussian_cn_db ==
          Approx(like->ricean_cn_db - like->gaussian_cn_db).margin(1e-9));
    CHECK(mode.rayleigh_cn_db - mode.gaussian_cn_db ==
          Approx(like->rayleigh_cn_db - like->gaussian_cn_db).margin(1e-9));
  }
}

// Common practice, no source, to 1.5 dB: -6 dB for the most robust, 15 to 18 for 256QAM 9 and
// 10/15.
TEST_CASE("ATSC 3.0 has the C/N of common practice") {
  const auto three = BroadcastStandard::atsc3;
  CHECK(named(three, "QPSK 2/15")->gaussian_cn_db == Approx(-6.0).margin(1.5));
  CHECK(named(three, "256QAM 9/15")->gaussian_cn_db == Approx(16.5).margin(1.5));
  CHECK(named(three, "256QAM 10/15")->gaussian_cn_db == Approx(16.5).margin(1.5));
}

// The Shannon limit: b bits in a cell need a C/N of at least 2^b - 1 with any code. That
// ATSC 3.0 comes within 2.5 dB of it is common practice, no source.
TEST_CASE("no mode beats the Shannon limit, and ATSC 3.0 is near it") {
  for (const auto standard : kAll) {
    if (standard == BroadcastStandard::atsc1) continue;
    for (const Mode& mode : modes(standard)) {
      INFO(to_text(standard) << " " << mode.name);
      const double limit_db = 10.0 * std::log10(std::exp2(bits_per_cell(mode)) - 1.0);
      CHECK(mode.gaussian_cn_db > limit_db);
      if (standard == BroadcastStandard::atsc3) CHECK(mode.gaussian_cn_db < limit_db + 2.5);
    }
  }
}

TEST_CASE("echoes never help, and every figure has a source") {
  for (const auto standard : kAll) {
    REQUIRE_FALSE(modes(standard).empty());
    for (const Mode& mode : modes(standard)) {
      INFO(to_text(standard) << " " << mode.name);
      CHECK(mode.standard == standard);
      CHECK_FALSE(mode.source.empty());
      CHECK(mode.required_cn_db(ChannelKind::gaussian) < mode.required_cn_db(ChannelKind::ricean));
      CHECK(mode.required_cn_db(ChannelKind::ricean) < mode.required_cn_db(ChannelKind::rayleigh));
    }
  }
}

// 15.19 dB at threshold [FCC OET Bulletin 69]. The others: the usual mode of
// main programs, common practice, no source.
TEST_CASE("a station with an unknown mode gets the usual one") {
  CHECK(default_mode(BroadcastStandard::atsc1).required_cn_db(ChannelKind::gaussian) == 15.19);
  CHECK(default_mode(BroadcastStandard::atsc3).name == "256QAM 9/15");
  CHECK(default_mode(BroadcastStandard::dvb_t).name == "64QAM 2/3");
  CHECK(default_mode(BroadcastStandard::dvb_t2).name == "256QAM 2/3");
  CHECK(default_mode(BroadcastStandard::isdb_t).name == "64QAM 3/4");
  for (const auto standard : kAll) CHECK(default_mode(standard).standard == standard);
}

// DVB-T: 1705 carriers at 8/7 elementary periods of 8, 7, 6 MHz: 7.61, 6.66, 5.71 MHz [EN 300 744].
TEST_CASE("noise bandwidths match their standards") {
  const auto mhz = [](BroadcastStandard standard, double channel) {
    return noise_bandwidth_hz(standard, channel) / 1e6;
  };
  CHECK(mhz(BroadcastStandard::atsc1, 6.0) == Approx(6.0));
  CHECK(mhz(BroadcastStandard::atsc3, 6.0) == Approx(5.83));
  CHECK(mhz(BroadcastStandard::dvb_t, 8.0) == Approx(7.61).margin(0.005));
  CHECK(mhz(BroadcastStandard::dvb_t, 7.0) == Approx(6.66).margin(0.005));
  CHECK(mhz(BroadcastStandard::dvb_t, 6.0) == Approx(5.71).margin(0.005));
  CHECK(mhz(BroadcastStandard::dvb_t2, 8.0) == Approx(7.7).margin(0.02));
  CHECK(mhz(BroadcastStandard::isdb_t, 6.0) == Approx(5.57).margin(0.005));
}
