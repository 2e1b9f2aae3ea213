#include "core/geo/geodesic.hpp"
#include "core/map/borders.hpp"
#include "core/map/hillshade.hpp"
#include "core/map/projection.hpp"
#include "platform/files.hpp"

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

#include <fmt/core.h>

// The geometry of a map around a stop: points to the plane and back, the borders of three scales,
// and the shaded relief of 512 x 512 cells over four tiles in memory. The best of some rounds each.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

template <class Work>
double best_ms(int rounds, Work work) {
  double best = 1e12;
  for (int i = 0; i < rounds; ++i) {
    const auto start = Clock::now();
    work();
    best = std::min(best, std::chrono::duration<double, std::milli>(Clock::now() - start).count());
  }
  return best;
}

void measure_projection(const map::Projection& plane) {
  constexpr int kPoints = 10'000;
  std::vector<Position> positions;
  for (int i = 0; i < kPoints; ++i) {
    positions.push_back(destination(plane.center(), Bearing<True>::degrees(i * 0.7), i * 30.0));
  }
  std::vector<map::PlanePoint> points;
  const double to_plane_ms = best_ms(10, [&] {
    points.clear();
    for (const Position& position : positions) points.push_back(*plane.to_plane(position));
  });
  double sum = 0.0;
  const double to_earth_ms = best_ms(10, [&] {
    for (const auto& point : points) sum += plane.to_earth(point)->latitude_deg();
  });
  fmt::print("map plane: {:.2f} ms for {} points, {:.2f} us each; back {:.2f} us each ({:.0f})\n",
             to_plane_ms, kPoints, to_plane_ms / kPoints * 1e3, to_earth_ms / kPoints * 1e3, sum);
}

void measure_borders(const map::Borders& borders, const map::Projection& plane) {
  for (const double radius_m : {50e3, 250e3, 1'000e3}) {
    std::size_t lines = 0, points = 0;
    const double found_ms =
        best_ms(10, [&] { lines = borders.within(plane.center(), radius_m).size(); });
    const double drawn_ms = best_ms(10, [&] {
      points = 0;
      for (const auto& line : borders.on_plane(plane, radius_m)) points += line.points.size();
    });
    fmt::print(
        "borders within {:.0f} km: {} lines, {} points: found in {:.2f} ms, on the plane {:.2f}\n",
        radius_m / 1e3, lines, points, found_ms, drawn_ms);
  }
}

// A tile that owns its bytes.
std::shared_ptr<const terrain::Tile> rolling_hills(terrain::TileCell cell) {
  struct Owner {
    std::vector<std::byte> bytes;
    std::unique_ptr<const terrain::Tile> tile;
  };
  auto owner = std::make_shared<Owner>();
  constexpr int kSide = terrain::Tile::kSide3ArcSeconds;
  for (int i = 0; i < kSide * kSide; ++i) {
    const int height_m = 400 + (i / kSide * 37 + i % kSide * 11) % 97;
    owner->bytes.push_back(static_cast<std::byte>(height_m >> 8));
    owner->bytes.push_back(static_cast<std::byte>(height_m & 0xFF));
  }
  owner->tile = std::make_unique<const terrain::Tile>(*terrain::Tile::over(cell, owner->bytes));
  return {owner, owner->tile.get()};
}

void measure_relief() {
  terrain::TileSet tiles;
  for (const int south : {43, 44}) {
    for (const int west : {-122, -121}) tiles.add(rolling_hills({south, west}));
  }
  const auto plane = map::Projection::around(*Position::at_deg(44.0, -121.0));
  constexpr map::ReliefGrid kGrid{.columns = 512, .rows = 512, .meters_per_cell = 250.0};
  std::size_t known = 0;
  const double ms = best_ms(10, [&] {
    const auto relief = map::shade_relief(tiles, *plane, kGrid);
    known = kGrid.columns * kGrid.rows -
            static_cast<std::size_t>(std::count(relief->shade.begin(), relief->shade.end(), 0));
  });
  fmt::print("relief of 512 x 512 cells: {:.1f} ms, {:.1f} million cells/s, {} known\n", ms,
             512.0 * 512.0 / ms / 1e3, known);
}

}  // namespace

int main() {
  const auto bytes = platform::read_file(platform::assets_folder() + "/borders/borders.bin");
  const auto plane = map::Projection::around(*Position::at_deg(44.06, -121.31));
  if (!bytes || !plane) {
    fmt::print("no borders in the assets\n");
    return 1;
  }
  Result<map::Borders> borders = Error{};
  const double load_ms =
      best_ms(5, [&] { borders = map::Borders::load(std::as_bytes(std::span(*bytes))); });
  if (!borders) {
    fmt::print("{}\n", borders.error().message());
    return 1;
  }
  fmt::print("borders loaded in {:.1f} ms\n", load_ms);
  measure_projection(*plane);
  measure_borders(*borders, *plane);
  measure_relief();
}
