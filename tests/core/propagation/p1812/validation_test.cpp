#include "core/propagation/p1812/p1812.hpp"

#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::p1812 {

namespace {

const double kNan = std::numeric_limits<double>::quiet_NaN();

Link good_link() {
  return {.frequency_mhz = 600.0,
          .transmitter_height_m = 100.0,
          .receiver_height_m = 10.0,
          .path_latitude_deg = 45.0};
}

struct Ground {
  std::vector<double> distances_km = {0.0, 1.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0};
  std::vector<double> heights_m = std::vector<double>(11, 50.0);
  std::vector<double> clutter_m = std::vector<double>(11, 5.0);
  std::vector<Zone> zones = std::vector<Zone>(11, Zone::inland);

  Profile view() const {
    return {.distances_km = distances_km,
            .heights_m = heights_m,
            .clutter_m = clutter_m,
            .zones = zones};
  }
};

std::string error_of(const Profile& profile, const Link& link) {
  Scratch scratch;
  const auto path = analyze_path(profile, link, scratch);
  return path ? "" : path.error().message();
}

Warnings warnings_of(const Profile& profile, const Link& link) {
  Scratch scratch;
  const auto path = analyze_path(profile, link, scratch);
  REQUIRE(path);
  return path->warnings;
}

}  // namespace

TEST_CASE("Inputs at the ends of their ranges are accepted, and beyond them refused by name") {
  const struct {
    const char* name;
    double Link::*member;
    double lowest, highest;
  } members[] = {
      {"frequency", &Link::frequency_mhz, 30.0, 6000.0},
      {"transmitter antenna height", &Link::transmitter_height_m, 1.0, 3000.0},
      {"receiver antenna height", &Link::receiver_height_m, 1.0, 3000.0},
      {"path latitude", &Link::path_latitude_deg, -90.0, 90.0},
      {"transmitter's distance to the coast", &Link::transmitter_coast_km, 0.0, 1e6},
      {"receiver's distance to the coast", &Link::receiver_coast_km, 0.0, 1e6},
      {"prediction resolution", &Link::prediction_resolution_m, 1.0, 10000.0},
  };
  const Ground ground;
  for (const auto& one : members) {
    Link link = good_link();
    for (const double allowed : {one.lowest, one.highest}) {
      link.*one.member = allowed;
      CHECK(error_of(ground.view(), link).empty());
    }
    for (const double refused :
         {std::nextafter(one.lowest, -1e9), std::nextafter(one.highest, 1e9), kNan}) {
      link.*one.member = refused;
      CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains(one.name));
    }
  }
}

TEST_CASE("A link without a latitude, with strange air or too great a spread is refused") {
  const Ground ground;
  Link link = good_link();
  link.path_latitude_deg = Link{}.path_latitude_deg;
  CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains("latitude"));
  link = good_link();
  link.refractivity.gradient_n_per_km = 151.0;
  CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains("gradient"));
  link = good_link();
  link.refractivity.sea_level_n = 199.0;
  CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains("refractivity"));
  link = good_link();
  link.location_deviation_db = 31.0;
  CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains("deviation"));
  link = good_link();
  link.frequency_mhz = 3500.0;
  link.receiver_clutter = {TerminalClutter::Kind::built, 15.0, 27.0};
  CHECK_THAT(error_of(ground.view(), link), Catch::Matchers::Contains("receiver clutter"));
}

TEST_CASE("Percentages outside 1 to 99 are refused") {
  Scratch scratch;
  const Ground ground;
  const auto path = analyze_path(ground.view(), good_link(), scratch);
  REQUIRE(path);
  for (const double percent : {0.99, 99.01, kNan}) {
    CHECK_FALSE(loss_for(*path, {.time_percent = percent}));
    CHECK_FALSE(loss_for(*path, {.locations_percent = percent}));
  }
  for (const double percent : {1.0, 99.0}) {
    CHECK(loss_for(*path, {.time_percent = percent, .locations_percent = percent}));
  }
}

TEST_CASE("A broken profile is refused with the place of the fault") {
  const struct {
    const char* said;
    std::function<void(Ground&)> spoil;
  } faults[] = {
      {"11 clutter heights",
       [](Ground& ground) {
         ground.heights_m.pop_back();
         ground.distances_km.pop_back();
       }},
      {"10 zones", [](Ground& ground) { ground.zones.pop_back(); }},
      {"10 distances", [](Ground& ground) { ground.distances_km.pop_back(); }},
      {"first distance", [](Ground& ground) { ground.distances_km[0] = 0.1; }},
      {"point 4", [](Ground& ground) { ground.distances_km[4] = 3.0; }},
      {"point 6", [](Ground& ground) { ground.distances_km[6] = kNan; }},
      {"point 7", [](Ground& ground) { ground.heights_m[7] = kNan; }},
      {"point 0", [](Ground& ground) { ground.heights_m[0] = -501.0; }},
      {"point 10", [](Ground& ground) { ground.heights_m[10] = 1e300; }},
      {"point 3", [](Ground& ground) { ground.clutter_m[3] = -0.1; }},
      {"point 5", [](Ground& ground) { ground.clutter_m[5] = kNan; }},
      {"unknown zone 2", [](Ground& ground) { ground.zones[2] = static_cast<Zone>(2); }},
      {"path length", [](Ground& ground) { ground.distances_km.back() = 3000.1; }},
  };
  for (const auto& fault : faults) {
    Ground ground;
    fault.spoil(ground);
    INFO(fault.said);
    CHECK_THAT(error_of(ground.view(), good_link()), Catch::Matchers::Contains(fault.said));
  }
  const std::vector<double> three(3, 10.0);
  CHECK_THAT(error_of({.spacing_km = 1.0, .heights_m = three}, good_link()),
             Catch::Matchers::Contains("3 points"));
  const std::vector<double> four(4, 10.0);
  CHECK_THAT(error_of({.spacing_km = 0.0833, .heights_m = four}, good_link()),
             Catch::Matchers::Contains("path length"));
  CHECK_THAT(error_of({.spacing_km = kNan, .heights_m = four}, good_link()),
             Catch::Matchers::Contains("path length"));
  CHECK(error_of({.spacing_km = 0.0834, .heights_m = four}, good_link()).empty());
}

TEST_CASE("Inputs near a limit are accepted with a warning") {
  const Ground ground;
  const Profile profile = ground.view();
  CHECK(warnings_of(profile, good_link()) == 0);
  Link link = good_link();
  link.frequency_mhz = 35.0;
  CHECK(has(warnings_of(profile, link), Warning::frequency_near_limit));
  link = good_link();
  link.receiver_height_m = 1.2;
  CHECK(has(warnings_of(profile, link), Warning::height_near_limit));
  CHECK(has(warnings_of(profile, link), Warning::antenna_below_clutter));
  link = good_link();
  link.refractivity.sea_level_n = 420.0;
  CHECK(warnings_of(profile, link) == static_cast<Warnings>(Warning::refractivity_near_limit));
  const std::vector<double> coarse(20, 10.0);
  CHECK(has(warnings_of({.spacing_km = 1.1, .heights_m = coarse}, good_link()),
            Warning::profile_coarse));
  CHECK(has(warnings_of({.spacing_km = 0.02, .heights_m = coarse}, good_link()),
            Warning::distance_near_limit));
}

}  // namespace mastwise::p1812
