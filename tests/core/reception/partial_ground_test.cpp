#include "core/reception/partial_ground.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/chance.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <limits>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

// 1,001 points 100 m apart at 100 m, without those of [first, end).
terrain::PathProfile without(std::size_t first, std::size_t end) {
  terrain::PathProfile profile;
  profile.spacing_m = 100.0;
  profile.heights_m.assign(1001, 100.0);
  profile.distance_m = 100e3;
  for (std::size_t i = first; i < end; ++i) profile.heights_m[i] = kUnknown;
  return profile;
}

}  // namespace

TEST_CASE("a guess keeps known ground and fills a gap evenly, or with hills like those around") {
  auto profile = without(400, 600);
  for (std::size_t i = 600; i < 1001; ++i) profile.heights_m[i] = 300.0;
  GuessedGround guess;
  REQUIRE(guess_ground(profile, {}, guess));
  for (const std::size_t i : {0u, 399u, 600u, 1000u}) {
    CHECK(guess.smooth_m[i] == profile.heights_m[i]);
    CHECK(guess.rough_m[i] == profile.heights_m[i]);
  }
  // By hand: from 100 to 300 m over 201 intervals.
  CHECK(guess.smooth_m[500] == Approx(100.0 + 200.0 * 101.0 / 201.0));
  // The longest known stretch is 40 km of level ground: no hills around, no hills in the gap.
  CHECK(guess.rough_m[500] == Approx(guess.smooth_m[500]));
}

TEST_CASE("a short known stretch says little: hills of 90 m are possible beside it") {
  const auto profile = without(0, 900);
  GuessedGround guess;
  REQUIRE(guess_ground(profile, 400.0, guess));
  // From the station's site to the known ground.
  CHECK(guess.smooth_m[0] == 400.0);
  CHECK(guess.rough_m[0] == 400.0);
  CHECK(guess.smooth_m[450] == Approx(250.0));
  // Algorithm (3.9) by hand: 90 (1 - 0.8 exp(-90 / 50)) = 78.1 m, of which 0.78.
  CHECK(guess.rough_m[450] - guess.smooth_m[450] == Approx(0.78 * 78.1).margin(0.1));
  // Half of it half a kilometer from the station.
  CHECK(guess.rough_m[5] - guess.smooth_m[5] == Approx(0.39 * 78.1).margin(0.1));
  // Without the site's height the first known one goes on.
  REQUIRE(guess_ground(profile, {}, guess));
  CHECK(guess.smooth_m[0] == 100.0);
}

TEST_CASE("unknown ground at the stop cannot be guessed") {
  GuessedGround guess;
  CHECK_FALSE(guess_ground(without(900, 1001), {}, guess));
  CHECK_FALSE(guess_ground(without(0, 1001), {}, guess));
}

TEST_CASE("a hill in known ground counts though the ground behind it is unknown") {
  const auto ridge = test::country(1, test::one_ridge());
  const auto level = test::country(1, test::flat(200.0));
  // The station is 150 km away; terrain ends after 110 km.
  Station station = test::transmitter(test::north_of_stop(150e3), 20, 900.0, 1000.0);
  const auto behind_hill = survey(test::roof_antenna(), {station}, ridge);
  const auto over_plain = survey(test::roof_antenna(), {station}, level);
  REQUIRE(behind_hill.at(0).outlook.mode == PathMode::partial);
  CHECK(behind_hill[0].outlook.terrain_coverage == Approx(110.0 / 150.0).margin(0.01));
  REQUIRE(behind_hill[0].outlook.obstacles.size() >= 1);
  CHECK(behind_hill[0].outlook.obstacles[0].distance_m == Approx(12e3).margin(200.0));
  CHECK(*behind_hill[0].outlook.margin_db < *over_plain.at(0).outlook.margin_db - 3.0);
  CHECK(behind_hill[0].outlook.chance_cap_percent == 89.0);
}

TEST_CASE("where the cap holds a chance down, missing ground is the first reason") {
  terrain::TileSet tiles;
  tiles.add(test::made_tile({44, -101}, 1201, test::flat(300.0)));
  const Station station = test::transmitter(test::north_of_stop(130e3), 30, 2500.0, 1000.0);
  const auto list = survey(test::roof_antenna(), {station}, tiles);
  const Prospect& prospect = list.at(0);
  REQUIRE(prospect.outlook.mode == PathMode::partial);
  REQUIRE(*prospect.outlook.chance_percent == prospect.outlook.chance_cap_percent);
  CHECK(prospect.reasons.at(0).kind() == ReasonKind::no_terrain);
  CHECK(prospect.reasons[0].gain_percent > 0.0);
}

TEST_CASE("chances are capped by how much of the ground is known") {
  CHECK(chance_cap_percent(1.0, 10.0) == 100.0);
  CHECK(chance_cap_percent(0.9, 10.0) == 100.0);
  CHECK(chance_word(chance_cap_percent(0.89, 99.0)) == ChanceWord::likely);
  CHECK(chance_word(chance_cap_percent(0.5, 10.0)) == ChanceWord::likely);
  CHECK(chance_word(chance_cap_percent(0.49, 69.0)) == ChanceWord::even_odds);
  CHECK(chance_word(chance_cap_percent(0.0, 70.0)) == ChanceWord::likely);
}

}  // namespace mastwise::reception
