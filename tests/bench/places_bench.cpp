#include "core/places/gazetteer.hpp"
#include "platform/files.hpp"
#include "platform/zipped_file.hpp"

#include <algorithm>
#include <chrono>
#include <random>
#include <vector>

#include <fmt/core.h>

// Typical searches of a traveler, and the place nearest to 10,000 positions, over the gazetteer of
// the assets. Prints the best round of each.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

void measure_searches(const places::Gazetteer& gazetteer) {
  constexpr int kRounds = 20;
  constexpr std::size_t kMost = 20;
  const Position near = *Position::at_deg(44.06, -121.31);
  double all_ms = 0.0;
  int searches = 0;
  for (const char* typed : {"s", "san", "bend", "bend or", "paris, fr", "saint petersburg florida",
                            "albuqerque", "amstredam", "qqqqqqqqqq", "new york ny usa"}) {
    double best_ms = 1e12;
    std::size_t found = 0;
    for (int round = 0; round < kRounds; ++round) {
      const auto start = Clock::now();
      found = gazetteer.search(typed, kMost, near).size();
      best_ms = std::min(best_ms, milliseconds_since(start));
    }
    fmt::print("places, \"{}\": {:.2f} ms for {} places\n", typed, best_ms, found);
    all_ms += best_ms;
    ++searches;
  }
  fmt::print("places: {:.0f} searches/s\n", searches / all_ms * 1e3);
}

void measure_nearest(const places::Gazetteer& gazetteer) {
  constexpr int kPositions = 10'000, kRounds = 3;
  std::mt19937 random(20261125);
  std::uniform_real_distribution<double> latitude(25.0, 60.0), longitude(-125.0, 40.0);
  double longest_ms = 0.0;
  double ms = 0.0;
  for (int i = 0; i < kPositions; ++i) {
    const Position position = *Position::at_deg(latitude(random), longitude(random));
    double best_ms = 1e12;
    for (int round = 0; round < kRounds; ++round) {
      const auto one = Clock::now();
      if (!gazetteer.nearest_place(position)) fmt::print("nowhere\n");
      best_ms = std::min(best_ms, milliseconds_since(one));
    }
    longest_ms = std::max(longest_ms, best_ms);
    ms += best_ms;
  }
  fmt::print("places, nearest: {:.0f} positions/s, {:.3f} ms each, the longest {:.2f} ms\n",
             kPositions / ms * 1e3, ms / kPositions, longest_ms);
}

}  // namespace

int main() {
  const auto start = Clock::now();
  const auto bytes = platform::unpack_one(
      platform::assets_folder() + "/places/places.zip", [](auto) { return true; },
      [](auto) { return true; });
  if (!bytes) {
    fmt::print("{}\n", bytes.error().message());
    return 1;
  }
  const double unpacked_ms = milliseconds_since(start);
  const auto gazetteer = places::Gazetteer::load(*bytes);
  if (!gazetteer) {
    fmt::print("{}\n", gazetteer.error().message());
    return 1;
  }
  fmt::print("places: {} in {:.1f} ms, of which unpacking {:.1f} ms\n", gazetteer->size(),
             milliseconds_since(start), unpacked_ms);
  measure_searches(*gazetteer);
  measure_nearest(*gazetteer);
}
