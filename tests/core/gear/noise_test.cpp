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
    return man_made_noise_figure_db(environment, frequency_mhz).value();
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
  const double city = man_made_noise_figure_db(NoiseEnvironment::city, 69.0).value();
  CHECK(external_noise_figure_db(NoiseEnvironment::city, 69.0) > city);
  CHECK(external_noise_figure_db(NoiseEnvironment::city, 69.0) - city < 0.2);
  // Equal parts are 3.01 dB over each: the lines of quiet rural and galactic noise cross where
  // 53.6 - 28.6 x = 52 - 23 x.
  const double crossing_mhz = std::pow(10.0, 1.6 / 5.6);
  CHECK(external_noise_figure_db(NoiseEnvironment::quiet_rural, crossing_mhz) -
            galactic_noise_figure_db(crossing_mhz) ==
        Approx(3.0103).margin(1e-3));
}

// ITU-R BT.2033-2, tables 31 and 32: the allowance for man-made noise with a matched antenna over a
// receiver with a noise figure of 6 dB is in band III 8 dB (urban) and 5 dB (rural), at UHF 1 dB
// and 0 dB. So P.372's city and residential lines are the table's urban and rural places at 200
// MHz, and the UHF figures are those to use where P.372's range of 250 MHz ends.
TEST_CASE("man-made noise agrees with the allowances for planning television") {
  const auto allowance_db = [](NoiseEnvironment environment, double frequency_mhz) {
    const auto figure_db = man_made_noise_figure_db(environment, frequency_mhz);
    const double receiver = std::pow(10.0, 0.6);
    const double noise = figure_db ? std::pow(10.0, *figure_db / 10.0) : 0.0;
    return 10.0 * std::log10((receiver + noise) / receiver);
  };
  CHECK(std::round(allowance_db(NoiseEnvironment::city, 200.0)) == 8.0);
  CHECK(std::round(allowance_db(NoiseEnvironment::residential, 200.0)) == 5.0);
  for (const double uhf_mhz : {473.0, 600.0, 695.0}) {
    CHECK(allowance_db(NoiseEnvironment::city, uhf_mhz) == Approx(1.0).margin(1e-9));
    for (const auto other :
         {NoiseEnvironment::residential, NoiseEnvironment::rural, NoiseEnvironment::quiet_rural}) {
      CHECK(allowance_db(other, uhf_mhz) == 0.0);
    }
  }
}

// ITU-R P.372, table 2: decile deviations with location 8.4, 5.8 and 6.8 dB; one in ten of a normal
// distribution lies 1.2816 deviations above the median.
TEST_CASE("man-made noise spreads over places as the Recommendation says") {
  constexpr double kTenth = 1.2816;
  CHECK(kTenth * man_made_deviation_db(NoiseEnvironment::city) == Approx(8.4));
  CHECK(kTenth * man_made_deviation_db(NoiseEnvironment::residential) == Approx(5.8));
  CHECK(kTenth * man_made_deviation_db(NoiseEnvironment::rural) == Approx(6.8));
  CHECK(kTenth * man_made_deviation_db(NoiseEnvironment::quiet_rural) == Approx(6.8));
}

TEST_CASE("the spread of man-made noise counts by its share of all noise") {
  const auto deviation_db = [](const NoiseSources& sources, double frequency_mhz) {
    return noise_deviation_db(sources, frequency_mhz, 4.0);
  };
  const double city_db = man_made_deviation_db(NoiseEnvironment::city);
  // Nearly all noise is man-made: 25.9 dB against 4 dB of the chain and 9.7 of the sky.
  CHECK(deviation_db(NoiseEnvironment::city, 69.0) > 0.95 * city_db);
  CHECK(deviation_db(NoiseEnvironment::city, 69.0) < city_db);
  // Quiet rural noise of 1.0 dB is a tenth of the whole.
  CHECK(deviation_db(NoiseEnvironment::quiet_rural, 69.0) < 0.6);
  CHECK(deviation_db(NoiseEnvironment::rural, 600.0) == 0.0);
  // The derivative of the total in dB by the man-made part in dB.
  const NoiseSources rural(NoiseEnvironment::rural);
  const double man_made_db = *man_made_noise_figure_db(NoiseEnvironment::rural, 194.0);
  const double others = std::pow(10.0, 0.4) + std::pow(10.0, galactic_noise_figure_db(194.0) / 10);
  const auto total_db = [&](double more_db) {
    return 10.0 * std::log10(others + std::pow(10.0, (man_made_db + more_db) / 10.0));
  };
  const double slope = (total_db(0.01) - total_db(-0.01)) / 0.02;
  CHECK(deviation_db(rural, 194.0) ==
        Approx(slope * man_made_deviation_db(NoiseEnvironment::rural)).margin(1e-4));
}

// Common practice, no source: an inverter is as loud as a city, at VHF only.
TEST_CASE("an inverter adds noise at VHF and none at UHF") {
  const NoiseSources off(NoiseEnvironment::rural);
  const NoiseSources on(NoiseEnvironment::rural, true);
  CHECK(external_noise_figure_db(on, 69.0) - external_noise_figure_db(off, 69.0) > 8.0);
  CHECK(external_noise_figure_db(on, 600.0) == external_noise_figure_db(off, 600.0));
  CHECK(noise_deviation_db(on, 69.0, 4.0) > noise_deviation_db(off, 69.0, 4.0));
  CHECK(noise_deviation_db(on, 600.0, 4.0) == 0.0);
  // In a city it doubles the noise.
  CHECK(external_noise_figure_db({NoiseEnvironment::city, true}, 69.0) -
            external_noise_figure_db(NoiseEnvironment::city, 69.0) ==
        Approx(3.0).margin(0.1));
}

TEST_CASE("a noise environment is read by its name") {
  CHECK(*parse_noise_environment(" Quiet Rural ") == NoiseEnvironment::quiet_rural);
  CHECK_FALSE(parse_noise_environment("suburban"));
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
