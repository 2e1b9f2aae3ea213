#include "core/gear/noise_hunt.hpp"

#include "core/gear/gear.hpp"
#include "core/gear/modes.hpp"
#include "core/gear/receive_chain.hpp"

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::gear {
namespace {

std::vector<NoiseStep> hunt() {
  return {{.turned_off = "", .readings_db = {12.0, 12.0, 12.0, 12.0}},
          {.turned_off = "inverter", .readings_db = {18.0}},
          {.turned_off = "charger", .readings_db = {20.0, 20.0}},
          {.turned_off = "fridge", .readings_db = {20.0}}};
}

}  // namespace

// By hand: the noise that is left is 1, at 20 dB. At 18 dB it is 10^0.2 = 1.585, at 12 dB 10^0.8 =
// 6.310. So the inverter makes 4.725, the charger 0.585 and the fridge nothing.
TEST_CASE("noise hunt: what each appliance adds, by hand") {
  const auto rises = noise_rises(hunt());
  REQUIRE(rises.size() == 3);
  for (const auto& rise : rises) REQUIRE(rise);
  CHECK(rises[0]->db == Approx(10.0 * std::log10(5.725)).margin(0.01));
  CHECK(rises[1]->db == Approx(2.0).margin(0.01));
  CHECK(rises[2]->db == Approx(0.0).margin(0.01));
  // All together they are the 8 dB from 12 to 20 dB.
  std::vector<ApplianceNoise> all;
  for (const auto& rise : rises) all.push_back({.name = "a", .band = Band::low_vhf, .rise = *rise});
  const NoiseRises sum = rises_of(all);
  REQUIRE(sum[0]);
  CHECK(sum[0]->db == Approx(8.0).margin(0.01));
  CHECK_FALSE(sum[1]);
  CHECK_FALSE(sum[2]);
  // With the inverter off 2 dB remain; with all off the band is still known to be quiet.
  all[0].on = false;
  CHECK(rises_of(all)[0]->db == Approx(2.0).margin(0.01));
  for (ApplianceNoise& one : all) one.on = false;
  CHECK(rises_of(all)[0]->db == Approx(0.0).margin(0.01));
}

// The error of a difference of two equal means is the root of two errors of 0.5 dB. A rise much
// larger than what is left follows the first reading and the last one, decibel for decibel.
TEST_CASE("noise hunt: errors follow from those of the readings") {
  const std::vector<NoiseStep> equal{{.readings_db = {20.0}},
                                     {.turned_off = "a", .readings_db = {20.0}}};
  CHECK(noise_rises(equal)[0]->sigma_db == Approx(0.5 * std::sqrt(2.0)).margin(0.02));
  const std::vector<NoiseStep> loud{{.readings_db = {5.0}},
                                    {.turned_off = "a", .readings_db = {25.0}}};
  CHECK(noise_rises(loud)[0]->db == Approx(20.0).margin(0.05));
  CHECK(noise_rises(loud)[0]->sigma_db == Approx(0.5 * std::sqrt(2.0)).margin(0.02));
  const std::vector<NoiseStep> worse{{.readings_db = {20.0}},
                                     {.turned_off = "a", .readings_db = {17.0}}};
  CHECK(noise_rises(worse)[0]->db == 0.0);
  CHECK(std::isfinite(noise_rises(worse)[0]->sigma_db));
}

// The standard error of 10, 12 and 14 is their deviation of 2 over the root of 3.
TEST_CASE("noise hunt: the mean of a step and its error") {
  CHECK_FALSE(mean_of({}));
  CHECK(mean_of({.readings_db = {15.0}})->sigma_db == 0.5);
  const auto mean = mean_of({.readings_db = {10.0, 12.0, 14.0}});
  CHECK(mean->mean_db == Approx(12.0));
  CHECK(mean->sigma_db == Approx(2.0 / std::sqrt(3.0)));
  CHECK(mean_of({.readings_db = {15.0, 15.0, 15.0, 15.0}})->sigma_db == 0.3);
}

TEST_CASE("noise hunt: a step without readings tells nothing of its appliances") {
  auto steps = hunt();
  steps[1].readings_db.clear();
  const auto rises = noise_rises(steps);
  CHECK_FALSE(rises[0]);
  CHECK_FALSE(rises[1]);
  CHECK(rises[2]);
  CHECK(noise_rises(std::vector<NoiseStep>{}).empty());
  CHECK(noise_rises(std::vector<NoiseStep>{{}}).empty());
}

TEST_CASE("measured appliances take the inverter's place in their band only") {
  const Gear gear = presets().front();
  const Mode mode = default_mode(BroadcastStandard::atsc1);
  const auto noise_dbm = [&](int channel, const NoiseSources& sources) {
    return receive_chain(gear, *channel_slot(Raster::atsc, {channel}), mode, sources,
                         ChannelKind::ricean)
        .noise_power_dbm;
  };
  const NoiseSources quiet(NoiseEnvironment::rural), inverter(NoiseEnvironment::rural, true);
  const std::vector<ApplianceNoise> found{
      {.name = "inverter", .band = Band::high_vhf, .rise = {.db = 3.5, .sigma_db = 0.5}}};
  const NoiseSources measured(NoiseEnvironment::rural, true, rises_of(found));
  CHECK(noise_dbm(9, measured) == Approx(noise_dbm(9, quiet) + 3.5));
  CHECK(noise_dbm(4, measured) == noise_dbm(4, inverter));
  CHECK(noise_dbm(20, measured) == noise_dbm(20, inverter));
  CHECK(noise_dbm(4, inverter) > noise_dbm(4, quiet) + 1.0);
}

}  // namespace mastwise::gear
