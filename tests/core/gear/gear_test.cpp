#include "core/gear/gear.hpp"

#include "core/gear/antennas.hpp"
#include "core/text/words.hpp"

#include <cmath>
#include <set>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::gear;

namespace {

constexpr auto kBands = {Band::low_vhf, Band::high_vhf, Band::uhf};

double rg6(double frequency_mhz) {
  return Cable{CableType::rg6, 100.0}.loss_db(frequency_mhz);
}

void check_between(double value, double low, double high) {
  CHECK(value >= low);
  CHECK(value <= high);
}

}  // namespace

// Common practice, no source: RG-6 per 100 m.
TEST_CASE("cable loss by type, length and frequency") {
  CHECK(rg6(55.0) == Approx(5.0));
  CHECK(rg6(211.0) == Approx(10.0));
  CHECK(rg6(470.0) == Approx(15.0));
  CHECK(rg6(700.0) == Approx(18.0));
  // The skin effect: loss grows with the root of the frequency, so that four times the frequency is
  // twice the loss, to the scatter of the table.
  CHECK(rg6(13.75) == Approx(2.5));
  CHECK(rg6(2800.0) == Approx(36.0));
  for (double frequency = 20.0; frequency < 900.0; frequency += 10.0) {
    CHECK(rg6(frequency + 10.0) > rg6(frequency));
    CHECK(rg6(4.0 * frequency) / rg6(frequency) == Approx(2.0).epsilon(0.05));
  }
  CHECK(Cable{CableType::rg6, 10.0}.loss_db(470.0) == Approx(1.5));
  CHECK(Cable{CableType::rg6, 0.0}.loss_db(470.0) == 0.0);
  check_between(Cable{CableType::rg59, 100.0}.loss_db(470.0) / rg6(470.0), 1.25, 1.35);
}

// Common practice, no source.
TEST_CASE("splits lose their power") {
  CHECK(split_loss_db(1) == 0.0);
  CHECK(split_loss_db(2) == 3.5);
  CHECK(split_loss_db(4) == 7.0);
  CHECK(split_loss_db(3) == 7.0);
  CHECK(split_loss_db(8) == 10.5);
  CHECK(split_loss_db(0) == 0.0);
}

// The trade's ranges for gain over a dipole, width and front to back: common practice, no source.
TEST_CASE("typical antennas are within the trade's ranges for their kind") {
  const auto omni = typical_antenna(AntennaKind::omnidirectional);
  check_between(omni.low_vhf.gain_dbd, -6.0, -3.0);
  check_between(omni.high_vhf.gain_dbd, -3.0, 0.0);
  check_between(omni.uhf.gain_dbd, -3.0, 1.0);
  const auto two_faces = typical_antenna(AntennaKind::bidirectional);
  check_between(two_faces.low_vhf.gain_dbd, -4.0, 0.0);
  check_between(two_faces.high_vhf.gain_dbd, -1.0, 2.0);
  check_between(two_faces.uhf.gain_dbd, 0.0, 4.0);
  for (const Band band : kBands) {
    check_between(*two_faces.in(band).pattern.half_power_beamwidth_deg(), 69.999, 90.001);
    CHECK(two_faces.in(band).pattern.front_to_back_db() == Approx(0.0).margin(1e-9));
  }
  const auto check_beam = [](const BandAntenna& antenna, double gain_low, double gain_high,
                             double width_low, double width_high, double back_low,
                             double back_high) {
    check_between(antenna.gain_dbd, gain_low, gain_high);
    check_between(*antenna.pattern.half_power_beamwidth_deg(), width_low, width_high);
    check_between(antenna.pattern.front_to_back_db(), back_low, back_high);
  };
  const auto short_yagi = typical_antenna(AntennaKind::short_yagi);
  check_between(short_yagi.low_vhf.gain_dbd, 3.0, 5.0);
  check_beam(short_yagi.high_vhf, 4.0, 7.0, 55.0, 65.0, 10.0, 15.0);
  check_beam(short_yagi.uhf, 5.0, 8.0, 45.0, 60.0, 12.0, 15.0);
  const auto long_yagi = typical_antenna(AntennaKind::long_yagi);
  check_beam(long_yagi.high_vhf, 8.0, 10.0, 40.0, 50.0, 15.0, 15.0);
  check_beam(long_yagi.uhf, 10.0, 14.0, 25.0, 40.0, 15.0, 20.0);
  const auto log_periodic = typical_antenna(AntennaKind::log_periodic);
  check_beam(log_periodic.high_vhf, 5.0, 7.0, 59.999, 60.001, 15.0, 15.0);
  check_beam(log_periodic.uhf, 6.0, 8.0, 50.0, 60.0, 15.0, 20.0);
  check_beam(typical_antenna(AntennaKind::small_panel).uhf, 5.0, 9.0, 50.0, 65.0, 10.0, 18.0);
  check_beam(typical_antenna(AntennaKind::large_panel).uhf, 10.0, 12.0, 45.0, 60.0, 10.0, 20.0);
}

TEST_CASE("an antenna has a separate response for each band") {
  for (const AntennaKind kind : kAntennaKinds) {
    const auto antenna = typical_antenna(kind);
    CHECK(antenna.name == to_text(kind));
    CHECK(&antenna.in(Band::low_vhf) == &antenna.low_vhf);
    CHECK(&antenna.in(Band::high_vhf) == &antenna.high_vhf);
    CHECK(&antenna.in(Band::uhf) == &antenna.uhf);
  }
}

// Common practice, no source: masts of rigs 3.5 to 4.5 m; amplifiers 12 to 20 dB, noise 1.5 to 4
// dB, overload at -25 to -15 dBm.
TEST_CASE("the presets are within the usual ranges of travelers' gear") {
  std::set<std::string> names;
  for (const Gear& gear : presets()) {
    INFO(gear.name);
    CHECK(names.insert(words::upper(gear.name)).second);
    check_between(gear.height_m, 3.5, 6.0);
    check_between(gear.cable.length_m, 5.0, 30.0);
    CHECK((gear.splits == 1 || gear.splits == 2 || gear.splits == 4));
    CHECK((gear.name.find("with amplifier") != std::string::npos) == gear.amplifier.has_value());
    if (!gear.amplifier) continue;
    check_between(gear.amplifier->gain_db, 12.0, 20.0);
    check_between(gear.amplifier->noise_figure_db, 1.5, 4.0);
    check_between(gear.amplifier->overload_dbm, -25.0, -15.0);
  }
  CHECK(names.size() >= 6);
}

TEST_CASE("a preset is found by its name in any case, and an unknown name lists all") {
  const auto found = preset(" omnidirectional ROOF disc with amplifier");
  REQUIRE(found);
  CHECK(found->name == "Omnidirectional roof disc with amplifier");
  CHECK(found->height_m == 3.5);
  const auto missing = preset("rabbit ears");
  REQUIRE_FALSE(missing);
  CHECK(missing.error().what == "\"rabbit ears\" is not a known gear preset");
  for (const Gear& gear : presets()) {
    CHECK(missing.error().remedy.find(gear.name) != std::string::npos);
  }
}
