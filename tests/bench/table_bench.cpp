#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "tests/support/made_rows.hpp"

#include <chrono>
#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <sys/resource.h>

// Speed, memory and what is left beside the catalog when a table of 60 MB is imported, stopped
// halfway, and imported again over the first.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

constexpr std::size_t kRows = 800'000;

Result<ImportReport> import(Catalog& catalog, std::uint64_t stop_after) {
  const Source source{"invented", ""};
  return catalog.replace_source(source, [&](StationSink& sink) {
    test::MadeRows stream(kRows);
    return stream_station_table(stream, own_mapping(source), sink,
                                [&](std::uint64_t done) { return done < stop_after; });
  });
}

void measure(const char* name, Catalog& catalog, const std::string& path,
             std::uint64_t stop_after) {
  const auto start = Clock::now();
  const auto report = import(catalog, stop_after);
  const double seconds = std::chrono::duration<double>(Clock::now() - start).count();
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  const std::string log = path + "-wal";
  const double log_mb = std::filesystem::exists(log)
                            ? static_cast<double>(std::filesystem::file_size(log)) / 1e6
                            : 0.0;
  fmt::print(
      "{}: {} in {:.1f} s, {:.0f} rows a second; peak memory {:.0f} MB; log left {:.1f} MB\n", name,
      report ? fmt::format("{} rows", report->rows_read) : report.error().what, seconds,
      report ? static_cast<double>(kRows) / seconds : 0.0,
      static_cast<double>(usage.ru_maxrss) / 1024.0, log_mb);
}

}  // namespace

int main() {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / "mastwise_table_bench";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  const std::string path = (folder / "catalog").string();
  auto catalog = Catalog::open(path);
  if (!catalog) return 1;
  constexpr std::uint64_t kNever = ~std::uint64_t{0};
  measure("first", *catalog, path, kNever);
  measure("stopped", *catalog, path, 30'000'000);
  measure("again", *catalog, path, kNever);
  std::filesystem::remove_all(folder);
  return 0;
}
