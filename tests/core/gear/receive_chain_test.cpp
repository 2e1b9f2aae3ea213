#include "core/gear/receive_chain.hpp"

#include "core/gear/antennas.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::gear;

namespace {

// The reference receiver of the US planning factors in one band, for the middle of the band.
struct PlanningFactors {
  double frequency_mhz;
  double dipole_factor_db;
  double gain_dbd;
  double line_loss_db;
  double noise_figure_db;
  double field_dbuvm;  // before rounding
  double rounded_dbuvm;
};

// FCC Sixth Report and Order App. A; ISED BPR-10 App. 8. C/N 15 dB, 6 MHz.
constexpr std::array<PlanningFactors, 3> kPlanning{{{69.0, -111.8, 4.0, 1.0, 10.0, 27.6, 28.0},
                                                    {194.0, -120.8, 6.0, 2.0, 10.0, 35.6, 36.0},
                                                    {615.0, -130.8, 10.0, 4.0, 7.0, 40.6, 41.0}}};

ChannelSlot slot_at(double center_mhz, double bandwidth_mhz, Band band) {
  return {center_mhz - bandwidth_mhz / 2.0, center_mhz + bandwidth_mhz / 2.0, center_mhz, band};
}

// 6 MHz at the 615 MHz of the planning factors.
ChannelSlot planning_slot() {
  return slot_at(615.0, 6.0, Band::uhf);
}

Gear plain_gear() {
  Gear gear;
  gear.antenna = typical_antenna(AntennaKind::short_yagi);
  gear.cable = {CableType::rg6, 10.0};
  gear.receiver_noise_figure_db = 7.0;
  return gear;
}

const Mode& eight_vsb() {
  return default_mode(BroadcastStandard::atsc1);
}

}  // namespace

TEST_CASE("the planning factors' fields add up from their parts") {
  for (const PlanningFactors& factors : kPlanning) {
    INFO(factors.frequency_mhz);
    CHECK(received_power_dbm(0.0, 0.0, factors.frequency_mhz) ==
          Approx(factors.dipole_factor_db).margin(0.05));
    const std::array chain{loss_stage(factors.line_loss_db),
                           Stage{.gain_db = 0.0, .noise_figure_db = factors.noise_figure_db}};
    const double noise_dbm = thermal_noise_dbm(6e6) + cascade_noise_figure_db(chain);
    const double field_dbuvm =
        field_for_power_dbuvm(noise_dbm + 15.0, factors.gain_dbd, factors.frequency_mhz);
    CHECK(field_dbuvm == Approx(factors.field_dbuvm).margin(0.08));
    CHECK(std::round(field_dbuvm) == factors.rounded_dbuvm);
  }
}

// At 615 MHz in the quiet countryside the sky is 12 dB under kT0B: it adds under 0.05 dB to the
// planning factors' receiver.
TEST_CASE("the whole chain gives the planning factors' UHF field, except for C/N and sky noise") {
  Gear gear = plain_gear();
  gear.antenna.uhf.gain_dbd = 10.0;
  gear.cable.length_m *= 4.0 / gear.cable.loss_db(615.0);
  const auto chain = receive_chain(gear, planning_slot(), eight_vsb(),
                                   NoiseEnvironment::quiet_rural, ChannelKind::gaussian);
  CHECK(chain.noise_figure_db == Approx(11.0).margin(1e-9));
  CHECK(chain.noise_bandwidth_hz == 6e6);
  CHECK(chain.gain_dbd == 10.0);
  CHECK(chain.required_cn_db == 15.19);
  const double sky_db =
      10.0 * std::log10(1.0 + std::pow(10.0, (chain.external_noise_db - 11.0) / 10));
  CHECK(sky_db < 0.05);
  CHECK(chain.required_field_dbuvm == Approx(40.6 + 0.19 + sky_db).margin(0.08));
}

// From the wave: P = E^2 / Z0 * 1.641 lambda^2 / (4 pi), in SI units.
TEST_CASE("the received power equals that of a half-wave dipole in a plane wave") {
  for (const double frequency_mhz : {57.0, 194.0, 615.0}) {
    const double wavelength_m = 299.792458 / frequency_mhz;
    const double field_v_per_m = 1e-6 * std::pow(10.0, 60.0 / 20.0);
    const double area_m2 = 1.641 * wavelength_m * wavelength_m / (4.0 * std::numbers::pi);
    const double power_w = field_v_per_m * field_v_per_m / 376.7303 * area_m2;
    CHECK(received_power_dbm(60.0, 0.0, frequency_mhz) ==
          Approx(10.0 * std::log10(power_w / 1e-3)).margin(0.01));
    CHECK(received_power_dbm(60.0, 7.0, frequency_mhz) ==
          Approx(received_power_dbm(60.0, 0.0, frequency_mhz) + 7.0).margin(1e-9));
    CHECK(field_for_power_dbuvm(received_power_dbm(43.2, 7.0, frequency_mhz), 7.0, frequency_mhz) ==
          Approx(43.2).margin(1e-9));
  }
}

// Friis with 4 dB of cable, receiver 8 dB and an amplifier of 16 dB with 3 dB.
TEST_CASE("amplifier, cable and splits determine the gear's noise figure") {
  Gear gear = plain_gear();
  gear.receiver_noise_figure_db = 8.0;
  gear.cable.length_m *= 4.0 / gear.cable.loss_db(615.0);
  const auto noise_figure = [&] {
    return receive_chain(gear, planning_slot(), eight_vsb(), NoiseEnvironment::rural)
        .noise_figure_db;
  };
  CHECK(noise_figure() == Approx(12.0).margin(1e-9));
  gear.splits = 2;
  CHECK(noise_figure() == Approx(15.5).margin(1e-9));
  gear.amplifier = Amplifier{.gain_db = 16.0, .noise_figure_db = 3.0, .overload_dbm = -20.0};
  CHECK(noise_figure() == Approx(4.6).margin(0.06));
  gear.splits = 1;
  CHECK(noise_figure() == Approx(3.7).margin(0.06));
}

// At 69 MHz in a city the external noise of 25.9 dB drowns the receiver: an amplifier gains next to
// nothing, where at 615 MHz it gains all that the noise figure does.
TEST_CASE("an amplifier does not help against noise from outside") {
  Gear without = plain_gear();
  Gear with = without;
  with.amplifier = Amplifier{.gain_db = 16.0, .noise_figure_db = 3.0, .overload_dbm = -20.0};
  const auto gained_db = [&](const ChannelSlot& slot, NoiseEnvironment environment) {
    return receive_chain(without, slot, eight_vsb(), environment).required_field_dbuvm -
           receive_chain(with, slot, eight_vsb(), environment).required_field_dbuvm;
  };
  CHECK(gained_db(slot_at(69.0, 6.0, Band::low_vhf), NoiseEnvironment::city) < 0.1);
  CHECK(gained_db(planning_slot(), NoiseEnvironment::quiet_rural) > 4.0);
}

TEST_CASE("the noise fills the bandwidth of standard and channel") {
  const auto& mode = default_mode(BroadcastStandard::dvb_t);
  const auto eight =
      receive_chain(plain_gear(), slot_at(500.0, 8.0, Band::uhf), mode, NoiseEnvironment::rural);
  const auto seven =
      receive_chain(plain_gear(), slot_at(500.0, 7.0, Band::uhf), mode, NoiseEnvironment::rural);
  CHECK(eight.noise_bandwidth_hz == Approx(7.61e6));
  CHECK(eight.noise_power_dbm - seven.noise_power_dbm ==
        Approx(10.0 * std::log10(8.0 / 7.0)).margin(1e-9));
  CHECK(eight.required_cn_db == mode.required_cn_db(ChannelKind::ricean));
}

// Ten equal signals are 10 dB over one; two 3.01 dB.
// By Friis: a passive loss in front adds to the noise figure of what follows.
TEST_CASE("an amplifier that is switched off costs what the signal loses in it") {
  Gear gear = plain_gear();
  gear.amplifier = Amplifier{.gain_db = 16.0, .noise_figure_db = 3.0, .overload_dbm = -20.0};
  const auto slot = *channel_slot(Raster::atsc, {30});
  const auto figure_db = [&](const Gear& of) {
    return receive_chain(of, slot, default_mode(BroadcastStandard::atsc1), NoiseEnvironment::rural,
                         ChannelKind::ricean)
        .noise_figure_db;
  };
  CHECK(figure_db(switched_off(gear)) - figure_db(plain_gear()) == Approx(10.0));
  CHECK(switched_off(plain_gear()) == plain_gear());
  CHECK_FALSE(overload(switched_off(gear), std::vector{0.0}));
}

TEST_CASE("powers add up") {
  CHECK_FALSE(summed_power_dbm({}));
  CHECK(*summed_power_dbm(std::vector{-30.0}) == Approx(-30.0));
  CHECK(*summed_power_dbm(std::vector{-30.0, -30.0}) == Approx(-26.9897).margin(1e-4));
  CHECK(*summed_power_dbm(std::vector<double>(10, -30.0)) == Approx(-20.0).margin(1e-9));
  CHECK(*summed_power_dbm(std::vector{-30.0, -90.0}) == Approx(-30.0).margin(1e-4));
}

TEST_CASE("strong signals overload the amplifier by their sum") {
  Gear gear = plain_gear();
  const std::vector<double> ten(10, -28.0);
  CHECK_FALSE(overload(gear, ten));  // without an amplifier
  gear.amplifier = Amplifier{.gain_db = 16.0, .noise_figure_db = 3.0, .overload_dbm = -20.0};
  CHECK_FALSE(overload(gear, {}));
  CHECK_FALSE(overload(gear, std::vector{-28.0}));
  CHECK_FALSE(overload(gear, std::vector{-28.0, -28.0, -28.0}));
  const auto much = overload(gear, ten);
  REQUIRE(much);
  CHECK(much->summed_dbm == Approx(-18.0).margin(1e-9));
  CHECK(much->limit_dbm == -20.0);
  CHECK(much->excess_db() == Approx(2.0).margin(1e-9));
}
