// General properties of the Irregular Terrain Model, and single figures worked out by hand.
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/itm/knife_edge.hpp"
#include "core/propagation/itm/medium.hpp"
#include "core/propagation/itm/normal_deviate.hpp"
#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

namespace {

using namespace mastwise;

itm::Link link_of(double transmitter_m, double receiver_m, double frequency_mhz = 527) {
  return {.frequency_mhz = frequency_mhz,
          .transmitter_height_m = transmitter_m,
          .receiver_height_m = receiver_m};
}

std::vector<double> waves(std::size_t intervals, double height_m) {
  std::vector<double> heights_m;
  for (std::size_t i = 0; i <= intervals; ++i) {
    const auto x = static_cast<double>(i);
    heights_m.push_back(300 + height_m * (std::sin(x / 31) + 0.4 * std::sin(x / 7 + 1)));
  }
  return heights_m;
}

double median_db(const Result<itm::Path>& path) {
  if (!path) FAIL(path.error().message());
  return itm::predict(*path, {}, {})->loss_db;
}

}  // namespace

TEST_CASE("A path has the same loss from its other end", "[itm]") {
  for (const double height_m : {0.0, 15.0, 120.0}) {
    auto heights_m = waves(613, height_m);
    const double there = median_db(itm::point_to_point(link_of(150, 4), {90, heights_m}));
    std::reverse(heights_m.begin(), heights_m.end());
    const double back = median_db(itm::point_to_point(link_of(4, 150), {90, heights_m}));
    CHECK(there == Approx(back).margin(0.02).epsilon(0));
  }
}

TEST_CASE("Loss over flat ground grows with distance without a jump", "[itm]") {
  for (const double frequency_mhz : {69.0, 194.0, 615.0}) {
    double before = 0;
    for (std::size_t intervals = 50; intervals <= 3000; intervals += 10) {
      const double loss = median_db(itm::point_to_point(
          link_of(150, 10, frequency_mhz), {100, std::vector<double>(intervals + 1, 200.0)}));
      INFO(frequency_mhz << " MHz at " << intervals / 10 << " km");
      if (before > 0) {
        CHECK(loss > before - 0.05);
        CHECK(loss < before + 3);
      }
      before = loss;
    }
  }
}

TEST_CASE("Area loss has no jump where one formula hands over to the next", "[itm]") {
  const auto link = link_of(150, 10);
  const auto line_of_sight = itm::area(link, {}, 20e3);
  REQUIRE(line_of_sight);
  REQUIRE(line_of_sight->range == itm::Range::line_of_sight);
  const double first_m = line_of_sight->smooth_horizon_sum_m;
  const auto scattered = itm::area(link, {}, 300e3);
  REQUIRE(scattered);
  REQUIRE(scattered->range == itm::Range::scatter);
  const double second_m = scattered->scatter->starting_distance_m;
  for (const double edge_m : {first_m, second_m}) {
    const auto before = itm::area(link, {}, edge_m * (1 - 1e-9));
    const auto after = itm::area(link, {}, edge_m * (1 + 1e-9));
    REQUIRE(before);
    REQUIRE(after);
    CHECK(before->range != after->range);
    CHECK(before->reference_attenuation_db ==
          Approx(after->reference_attenuation_db).margin(1e-5).epsilon(0));
  }
}

TEST_CASE("Loss rises with the percent of time, locations and situations", "[itm]") {
  const auto path = itm::point_to_point(link_of(150, 4), {90, waves(900, 60)});
  REQUIRE(path);
  for (int climate = 1; climate <= 7; ++climate) {
    auto there = *path;
    there.climate = static_cast<itm::Climate>(climate);
    double before = 0;
    for (double time = 1; time < 100; time += 1) {
      const double loss = itm::predict(there, {}, {.time = time})->loss_db;
      CHECK(loss > before);
      before = loss;
    }
    const double median = itm::predict(there, {}, {})->loss_db;
    CHECK(itm::predict(there, {}, {.location = 90})->loss_db > median);
    CHECK(itm::predict(there, {}, {.situation = 90})->loss_db > median);
  }
}

TEST_CASE("A variation that is switched off leaves no deviation", "[itm]") {
  const auto path = itm::area(link_of(150, 4), {}, 80e3);
  REQUIRE(path);
  const auto bare = itm::predict(*path, {.location_varies = false, .situation_varies = false},
                                 {.time = 50, .location = 99, .situation = 99});
  REQUIRE(bare);
  CHECK(bare->location_deviation_db == 0);
  CHECK(bare->situation_deviation_db == 0);
  CHECK(bare->loss_db == Approx(itm::predict(*path, {}, {})->loss_db).epsilon(1e-9));
}

TEST_CASE("Reliability and confidence are time and situation", "[itm]") {
  const auto both = itm::reliability_and_confidence(90, 70);
  CHECK(both.time == 90);
  CHECK(both.location == 50);
  CHECK(both.situation == 70);
}

TEST_CASE("A ridge hides the receiver and its foot is not the horizon", "[itm]") {
  auto heights_m = std::vector<double>(501, 100.0);
  heights_m[400] = 500;
  const auto path = itm::point_to_point(link_of(50, 4), {100, heights_m});
  REQUIRE(path);
  CHECK(path->terminals[0].horizon_distance_m == Approx(40e3));
  CHECK(path->terminals[1].horizon_distance_m == Approx(10e3));
  const double curvature = path->earth_curvature_per_m;
  CHECK(path->terminals[0].horizon_angle_rad == Approx(350 / 40e3 - curvature * 20e3));
  CHECK(path->terminals[1].horizon_angle_rad == Approx(396 / 10e3 - curvature * 5e3));
  CHECK(median_db(path) > 20 + median_db(itm::point_to_point(
                                   link_of(50, 4), {100, std::vector<double>(501, 100.0)})));
}

TEST_CASE("Horizons match a search point by point", "[itm]") {
  const auto heights_m = waves(1111, 80);
  const auto path = itm::point_to_point(link_of(150, 4), {90, heights_m});
  REQUIRE(path);
  const std::size_t last = heights_m.size() - 1;
  const auto height = [&](bool reversed, std::size_t i) {
    return heights_m[reversed ? last - i : i];
  };
  const auto found = itm::horizons(*path, {90, heights_m}, itm::relief(heights_m));
  for (const bool reversed : {false, true}) {
    const std::size_t end = reversed ? 1 : 0;
    const double antenna_m = height(reversed, 0) + path->terminals[end].structural_height_m;
    const double other_m = height(reversed, last) + path->terminals[1 - end].structural_height_m;
    double highest = -1;
    double distance_m = 0;
    for (std::size_t i = 1; i <= last; ++i) {
      const double d = 90 * static_cast<double>(i);
      const double top = i == last ? other_m : height(reversed, i);
      const double angle = (top - antenna_m) / d - 0.5 * path->earth_curvature_per_m * d;
      if (angle > highest) {
        highest = angle;
        distance_m = d;
      }
    }
    CHECK(found[end].distance_m == Approx(distance_m));
    CHECK(found[end].angle_rad == Approx(highest));
  }
}

TEST_CASE("A straight slope is fitted exactly and has no irregularity", "[itm]") {
  std::vector<double> heights_m;
  for (int i = 0; i <= 300; ++i) heights_m.push_back(100 + 2.5 * i);
  const itm::Ends line = itm::fitted_line(heights_m, 12.3, 250.9);
  CHECK(line.first_m == Approx(100));
  CHECK(line.last_m == Approx(850));
  CHECK(itm::irregularity_m({90, heights_m}, 10, 290) == Approx(0).margin(1e-9));
}

TEST_CASE("Irregularity is the range of eight tenths of the heights", "[itm]") {
  // A triangle wave's heights are evenly spread: 80 % of 100 m, over the 1 - 0.8 exp(-d / 50 km) of
  // the stretch (3.9).
  std::vector<double> heights_m;
  for (int i = 0; i <= 4000; ++i) heights_m.push_back(100 * std::abs(1 - std::fmod(i / 40.0, 2)));
  const double stretch = 1 - 0.8 * std::exp(-4000 * 25 / 50e3);
  CHECK(itm::irregularity_m({25, heights_m}, 0, 4000) == Approx(80 / stretch).epsilon(0.03));
}

TEST_CASE("Single figures match their published values", "[itm]") {
  // 4/3 earth at 301 N-units: NBS Technical Note 101, 4.
  const double bare_radius_m = 6370e3;
  CHECK(1 / itm::earth_curvature_per_m(301) == Approx(4.0 / 3 * bare_radius_m).epsilon(0.002));
  // Grazing a knife edge costs 6 dB, v = 1 costs 13.9, v = 2.4 costs 20.5:
  // Recommendation ITU-R P.526, single knife edge.
  CHECK(itm::knife_edge_db(0) == Approx(6.0).margin(0.05));
  CHECK(itm::knife_edge_db(1) == Approx(13.9).margin(0.1));
  CHECK(itm::knife_edge_db(2.4 * 2.4) == Approx(20.5).margin(0.1));
  // Free space at 1 km and 1 MHz: Recommendation ITU-R P.525.
  CHECK(itm::free_space_loss_db(1, 1000) == Approx(32.45));
  // Standard normal quantiles: Abramowitz and Stegun, table 26.5; the approximation's error is
  // below 4.5e-4.
  CHECK(itm::normal_deviate(0.5) == Approx(0).margin(4.5e-4));
  CHECK(itm::normal_deviate(0.1) == Approx(1.28155).margin(4.5e-4));
  CHECK(itm::normal_deviate(0.9) == Approx(-1.28155).margin(4.5e-4));
  CHECK(itm::normal_deviate(0.01) == Approx(2.32635).margin(4.5e-4));
}
