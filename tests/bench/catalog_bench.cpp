#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "tests/bench/invented_stations.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include <fmt/format.h>

// Speed of reading and importing stations, and of catalog queries, with 10,000 and 100,000 invented
// stations scattered over a continent.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

// Median and slowest of the runs, in microseconds, and how many fit in a second.
template <class Work>
void report(const std::string& name, int runs, Work work) {
  std::vector<double> times;
  std::size_t found = 0;
  for (int run = 0; run < runs; ++run) {
    const auto start = Clock::now();
    found += work(run);
    times.push_back(seconds_since(start) * 1e6);
  }
  std::sort(times.begin(), times.end());
  const double median_us = times[times.size() / 2];
  fmt::print("  {:<34} median {:9.0f} us  slowest {:9.0f} us  {:9.0f} a second  {:6.1f} found\n",
             name, median_us, times.back(), 1e6 / median_us, static_cast<double>(found) / runs);
}

std::size_t found_by(Catalog& catalog, const std::string& text, const Position& from) {
  const auto found = catalog.search(text, from, 50);
  return found ? found->size() : 0;
}

void measure(std::size_t count, const std::string& path) {
  for (const char* end : {"", "-wal", "-shm"}) std::filesystem::remove(path + end);
  fmt::print("{} stations\n", count);
  const std::string text = bench::invented_csv(count);
  auto start = Clock::now();
  const auto table = read_station_csv(text, {"invented", "2026-01-01"});
  if (!table) return fmt::print("  {}\n", table.error().message());
  const double read_s = seconds_since(start);
  fmt::print("  read   {:9.0f} rows a second\n", static_cast<double>(count) / read_s);

  auto catalog = Catalog::open(path);
  if (!catalog) return fmt::print("  {}\n", catalog.error().message());
  for (const char* name : {"import", "again "}) {
    start = Clock::now();
    const auto done = catalog->replace_source(*table);
    if (!done) return fmt::print("  {}\n", done.error().message());
    fmt::print("  {} {:9.0f} rows a second\n", name,
               static_cast<double>(count) / seconds_since(start));
  }
  fmt::print("  file   {:9.1f} MB\n", static_cast<double>(std::filesystem::file_size(path)) / 1e6);

  std::mt19937 random(11);
  std::uniform_real_distribution<double> latitude(28.0, 46.0), longitude(-120.0, -72.0);
  const auto somewhere = [&] { return *Position::at_deg(latitude(random), longitude(random)); };
  report("nearest within 250 km, 400 at most", 50, [&](int) {
    const auto found = catalog->nearest(somewhere(), 250e3, 400);
    return found ? found->size() : 0;
  });
  report("nearest 10", 50, [&](int) {
    const auto found = catalog->nearest(somewhere(), 20e6, 10);
    return found ? found->size() : 0;
  });
  for (const char* typed :
       {"q", "qa", "qabc", "lode", "old trails town 12", "23", "6.1", "rf 23"}) {
    report(fmt::format("search \"{}\"", typed), 15,
           [&](int) { return found_by(*catalog, typed, somewhere()); });
  }
  report("call sign", 200, [&](int run) {
    const auto found =
        catalog->with_call_sign(bench::call_sign(static_cast<std::size_t>(run) * 37));
    return found ? found->size() : 0;
  });
}

}  // namespace

int main() {
  const std::string path =
      (std::filesystem::temp_directory_path() / "mastwise_catalog_bench.sqlite").string();
  for (const std::size_t count : {std::size_t{10000}, std::size_t{100000}}) measure(count, path);
  for (const char* end : {"", "-wal", "-shm"}) std::filesystem::remove(path + end);
}
