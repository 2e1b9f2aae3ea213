// Area scans of one station over 500 x 500 cells: seconds and cells per second on one thread and on
// all, and the differences of margins from single paths at 2,000 cells.
#include "core/geo/geodesic.hpp"
#include "core/reception/area_scan.hpp"
#include "platform/frames.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include <fmt/format.h>

namespace {

using namespace mastwise;
using reception::AreaCell;
using reception::AreaGrid;
using reception::AreaScan;
using reception::CellState;
using Clock = std::chrono::steady_clock;

constexpr std::size_t kSide = 500;
constexpr int kPaths = 2'000;
constexpr int kRounds = 2;

struct Case {
  std::string name;
  Position stop;
  Station station;
};

Station station(const char* call_sign, Position position, int channel, double amsl_m,
                double erp_kw) {
  return {.id = call_sign,
          .call_sign = call_sign,
          .rf_channel = {channel},
          .standard = BroadcastStandard::atsc1,
          .position = position,
          .antenna_amsl_m = amsl_m,
          .erp_kw = erp_kw,
          .polarization = Polarization::horizontal,
          .directional = false};
}

reception::Receiver receiver(Position position) {
  return {.position = position, .gear = gear::presets().front()};
}

void complete(AreaScan& scan, unsigned threads) {
  std::vector<reception::AreaScratch> scratches(threads);
  while (scan.next_pass()) {
    std::atomic<std::size_t> next{0};
    const auto work = [&](std::size_t thread) {
      for (std::size_t slice = next++; slice < scan.slices(); slice = next++) {
        scan.measure(slice, scratches[thread]);
      }
    };
    std::vector<std::thread> others;
    for (unsigned thread = 1; thread < threads; ++thread) others.emplace_back(work, thread);
    work(0);
    for (std::thread& other : others) other.join();
  }
}

void compare_with_paths(const AreaScan& scan, const terrain::TileSource& tiles) {
  std::mt19937 random(7);
  std::uniform_int_distribution<std::size_t> any(0, scan.grid().size() - 1);
  reception::Scratch scratch;
  std::vector<double> errors_db;
  double squares = 0.0, chance_squares = 0.0, worst_percent = 0.0;
  int only_path = 0, only_scan = 0;
  for (int i = 0; i < kPaths; ++i) {
    const std::size_t cell = any(random);
    reception::Survey single(receiver(scan.grid().position(cell)), {scan.station()}, tiles);
    single.measure(0, 1, scratch);
    const reception::Outlook& outlook = *single.outlook(0);
    const AreaCell& here = scan.cells()[cell];
    const bool known = outlook.mode == reception::PathMode::point_to_point;
    if (known && !here.known()) ++only_path;
    if (!known && here.known()) ++only_scan;
    if (!known || !here.known()) continue;
    const double error_db = here.margin_db - *outlook.margin_db;
    const double error_percent = *scan.chance_percent(here) - *outlook.chance_percent;
    squares += error_db * error_db;
    chance_squares += error_percent * error_percent;
    worst_percent = std::max(worst_percent, std::fabs(error_percent));
    errors_db.push_back(std::fabs(error_db));
  }
  if (errors_db.empty()) return;
  std::sort(errors_db.begin(), errors_db.end());
  const auto count = static_cast<double>(errors_db.size());
  const auto quantile = [&](double part) {
    return errors_db[static_cast<std::size_t>(part * (count - 1.0))];
  };
  fmt::print(
      "    against {} single paths: margin {:.2f} dB RMS, half within {:.2f}, 95 % within {:.2f}, "
      "99 % within {:.2f}, 99.9 % within {:.1f}, most {:.1f} dB; chance {:.2f} RMS, most {:.1f} "
      "points; known to one "
      "only: path {}, scan {}\n",
      errors_db.size(), std::sqrt(squares / count), quantile(0.5), quantile(0.95), quantile(0.99),
      quantile(0.999), errors_db.back(), std::sqrt(chance_squares / count), worst_percent,
      only_path, only_scan);
}

void scan(const Case& one, const terrain::TileSource& tiles, double radius_m) {
  const auto grid = AreaGrid::around(one.stop, radius_m, kSide);
  const double away_m = path_between(one.stop, one.station.position).distance_m;
  for (const unsigned threads : {1u, platform::computing_threads()}) {
    double least_wall_s = 1e9, least_processor_s = 1e9;
    for (int round = 0; round < kRounds; ++round) {
      auto area = AreaScan::of(*grid, receiver(one.stop), one.station, tiles);
      if (!area) {
        fmt::print("{}: {}\n", one.name, area.error().message());
        return;
      }
      const auto begin = Clock::now();
      const std::clock_t processor = std::clock();
      complete(*area, threads);
      least_processor_s = std::min(least_processor_s,
                                   static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC);
      least_wall_s =
          std::min(least_wall_s, std::chrono::duration<double>(Clock::now() - begin).count());
      if (round > 0) continue;
      std::size_t computed = 0, unknown = 0;
      for (const AreaCell& cell : area->cells()) {
        computed += cell.state == CellState::computed ? 1u : 0u;
        unknown += cell.state == CellState::unknown ? 1u : 0u;
      }
      if (threads > 1) continue;
      fmt::print(
          "{}, station {:.0f} km away, radius {:.0f} km: {:.0f} % of the cells computed, "
          "{:.0f} % unknown\n",
          one.name, away_m / 1e3, radius_m / 1e3,
          100.0 * static_cast<double>(computed) / static_cast<double>(grid->size()),
          100.0 * static_cast<double>(unknown) / static_cast<double>(grid->size()));
      compare_with_paths(*area, tiles);
    }
    fmt::print("    {} thread{}: {:.2f} s ({:.2f} s of processor), {:.0f} cells/s\n", threads,
               threads > 1 ? "s" : "", least_wall_s, least_processor_s,
               static_cast<double>(grid->size()) / least_wall_s);
  }
}

}  // namespace

// Usage: area_scan_bench [FOLDER OF TILES]; with one that has N44W072.hgt also over real ground.
int main(int argc, char** argv) {
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const auto at = [](double latitude_deg, double longitude_deg) {
    return *Position::at_deg(latitude_deg, longitude_deg);
  };
  const std::filesystem::path beside =
      std::filesystem::path(argv[0]).parent_path() / "assets" / "practice";
  const platform::TileFolder practice(beside);
  const Case near{"practice hills", at(42.5, -118.5),
                  station("QNEA", at(42.8, -118.2), 30, 2400.0, 100.0)};
  const Case far{"practice hills", at(42.5, -118.5),
                 station("QFAR", at(43.3, -117.9), 30, 2600.0, 1000.0)};
  for (const double radius_m : {10e3, 25e3}) {
    scan(near, practice, radius_m);
    scan(far, practice, radius_m);
  }
  if (argc < 2) return 0;
  const platform::TileFolder real(argv[1]);
  // Figures of the regulator's table: reference data, README.
  const Case led{"mountains", at(44.435217, -71.675993),
                 station("WLED-TV", at(44.352778, -71.736944), 23, 744.2, 65.4)};
  const Case vtb{"mountains", at(44.435217, -71.675993),
                 station("WVTB", at(44.571111, -71.893611), 28, 1022.4, 84.1)};
  const Case long_way{"mountains", at(44.25, -71.2),
                      station("WVTB", at(44.571111, -71.893611), 28, 1022.4, 84.1)};
  for (const Case& one : {led, vtb, long_way}) {
    for (const double radius_m : {10e3, 20e3}) scan(one, real, radius_m);
  }
}
