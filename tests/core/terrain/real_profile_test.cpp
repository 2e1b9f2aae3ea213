#include "core/terrain/profile.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iostream>

#include <catch2/catch.hpp>

namespace mastwise::terrain {

// Independent software cut the seven profiles from the same tile: reference data, README. Their
// points are 90 m or less apart like ours, and their heights have 0.01 m steps.
TEST_CASE("profiles of real terrain agree with independent software") {
  const auto tile_path = test::reference("terrain/N44W072.hgt");
  const auto folder = test::reference("p1812/real_terrain");
  if (!tile_path || !folder) return;
  TileSet tiles;
  tiles.add(test::read_tile(*tile_path, {44, -72}));

  int profiles = 0;
  double largest_m = 0.0;
  for (const auto& entry : std::filesystem::directory_iterator(*folder)) {
    if (entry.path().filename().string().find(".profile.csv") == std::string::npos) continue;
    INFO(entry.path().filename());
    const auto lines = test::read_lines(entry.path());
    const auto position_of = [](const std::string& line) {
      const auto fields = test::split(line, ',');
      return *Position::at_deg(std::stod(fields.at(2)), std::stod(fields.at(3)));
    };
    PathProfile profile;
    cut_profile(tiles, position_of(lines.at(1)), position_of(lines.back()), profile);
    REQUIRE(profile.complete());
    REQUIRE(profile.heights_m.size() == lines.size() - 1);
    CHECK(profile.distance_m ==
          Approx(1000.0 * std::stod(test::split(lines.back(), ',').at(0))).margin(0.01));
    for (std::size_t i = 0; i < profile.heights_m.size(); ++i) {
      const double theirs_m = std::stod(test::split(lines[i + 1], ',').at(1));
      largest_m = std::max(largest_m, std::fabs(profile.heights_m[i] - theirs_m));
    }
    ++profiles;
  }
  std::cout << "largest difference over " << profiles << " real profiles: " << largest_m << " m\n";
  CHECK(profiles == 7);
  CHECK(largest_m < 0.02);
}

}  // namespace mastwise::terrain
