// Surveys of 400 invented stations within 250 km of the practice stop over the practice area's
// hills, and paths per second of each model and of both by length, with one and two threads.
#include "core/geo/geodesic.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/reception/survey.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <new>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include <fmt/format.h>

namespace {

std::atomic<long> allocations{0};

}  // namespace

void* operator new(std::size_t size) {
  ++allocations;
  if (void* memory = std::malloc(size)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}

namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

constexpr double kReach_m = 250e3;

// Shortest time of several rounds, to exclude other work on the machine.
struct Took {
  double wall_s = 1e9;
  double processor_s = 1e9;  // of all threads
};
Took least_time(int rounds, const std::function<void()>& work) {
  Took least;
  for (int round = 0; round < rounds; ++round) {
    const auto begin = Clock::now();
    const std::clock_t processor = std::clock();
    work();
    least.processor_s =
        std::min(least.processor_s, static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC);
    least.wall_s =
        std::min(least.wall_s, std::chrono::duration<double>(Clock::now() - begin).count());
  }
  return least;
}

Position stop() {
  return *Position::at_deg(42.5, -118.5);
}

// The tiles end some 130 km north and 120 km south of the stop and 200 km east and west.
Position place(std::mt19937& random, double least_m, double most_m) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  for (;;) {
    const double distance_m =
        std::sqrt(least_m * least_m + share(random) * (most_m * most_m - least_m * least_m));
    const Position position =
        destination(stop(), Bearing<True>::degrees(360.0 * share(random)), distance_m);
    if (position.latitude_deg() > 41.01 && position.latitude_deg() < 43.99 &&
        position.longitude_deg() > -120.99 && position.longitude_deg() < -116.01) {
      return position;
    }
  }
}

std::vector<Station> invented(std::size_t count, double least_m, double most_m) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  std::vector<Station> stations;
  for (std::size_t i = 0; i < count; ++i) {
    const Position position = place(random, least_m, most_m);
    stations.push_back({.id = std::to_string(i),
                        .call_sign = fmt::format("Q{:03}", i),
                        .rf_channel = {2 + static_cast<int>(i % 35)},
                        .standard = BroadcastStandard::atsc1,
                        .position = position,
                        .antenna_amsl_m = 1500.0 + 1300.0 * share(random),
                        .erp_kw = 0.3 * std::pow(3000.0, share(random)),
                        .polarization = Polarization::horizontal,
                        .directional = i % 3 == 0});
  }
  return stations;
}

reception::Receiver receiver() {
  return {.position = stop(), .gear = gear::presets().front()};
}

void in_threads(int threads, const std::function<void(int)>& work) {
  std::vector<std::thread> others;
  for (int t = 1; t < threads; ++t) others.emplace_back(work, t);
  work(0);
  for (auto& other : others) other.join();
}

// Measures with a pool's split: each thread takes the next eight stations.
void measure(reception::Survey& survey, std::vector<reception::Scratch>& scratches) {
  constexpr std::size_t kTake = 8;
  std::atomic<std::size_t> next{0};
  in_threads(static_cast<int>(scratches.size()), [&](int thread) {
    for (std::size_t first = next.fetch_add(kTake); first < survey.size();
         first = next.fetch_add(kTake)) {
      survey.measure(first, std::min(first + kTake, survey.size()),
                     scratches[static_cast<std::size_t>(thread)]);
    }
  });
}

void whole_survey(const terrain::TileSource& tiles) {
  const auto stations = invented(400, 5e3, kReach_m);
  for (const int threads : {1, 2}) {
    reception::Survey survey(receiver(), stations, tiles);
    std::vector<reception::Scratch> scratches(static_cast<std::size_t>(threads));
    measure(survey, scratches);
    survey.weigh();
    const Took measured = least_time(15, [&] { measure(survey, scratches); });
    const Took weighed = least_time(15, [&] { survey.weigh(); });
    const long before = allocations;
    survey.measure(0, survey.size(), scratches[0]);
    const long measuring = allocations - before;
    survey.weigh();
    const long weighing = allocations - before - measuring;
    std::size_t reasons = 0;
    const Took words = least_time(5, [&] {
      reasons = 0;
      for (const auto& prospect : survey.prospects()) reasons += prospect.reasons.size();
    });
    std::size_t on_profile = 0;
    for (std::size_t i = 0; i < survey.size(); ++i) {
      on_profile += survey.outlook(i)->mode == reception::PathMode::point_to_point ? 1U : 0U;
    }
    fmt::print(
        "survey of {} stations ({} on terrain), {} thread{}: {:.1f} ms measured ({:.1f} ms "
        "of processor) + {:.2f} ms weighed; {:.1f} ms more for {} reasons; {} and {} allocations\n",
        survey.size(), on_profile, threads, threads > 1 ? "s" : "", 1e3 * measured.wall_s,
        1e3 * measured.processor_s, 1e3 * weighed.wall_s, 1e3 * words.wall_s, reasons, measuring,
        weighing);
  }
}

// Each path is cut and computed again, as in the survey.
void paths(const terrain::TileSource& tiles, double distance_m) {
  const double longest_m =
      std::min(distance_m, 205e3);  // as far as the tiles reach from the middle
  std::mt19937 random(9);
  std::vector<Station> stations = invented(64, longest_m * 0.98, longest_m);
  // Paths of 250 km run from the western edge past the stop.
  reception::Receiver at = receiver();
  if (distance_m > longest_m) {
    at.position = *Position::at_deg(42.5, -120.95);
    for (std::size_t i = 0; i < stations.size(); ++i) {
      stations[i].position = destination(
          at.position, Bearing<True>::degrees(80.0 + 0.3 * static_cast<double>(i)), distance_m);
    }
  }
  const auto rate = [&](int threads,
                        const std::function<void(std::size_t, reception::Scratch&)>& work) {
    std::vector<reception::Scratch> scratches(static_cast<std::size_t>(threads));
    const Took took = least_time(9, [&] {
      in_threads(threads, [&](int thread) {
        auto& scratch = scratches[static_cast<std::size_t>(thread)];
        for (auto i = static_cast<std::size_t>(thread); i < stations.size();
             i += static_cast<std::size_t>(threads)) {
          work(i, scratch);
        }
      });
    });
    return static_cast<double>(stations.size()) / took.wall_s;
  };
  std::atomic<long> done{0};
  const auto cut = [&](std::size_t i, reception::Scratch& scratch) {
    terrain::cut_profile(tiles, stations[i].position, at.position, scratch.profile);
  };
  const auto itm = [&](std::size_t i, reception::Scratch& scratch) {
    cut(i, scratch);
    const auto path = itm::point_to_point(
        {.frequency_mhz = 527.0, .transmitter_height_m = 100.0, .receiver_height_m = 10.0},
        {scratch.profile.spacing_m, scratch.profile.heights_m});
    if (path && itm::predict(*path, {}, {})) ++done;
  };
  const auto p1812 = [&](std::size_t i, reception::Scratch& scratch) {
    cut(i, scratch);
    const auto loss = p1812::loss_of(
        {.spacing_km = scratch.profile.spacing_m / 1000.0, .heights_m = scratch.profile.heights_m},
        {.frequency_mhz = 527.0,
         .transmitter_height_m = 100.0,
         .receiver_height_m = 10.0,
         .path_latitude_deg = 42.5},
        {}, scratch.p1812);
    if (loss) ++done;
  };
  reception::Survey survey(at, stations, tiles);
  const auto both = [&](std::size_t i, reception::Scratch& scratch) {
    survey.measure(i, i + 1, scratch);
  };
  for (const int threads : {1, 2}) {
    fmt::print(
        "{:3.0f} km, {} thread{}: profile alone {:7.0f} paths/s, with ITM {:7.0f}, with P.1812 "
        "{:7.0f}, station with all {:7.0f}\n",
        distance_m / 1e3, threads, threads > 1 ? "s" : " ", rate(threads, cut), rate(threads, itm),
        rate(threads, p1812), rate(threads, both));
  }
  if (done == 0) fmt::print("no path was computed\n");
}

// Resident and private memory, if the system reports it in this file.
void memory() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);) {
    if (line.rfind("VmHWM", 0) == 0 || line.rfind("RssAnon", 0) == 0 ||
        line.rfind("RssFile", 0) == 0) {
      fmt::print("{}\n", line);
    }
  }
}

}  // namespace

// Usage: survey_bench [FOLDER OF TILES]; without one, the practice area of the assets.
int main(int argc, char** argv) {
  const std::filesystem::path beside =
      std::filesystem::path(argv[0]).parent_path() / "assets" / "practice";
  const platform::TileFolder tiles(argc > 1 ? std::filesystem::path(argv[1]) : beside);
  fmt::print("{} tiles\n", tiles.cells().size());
  whole_survey(tiles);
  for (const double distance_m : {25e3, 100e3, 250e3}) paths(tiles, distance_m);
  memory();
}
