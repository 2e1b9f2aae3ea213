// Makes the hills of the practice area: ordinary SRTM tiles of 3 arc seconds, of a country that
// does not exist. A basin with a dry lake is in the middle; long ranges run north and south around
// it.
//
// Usage: make_terrain FOLDER
//
// The bytes are the same on every machine: lattice values come from integer hashing, and the rest
// is addition, multiplication, division and square root of doubles, which IEEE 754 rounds alike
// everywhere as long as the compiler fuses none of them (-ffp-contract=off).

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace {

constexpr int kSamplesPerDegree = 1200;
constexpr int kSamples = kSamplesPerDegree + 1;  // the edge is shared with the next tile

constexpr int kSouth = 41, kNorth = 43;  // degrees of the tiles' south-west corners
constexpr int kWest = -121, kEast = -117;

// The practice stop, the middle of the basin: 42.5 N, 118.5 W in samples.
constexpr int kStopRow = 42 * kSamplesPerDegree + kSamplesPerDegree / 2;
constexpr int kStopColumn = -119 * kSamplesPerDegree + kSamplesPerDegree / 2;
// Meters between samples there; only the shapes depend on them.
constexpr double kRowM = 92.6;
constexpr double kColumnM = 68.4;

std::uint32_t hashed(int x, int y, std::uint32_t seed) {
  std::uint32_t h = seed * 0xC2B2AE3Du + static_cast<std::uint32_t>(x) * 0x9E3779B1u +
                    static_cast<std::uint32_t>(y) * 0x27D4EB2Fu;
  h = (h ^ (h >> 15)) * 0x85EBCA77u;
  h = (h ^ (h >> 13)) * 0xC2B2AE3Du;
  return h ^ (h >> 16);
}

// The slope at a lattice point, one of eight directions, times the distance from it.
double slope(int x, int y, std::uint32_t seed, double dx, double dy) {
  constexpr double kDiagonal = 0.70710678118654752;
  const std::uint32_t h = hashed(x, y, seed) >> 29;
  const double east = (h & 1u) != 0 ? dx : -dx;
  const double north = (h & 2u) != 0 ? dy : -dy;
  if ((h & 4u) != 0) return (east + north) * kDiagonal;
  return (h & 1u) != 0 ? north : east;
}

double faded(double t) {
  return t * t * t * (t * (t * 6.0 - 15.0) + 10.0);
}

// Gradient noise, about -1 to 1, with a lattice of one unit.
double noise(double x, double y, std::uint32_t seed) {
  const double floor_x = std::floor(x);
  const double floor_y = std::floor(y);
  const int ix = static_cast<int>(floor_x);
  const int iy = static_cast<int>(floor_y);
  const double dx = x - floor_x;
  const double dy = y - floor_y;
  const double east = faded(dx);
  const double south =
      slope(ix, iy, seed, dx, dy) * (1.0 - east) + slope(ix + 1, iy, seed, dx - 1.0, dy) * east;
  const double north = slope(ix, iy + 1, seed, dx, dy - 1.0) * (1.0 - east) +
                       slope(ix + 1, iy + 1, seed, dx - 1.0, dy - 1.0) * east;
  const double up = faded(dy);
  return 1.5 * (south * (1.0 - up) + north * up);
}

double smooth_step(double from, double to, double value) {
  const double t = std::min(1.0, std::max(0.0, (value - from) / (to - from)));
  return t * t * (3.0 - 2.0 * t);
}

double roughness(double x_m, double y_m) {
  double sum = 0.0;
  double size_m = 9000.0;
  double height_m = 1.0;
  for (std::uint32_t octave = 0; octave < 5; ++octave) {
    sum += height_m * noise(x_m / size_m, y_m / size_m, 100 + octave);
    size_m *= 0.5;
    height_m *= 0.52;
  }
  return sum;
}

// A low ridge between the stop and the ground east of it.
double rim_m(double x_m, double y_m) {
  const double across = (x_m - 11000.0 - 700.0 * noise(y_m / 5000.0, 0.5, 7)) / 1100.0;
  const double along = smooth_step(-13000.0, -8000.0, y_m) * smooth_step(19000.0, 12000.0, y_m);
  const double profile = 1.0 / (1.0 + across * across);
  return 270.0 * along * profile * profile;
}

double height_m(int row, int column) {
  const double x_m = (column - kStopColumn) * kColumnM;
  const double y_m = (row - kStopRow) * kRowM;
  const double outward =
      std::sqrt((x_m / 62000.0) * (x_m / 62000.0) + (y_m / 78000.0) * (y_m / 78000.0));
  const double mountains = smooth_step(0.22, 1.0, outward);

  const double bend_x_m = 9000.0 * noise(x_m / 45000.0, y_m / 45000.0, 1) +
                          2200.0 * noise(x_m / 11000.0, y_m / 11000.0, 4);
  const double bend_y_m = 30000.0 * noise(x_m / 38000.0, y_m / 38000.0, 5);
  const double ridge = noise((x_m + bend_x_m) / 26000.0, (y_m + bend_y_m) / 80000.0, 2);
  // Rounded at the top, since the plain absolute value would have an edge.
  const double crest = std::max(0.0, 1.0 - 1.7 * (std::sqrt(ridge * ridge + 0.003) - 0.05));
  const double gaps = 0.62 + 0.55 * noise(x_m / 21000.0, y_m / 17000.0, 6);
  const double broad_m = 130.0 * noise(x_m / 60000.0, y_m / 60000.0, 3);
  const double rough_m = (18.0 + 190.0 * mountains * (0.35 + crest)) * roughness(x_m, y_m);
  const double ground_m = 1262.0 + broad_m * (0.2 + mountains) + 200.0 * mountains +
                          900.0 * mountains * crest * crest * gaps + rough_m + rim_m(x_m, y_m);
  // The dry lake fills the ground below its shore.
  constexpr double kLakeBedM = 1251.0;
  return std::max(kLakeBedM, ground_m);
}

std::vector<unsigned char> tile(int south, int west) {
  std::vector<unsigned char> bytes;
  bytes.reserve(static_cast<std::size_t>(kSamples) * kSamples * 2);
  for (int line = 0; line < kSamples; ++line) {
    const int row = (south + 1) * kSamplesPerDegree - line;
    for (int sample = 0; sample < kSamples; ++sample) {
      const int meters = static_cast<int>(height_m(row, west * kSamplesPerDegree + sample) + 0.5);
      bytes.push_back(static_cast<unsigned char>(meters >> 8));
      bytes.push_back(static_cast<unsigned char>(meters & 0xFF));
    }
  }
  return bytes;
}

bool write(const std::string& path, const std::vector<unsigned char>& bytes) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool written = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  return std::fclose(file) == 0 && written;
}

}  // namespace

int main(int argc, char* argv[]) {
  if (argc != 2) {
    fmt::print(stderr, "usage: make_terrain FOLDER\n");
    return 2;
  }
  for (int south = kSouth; south <= kNorth; ++south) {
    for (int west = kWest; west <= kEast; ++west) {
      const std::string path = fmt::format("{}/N{:02}W{:03}.hgt", argv[1], south, -west);
      if (!write(path, tile(south, west))) {
        fmt::print(stderr, "cannot write {}; check that the folder exists\n", path);
        return 1;
      }
    }
  }
  return 0;
}
