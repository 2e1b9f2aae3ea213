// Chance curves of 400 invented stations around the practice stop, with one and two threads, and
// turn plans for 40 wanted stations and for all in reach.
#include "core/geo/geodesic.hpp"
#include "core/plan/turn_plan.hpp"
#include "core/reception/survey.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <functional>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include <fmt/format.h>

namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;
using Curves = std::vector<std::optional<reception::ChanceCurve>>;

constexpr std::size_t kStations = 400;

// Shortest time of several rounds, to exclude other work on the machine.
double least_time_s(int rounds, const std::function<void()>& work) {
  double least_s = 1e9;
  for (int round = 0; round < rounds; ++round) {
    const auto begin = Clock::now();
    work();
    least_s = std::min(least_s, std::chrono::duration<double>(Clock::now() - begin).count());
  }
  return least_s;
}

// Scattered within 250 km, half of them within 60.
std::vector<Station> invented(Position stop) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  std::vector<Station> stations;
  for (std::size_t i = 0; i < kStations; ++i) {
    const double reach_m = i % 2 == 0 ? 250e3 : 60e3;
    stations.push_back({.id = std::to_string(i),
                        .call_sign = fmt::format("Q{:03}", i),
                        .rf_channel = {2 + static_cast<int>(i % 35)},
                        .standard = BroadcastStandard::atsc1,
                        .position = destination(stop, Bearing<True>::degrees(360.0 * share(random)),
                                                2e3 + reach_m * std::sqrt(share(random))),
                        .antenna_amsl_m = 1500.0 + 1300.0 * share(random),
                        .erp_kw = 0.3 * std::pow(3000.0, share(random)),
                        .polarization = Polarization::horizontal});
  }
  return stations;
}

Curves make(const reception::Survey& survey, std::size_t threads) {
  const reception::ChanceCurves curves(survey);
  Curves made(survey.size());
  const auto share = [&](std::size_t thread) {
    for (std::size_t i = thread; i < made.size(); i += threads) made[i] = curves.curve(i);
  };
  std::vector<std::thread> others;
  for (std::size_t thread = 1; thread < threads; ++thread) others.emplace_back(share, thread);
  share(0);
  for (std::thread& other : others) other.join();
  return made;
}

void plan(const Curves& curves, std::size_t most, double floor_percent) {
  TurnPlanRequest request{.floor_percent = floor_percent};
  for (std::size_t i = 0; i < curves.size() && request.wishes.size() < most; ++i) {
    if (curves[i] && curves[i]->best_percent() >= floor_percent) {
      request.wishes.push_back({.stations = {i}});
    }
  }
  TurnPlan made;
  const double took_s = least_time_s(5, [&] { made = turn_plan(curves, request); });
  fmt::print("  plan for {} stations at {:.0f} %: {} headings{}, {:.2f} ms, {:.0f} plans/s\n",
             request.wishes.size(), floor_percent, made.headings.size(),
             made.fewest_proved ? "" : " (not proved)", 1e3 * took_s, 1.0 / took_s);
}

}  // namespace

// Usage: plan_bench [FOLDER OF TILES]; without one, the practice area of the assets.
int main(int argc, char** argv) {
  const std::filesystem::path beside =
      std::filesystem::path(argv[0]).parent_path() / "assets" / "practice";
  const platform::TileFolder tiles(argc > 1 ? std::filesystem::path(argv[1]) : beside);
  const Position stop = *Position::at_deg(42.5, -118.5);
  const std::vector<Station> stations = invented(stop);
  for (const gear::Gear& gear : gear::presets()) {
    reception::Survey survey({.position = stop, .gear = gear}, stations, tiles);
    reception::Scratch scratch;
    survey.measure(0, survey.size(), scratch);
    survey.weigh();
    Curves curves;
    for (const std::size_t threads : {std::size_t{1}, std::size_t{2}}) {
      const double took_s = least_time_s(9, [&] { curves = make(survey, threads); });
      fmt::print("{}, {} thread{}: {:.2f} ms, {:.0f} curves/s\n", gear.name, threads,
                 threads > 1 ? "s" : "", 1e3 * took_s, static_cast<double>(kStations) / took_s);
    }
    for (const double floor_percent : {40.0, 70.0, 90.0}) {
      plan(curves, 40, floor_percent);
      plan(curves, kStations, floor_percent);
    }
  }
}
