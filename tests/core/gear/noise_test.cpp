#include "core/gear/noise.hpp"

#include <array>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise::gear;

namespace {

double noise_figure(std::vector<Stage> stages) {
  return cascade_noise_figure_db(stages);
}

}  // namespace

// Rounded values of ITU-R P.372's lines at the middle of low and high VHF.
TEST_CASE("man-made noise follows the Recommendation's lines") {
  const auto fam = [](NoiseEnvironment environment, double frequency_mhz) {
    return man_made_noise_figure_db(environment, frequency_mhz);
  };
  CHECK(fam(NoiseEnvironment::city, 69.0) == Approx(25.9).margin(0.06));
  CHECK(fam(NoiseEnvironment::residential, 69.0) == Approx(21.6).margin(0.06));
  CHECK(fam(NoiseEnvironment::rural, 69.0) == Approx(16.3).margin(0.06));
  CHECK(fam(NoiseEnvironment::quiet_rural, 69.0) == Approx(1.0).margin(0.06));
  CHECK(fam(NoiseEnvironment::city, 194.0) == Approx(13.4).margin(0.06));
  CHECK(fam(NoiseEnvironment::residential, 194.0) == Approx(9.1).margin(0.06));
  CHECK(fam(NoiseEnvironment::rural, 194.0) == Approx(3.8).margin(0.06));
}

// ITU-R P.372: galactic noise at 100 MHz is 52 - 46 = 6 dB.
TEST_CASE("external noise adds galactic and man-made noise as powers") {
  CHECK(galactic_noise_figure_db(100.0) == Approx(6.0).margin(1e-9));
  const double city = man_made_noise_figure_db(NoiseEnvironment::city, 69.0);
  CHECK(external_noise_figure_db(NoiseEnvironment::city, 69.0) > city);
  CHECK(external_noise_figure_db(NoiseEnvironment::city, 69.0) - city < 0.2);
  // Equal parts are 3.01 dB over each: the lines of residential and galactic noise cross where
  // 72.5 - 27.7 x = 52 - 23 x.
  const double crossing_mhz = std::pow(10.0, 20.5 / 4.7);
  CHECK(external_noise_figure_db(NoiseEnvironment::residential, crossing_mhz) -
            galactic_noise_figure_db(crossing_mhz) ==
        Approx(3.0103).margin(1e-3));
}

// kT0B by the trade's table: 290 K; -106.2 dBm in 6 MHz [FCC Sixth Report and Order App. A].
TEST_CASE("thermal noise follows the standards' bandwidths") {
  CHECK(thermal_noise_dbm(1.0) == Approx(-173.975).margin(0.001));
  CHECK(thermal_noise_dbm(6e6) == Approx(-106.2).margin(0.05));
  CHECK(thermal_noise_dbm(5.8e6) == Approx(-106.3).margin(0.05));
  CHECK(thermal_noise_dbm(7.61e6) == Approx(-105.2).margin(0.05));
  CHECK(thermal_noise_dbm(7.7e6) == Approx(-105.1).margin(0.05));
  CHECK(thermal_noise_dbm(5.57e6) == Approx(-106.5).margin(0.05));
}

// Friis. A passive loss at 290 K before a receiver adds to its noise figure in decibels.
TEST_CASE("the cascade's noise figure follows Friis") {
  CHECK(noise_figure({}) == 0.0);
  CHECK(noise_figure({{0.0, 8.0}}) == Approx(8.0));
  CHECK(noise_figure({loss_stage(4.0), {0.0, 8.0}}) == Approx(12.0).margin(1e-9));
  CHECK(noise_figure({loss_stage(4.0), loss_stage(3.5), {0.0, 8.0}}) == Approx(15.5).margin(1e-9));
  const Stage amplifier{.gain_db = 16.0, .noise_figure_db = 3.0};
  CHECK(noise_figure({amplifier, loss_stage(4.0), {0.0, 8.0}}) == Approx(3.7).margin(0.06));
  CHECK(noise_figure({amplifier, loss_stage(4.0), loss_stage(3.5), {0.0, 8.0}}) ==
        Approx(4.6).margin(0.06));
}

TEST_CASE("an amplifier helps most before the cable") {
  const Stage amplifier{.gain_db = 16.0, .noise_figure_db = 3.0};
  const double before = noise_figure({amplifier, loss_stage(4.0), {0.0, 8.0}});
  const double behind = noise_figure({loss_stage(4.0), amplifier, {0.0, 8.0}});
  CHECK(before < behind);
  CHECK(behind < noise_figure({loss_stage(4.0), {0.0, 8.0}}));
}
