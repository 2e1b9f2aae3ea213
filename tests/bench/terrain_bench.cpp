#include "core/landcover/cover_profile.hpp"
#include "core/terrain/profile.hpp"
#include "platform/cover_folder.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <string>
#include <vector>

#include <fmt/core.h>

// Profiles of 100 km in 72 directions from a place amid nine tiles of 3 arc seconds, from a folder
// that the bench writes. Cold: each tile is mapped for the first time (its file is still in the
// system's cache). Warm: all tiles have been read. With land cover: the clutter heights at the
// points of each profile too, from nine cover tiles or from none.
namespace {

namespace fs = std::filesystem;
using namespace mastwise;
using namespace mastwise::terrain;
using Clock = std::chrono::steady_clock;

constexpr int kDirections = 72;
constexpr int kWarmRounds = 40;
constexpr int kColdRounds = 10;
constexpr int kListedFiles = 5'000;

void write_rolling_hills(const fs::path& folder, TileCell cell) {
  constexpr int kSide = Tile::kSide3ArcSeconds;
  std::string bytes;
  for (int row = 0; row < kSide; ++row) {
    for (int column = 0; column < kSide; ++column) {
      const int height_m = 400 + (row * 37 + column * 11) % 97;
      bytes.push_back(static_cast<char>(height_m >> 8));
      bytes.push_back(static_cast<char>(height_m & 0xff));
    }
  }
  std::ofstream(folder / (cell_name(cell) + ".hgt"), std::ios::binary) << bytes;
}

void write_patches(const fs::path& folder, TileCell cell) {
  std::vector<landcover::CoverClass> classes;
  for (std::size_t i = 0; i < landcover::CoverTile::kClassBytes; ++i) {
    classes.push_back(static_cast<landcover::CoverClass>(1 + i / 7 % 6));
  }
  const auto bytes = landcover::cover_file(cell, classes, {"invented"});
  std::ofstream(folder / (cell_name(cell) + ".cover"), std::ios::binary)
      .write(reinterpret_cast<const char*>(bytes->data()),
             static_cast<std::streamsize>(bytes->size()));
}

double microseconds_since(Clock::time_point start) {
  return std::chrono::duration<double, std::micro>(Clock::now() - start).count();
}

struct Round {
  double us = 0.0;
  std::size_t points = 0;
};

Position end_of(int direction) {
  const double angle = direction * 2.0 * std::numbers::pi / kDirections;
  return *Position::at_deg(44.5 + 0.9 * std::cos(angle), -71.5 + 1.255 * std::sin(angle));
}

const Position kCenter = *Position::at_deg(44.5, -71.5);

Round cut_all(const TileSource& tiles, PathProfile& profile) {
  Round round;
  const auto start = Clock::now();
  for (int direction = 0; direction < kDirections; ++direction) {
    cut_profile(tiles, kCenter, end_of(direction), profile);
    round.points += profile.heights_m.size();
  }
  round.us = microseconds_since(start);
  return round;
}

// The shortest time of each path over all rounds, so that other work on the machine counts little:
// the cut of its terrain, and its land cover.
struct Layers {
  Round terrain, cover;
};

Layers read_layers(const TileSource& tiles, const landcover::CoverSource& cover) {
  PathProfile profile;
  std::vector<double> clutter_m;
  Layers layers;
  for (int direction = 0; direction < kDirections; ++direction) {
    double cut_us = 1e12, cover_us = 1e12;
    for (int i = 0; i < kWarmRounds; ++i) {
      // Paths between spread over the tiles, as in a survey.
      for (const int other : {direction + 17, direction + 31}) {
        cut_profile(tiles, kCenter, end_of(other), profile);
        landcover::clutter_along(cover, profile, clutter_m);
      }
      const auto start = Clock::now();
      cut_profile(tiles, kCenter, end_of(direction), profile);
      cut_us = std::min(cut_us, microseconds_since(start));
      const auto cut = Clock::now();
      landcover::clutter_along(cover, profile, clutter_m);
      cover_us = std::min(cover_us, microseconds_since(cut));
    }
    layers.terrain.us += cut_us;
    layers.cover.us += cover_us;
    layers.terrain.points += profile.heights_m.size();
  }
  layers.cover.points = layers.terrain.points;
  return layers;
}

void tell(const char* how, const Round& round) {
  const double point_us = round.us / static_cast<double>(round.points);
  constexpr double kPointsOf100km = 1'113;
  fmt::print("profile, {}: {:.1f} million points/s, {:.1f} us for 100 km ({} points)\n", how,
             1.0 / point_us, kPointsOf100km * point_us, static_cast<int>(kPointsOf100km));
}

}  // namespace

int main() {
  const fs::path folder = fs::temp_directory_path() / "mastwise-terrain-bench";
  fs::create_directories(folder / "tiles");
  fs::create_directories(folder / "many");
  for (const int south : {43, 44, 45}) {
    for (const int west : {-73, -72, -71}) {
      write_rolling_hills(folder / "tiles", {south, west});
      write_patches(folder / "tiles", {south, west});
    }
  }
  PathProfile profile;
  const auto faster = [](const Round& a, const Round& b) { return a.us < b.us ? a : b; };
  Round cold{.us = 1e12};
  for (int i = 0; i < kColdRounds; ++i) {
    const platform::TileFolder tiles(folder / "tiles");
    cold = faster(cold, cut_all(tiles, profile));
  }
  tell("cold", cold);
  const platform::TileFolder tiles(folder / "tiles");
  Round warm{.us = 1e12};
  for (int i = 0; i < kWarmRounds; ++i) warm = faster(warm, cut_all(tiles, profile));
  tell("warm", warm);

  const platform::CoverFolder cover(folder / "tiles");
  const platform::CoverFolder no_cover(folder / "none");
  const Layers covered = read_layers(tiles, cover);
  const Layers bare = read_layers(tiles, no_cover);
  tell("each path at its fastest", covered.terrain);
  tell("its land cover", covered.cover);
  tell("its land cover, no tile on the path", bare.cover);
  fmt::print("land cover: {:.2f} of the terrain's time, {:.3f} with no tile on the path\n",
             covered.cover.us / covered.terrain.us, bare.cover.us / bare.terrain.us);

  for (int i = 0; i < kListedFiles; ++i) {
    const TileCell cell{.south_deg = i / 360, .west_deg = i % 360 - 180};
    std::ofstream(folder / "many" / (cell_name(cell) + ".hgt.zip"));
  }
  const auto start = Clock::now();
  const platform::TileFolder many(folder / "many");
  const double index_us = microseconds_since(start);
  const auto listed = static_cast<double>(many.cells().size());
  fmt::print("terrain index: {:.0f} files/s, {:.1f} ms for {:.0f}\n", listed / index_us * 1e6,
             index_us / 1e3, listed);
  fs::remove_all(folder);
}
