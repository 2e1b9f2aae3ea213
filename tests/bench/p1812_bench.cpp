// Paths per second through P.1812 on deterministic hills with 90 m spacing, and the cost of another
// time percentage.
#include "core/propagation/p1812/p1812.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <vector>

#include <fmt/format.h>

namespace {

using namespace mastwise::p1812;

constexpr double kSpacingKm = 0.09;

struct Hills {
  std::vector<double> distances_km;
  std::vector<double> heights_m;
  std::vector<double> clutter_m;
};

// Waves of several lengths, so that a path has ridges, slopes and plains.
Hills hills(double length_km, double relief_m) {
  const auto points = static_cast<std::size_t>(std::lround(length_km / kSpacingKm)) + 1;
  Hills ground;
  for (std::size_t i = 0; i < points; ++i) {
    const double d = kSpacingKm * static_cast<double>(i);
    const double wave =
        std::sin(d / 7.3) + 0.5 * std::sin(d / 2.1 + 1.0) + 0.2 * std::sin(d / 0.37);
    ground.distances_km.push_back(d);
    ground.heights_m.push_back(200.0 + relief_m * wave);
    ground.clutter_m.push_back(i % 3 == 0 ? 10.0 : 0.0);
  }
  return ground;
}

// The shortest time of one call in microseconds, over several rounds.
template <class Call>
double microseconds(Call call) {
  using Clock = std::chrono::steady_clock;
  constexpr int kRounds = 15;
  constexpr int kCalls = 400;
  double best = 1e300;
  for (int round = 0; round < kRounds; ++round) {
    const auto start = Clock::now();
    for (int i = 0; i < kCalls; ++i) call();
    const std::chrono::duration<double, std::micro> elapsed = Clock::now() - start;
    best = std::min(best, elapsed.count() / kCalls);
  }
  return best;
}

void report(const char* what, double length_km, double time_us) {
  fmt::print("{:<34} {:>4.0f} km  {:>8.2f} us  {:>9.0f} paths/s\n", what, length_km, time_us,
             1e6 / time_us);
}

}  // namespace

int main() {
  Scratch scratch;
  double sink = 0.0;
  const Link link = {.frequency_mhz = 545.0,
                     .transmitter_height_m = 200.0,
                     .receiver_height_m = 4.0,
                     .path_latitude_deg = 44.0};
  const auto run = [&](const Profile& profile, const Link& with, const Percentages& percentages) {
    const auto loss = loss_of(profile, with, percentages, scratch);
    sink += loss ? loss->basic_loss_db : 1e9;
  };
  for (const double length_km : {25.0, 100.0, 250.0}) {
    const Hills ground = hills(length_km, 100.0);
    const Hills plain = hills(length_km, 1.0);
    Link high = link;
    high.transmitter_height_m = high.receiver_height_m = 1500.0;
    const Profile even = {.spacing_km = kSpacingKm, .heights_m = ground.heights_m};
    const Profile flat = {.spacing_km = kSpacingKm, .heights_m = plain.heights_m};
    const Profile surveyed = {.distances_km = ground.distances_km, .heights_m = ground.heights_m};
    const Profile covered = {
        .spacing_km = kSpacingKm, .heights_m = ground.heights_m, .clutter_m = ground.clutter_m};
    report("even steps, over the horizon", length_km, microseconds([&] { run(even, link, {}); }));
    report("even steps, line of sight", length_km, microseconds([&] { run(flat, high, {}); }));
    report("even steps, clutter", length_km, microseconds([&] { run(covered, link, {}); }));
    report("surveyed distances", length_km, microseconds([&] { run(surveyed, link, {}); }));
    const auto path = analyze_path(even, link, scratch);
    report("a further time percentage", length_km, microseconds([&] {
             const auto loss = loss_for(*path, {.time_percent = 10.0});
             sink += loss ? loss->basic_loss_db : 1e9;
           }));
  }
  fmt::print("sum of all losses {:.3f} dB\n", sink);
}
