// Refused inputs and inputs with a warning. Ranges: TR 82-100 and the model's documented limits
// of 20 MHz to 20 GHz, 0.5 to 3,000 m, 250 to 400 N-units, 2,000 km.
#include "core/propagation/itm/itm.hpp"

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace {

using namespace mastwise;
using Catch::Contains;

const std::vector<double> kFlat(501, 100.0);  // 50 km at 100 m
const double kNan = std::numeric_limits<double>::quiet_NaN();

itm::Link good_link() {
  return {.frequency_mhz = 527, .transmitter_height_m = 150, .receiver_height_m = 10};
}

template <class Change>
itm::Link changed(Change change) {
  itm::Link link = good_link();
  change(link);
  return link;
}

void refuses(const itm::Link& link, const std::string& word) {
  const auto profile = itm::point_to_point(link, {100, kFlat});
  INFO(word);
  REQUIRE_FALSE(profile);
  CHECK_THAT(profile.error().message(), Contains(word) && Contains("give "));
  const auto area = itm::area(link, {}, 50e3);
  REQUIRE_FALSE(area);
  CHECK_THAT(area.error().message(), Contains(word));
}

void refuses_profile(double spacing_m, const std::vector<double>& heights_m,
                     const std::string& word) {
  const auto path = itm::point_to_point(good_link(), {spacing_m, heights_m});
  INFO(word);
  REQUIRE_FALSE(path);
  CHECK_THAT(path.error().message(), Contains(word));
}

itm::Warnings warnings(const itm::Link& link, double distance_m = 50e3) {
  const auto path = itm::area(link, {}, distance_m);
  if (!path) FAIL(path.error().message());
  return path->warnings;
}

}  // namespace

TEST_CASE("A good link on flat ground is accepted without a warning", "[itm]") {
  const auto path = itm::point_to_point(good_link(), {100, kFlat});
  REQUIRE(path);
  CHECK(path->warnings == 0);
  CHECK(itm::listed(path->warnings).empty());
}

TEST_CASE("Each quantity of the link out of its range is refused by name", "[itm]") {
  for (const double bad : {19.9, 20001.0, kNan, -527.0}) {
    refuses(changed([&](auto& link) { link.frequency_mhz = bad; }), "frequency");
  }
  for (const double bad : {0.49, 3001.0, kNan}) {
    refuses(changed([&](auto& link) { link.transmitter_height_m = bad; }), "transmitter height");
    refuses(changed([&](auto& link) { link.receiver_height_m = bad; }), "receiver height");
  }
  for (const int bad : {0, 8}) {
    refuses(changed([&](auto& link) { link.climate = static_cast<itm::Climate>(bad); }), "climate");
  }
  refuses(changed([](auto& link) { link.polarization = static_cast<itm::Polarization>(2); }),
          "polarization");
  for (const double bad : {0.99, 101.0, kNan}) {
    refuses(changed([&](auto& link) { link.relative_permittivity = bad; }), "permittivity");
  }
  for (const double bad : {0.0, -1.0, kNan, std::numeric_limits<double>::infinity()}) {
    refuses(changed([&](auto& link) { link.conductivity_s_per_m = bad; }), "conductivity");
  }
  for (const double bad : {249.0, 401.0, kNan}) {
    refuses(changed([&](auto& link) { link.sea_level_refractivity = bad; }), "refractivity");
  }
}

TEST_CASE("Impossible ground constants are refused", "[itm]") {
  refuses(changed([](auto& link) {
            link.relative_permittivity = 1;
            link.conductivity_s_per_m = 1e-3;
          }),
          "ground");
}

TEST_CASE("An invalid profile is refused with the place of the fault", "[itm]") {
  refuses_profile(100, {100, 100}, "2 heights");
  refuses_profile(0, kFlat, "spacing");
  refuses_profile(kNan, kFlat, "spacing");
  refuses_profile(5000, kFlat, "path length");
  for (const std::size_t index : {0u, 7u, 250u, 499u, 500u}) {
    for (const double bad :
         {kNan, -1001.0, 10001.0, -std::numeric_limits<double>::infinity(), -32768.0}) {
      auto heights_m = kFlat;
      heights_m[index] = bad;
      refuses_profile(100, heights_m, "height " + std::to_string(index) + " ");
    }
  }
  refuses_profile(100, std::vector<double>(501, 9000.0), "N-units");
}

TEST_CASE("Area terrain and distance out of range are refused", "[itm]") {
  const auto message = [](const itm::AreaTerrain& terrain, double distance_m) {
    const auto path = itm::area(good_link(), terrain, distance_m);
    return path ? std::string("taken") : path.error().message();
  };
  CHECK_THAT(message({.delta_h_m = -1}, 50e3), Contains("irregularity"));
  CHECK_THAT(message({.delta_h_m = kNan}, 50e3), Contains("irregularity"));
  CHECK_THAT(message({.transmitter_siting = static_cast<itm::Siting>(3)}, 50e3),
             Contains("transmitter's siting"));
  CHECK_THAT(message({.receiver_siting = static_cast<itm::Siting>(-1)}, 50e3),
             Contains("receiver's siting"));
  for (const double bad : {0.0, -5.0, 2.1e6, kNan}) {
    CHECK_THAT(message({}, bad), Contains("path length"));
  }
}

TEST_CASE("Percentages and modes out of range are refused", "[itm]") {
  const auto path = itm::area(good_link(), {}, 50e3);
  REQUIRE(path);
  for (const double bad : {0.0, 100.0, -3.0, kNan}) {
    CHECK_THAT(itm::predict(*path, {}, {.time = bad}).error().message(), Contains("time"));
    CHECK_THAT(itm::predict(*path, {}, {.location = bad}).error().message(), Contains("location"));
    CHECK_THAT(itm::predict(*path, {}, {.situation = bad}).error().message(),
               Contains("situation"));
  }
  const itm::Variability unknown = {.mode = static_cast<itm::VariabilityMode>(4)};
  CHECK_THAT(itm::predict(*path, unknown, {}).error().message(), Contains("variability mode"));
}

TEST_CASE("The customary codes of variability are understood", "[itm]") {
  for (const int bad : {-1, 4, 9, 14, 34, 40}) CHECK_FALSE(itm::variability_from_code(bad));
  const auto plain = itm::variability_from_code(3);
  REQUIRE(plain);
  CHECK(plain->mode == itm::VariabilityMode::broadcast);
  CHECK(plain->location_varies);
  CHECK(plain->situation_varies);
  const auto without_location = itm::variability_from_code(12);
  REQUIRE(without_location);
  CHECK(without_location->mode == itm::VariabilityMode::mobile);
  CHECK_FALSE(without_location->location_varies);
  CHECK(without_location->situation_varies);
  const auto bare = itm::variability_from_code(30);
  REQUIRE(bare);
  CHECK_FALSE(bare->location_varies);
  CHECK_FALSE(bare->situation_varies);
}

TEST_CASE("Values near their limits are accepted with a warning", "[itm]") {
  using itm::has;
  using itm::Warning;
  CHECK(has(warnings(changed([](auto& link) { link.frequency_mhz = 30; })), Warning::frequency));
  CHECK(has(warnings(changed([](auto& link) { link.transmitter_height_m = 1500; })),
            Warning::transmitter_height));
  CHECK(has(warnings(changed([](auto& link) { link.receiver_height_m = 0.7; })),
            Warning::receiver_height));
  CHECK(has(warnings(good_link(), 1.2e6), Warning::long_path));
  CHECK(has(warnings(good_link(), 900), Warning::short_path));
  CHECK(has(warnings(good_link(), 600), Warning::steep_path));
  CHECK(has(itm::point_to_point(good_link(), {100, std::vector<double>(501, 3000.0)})->warnings,
            Warning::thin_air));
  auto wall = kFlat;
  wall[1] = wall[499] = 400;
  const auto behind_walls = itm::point_to_point(good_link(), {100, wall});
  REQUIRE(behind_walls);
  CHECK(has(behind_walls->warnings, Warning::transmitter_horizon_near));
  CHECK(has(behind_walls->warnings, Warning::receiver_horizon_near));
  CHECK(has(behind_walls->warnings, Warning::transmitter_horizon_steep));
  CHECK(has(behind_walls->warnings, Warning::receiver_horizon_steep));
  CHECK(itm::listed(behind_walls->warnings).size() == 4);
  const auto extreme = itm::predict(*behind_walls, {}, {.time = 99.95});
  REQUIRE(extreme);
  CHECK(has(extreme->warnings, Warning::extreme_quantile));
  CHECK_FALSE(
      has(itm::predict(*behind_walls, {}, {.time = 99})->warnings, Warning::extreme_quantile));
  for (unsigned bit = 0; bit < 14; ++bit) {
    CHECK_FALSE(to_text(static_cast<itm::Warning>(1u << bit)).empty());
  }
}
