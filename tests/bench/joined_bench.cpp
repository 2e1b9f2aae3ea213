#include "core/catalog/catalog.hpp"
#include "core/import/joined_import.hpp"
#include "platform/files.hpp"
#include "platform/table_folder.hpp"
#include "tests/support/licensing_dump.hpp"

#include <chrono>
#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <sys/resource.h>

// Speed and memory of importing a dump of the size of the US licensing database in August 2026:
// 180,831 facilities, 1.27 million applications, 339 thousand frequencies; an archive of archives.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

double peak_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

double megabytes_of(test::LicensingDump& dump) {
  std::uint64_t bytes = 0;
  std::string piece(std::size_t{1} << 18, '\0');
  for (const std::string name : test::LicensingDump::kNames) {
    const auto stream = dump.open(name);
    while (const auto got = *(*stream)->read({piece.data(), piece.size()})) bytes += got;
  }
  return static_cast<double>(bytes) / 1e6;
}

Result<std::size_t> import(const std::filesystem::path& archive, const std::string& catalog_path) {
  const auto text = platform::read_file(platform::assets_folder() + "/mappings/us_lms.json");
  if (!text) return text.error();
  const auto mapping = parse_joined_mapping(*text);
  if (!mapping) return mapping.error();
  auto files = platform::TableFolder::at(archive);
  if (!files) return files.error();
  const auto start = Clock::now();
  const auto table = read_joined_tables(*files, *mapping);
  if (!table) return table.error();
  fmt::print("read and joined in {:.1f} s, peak memory {:.0f} MB\n", seconds_since(start),
             peak_mb());
  auto catalog = Catalog::open(catalog_path);
  if (!catalog) return catalog.error();
  const auto report = catalog->replace_source(*table);
  if (!report) return report.error();
  return report->stations_added;
}

}  // namespace

int main() {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / "mastwise_joined_bench";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  test::LicensingDump dump(180'831);
  const double megabytes = megabytes_of(dump);
  dump.write_nested_zip(folder, folder / "dump.zip");
  fmt::print("dump of {:.0f} MB, packed {:.0f} MB; peak memory so far {:.0f} MB\n", megabytes,
             static_cast<double>(std::filesystem::file_size(folder / "dump.zip")) / 1e6, peak_mb());
  const auto start = Clock::now();
  const auto count = import(folder / "dump.zip", folder / "catalog");
  const double seconds = seconds_since(start);
  std::filesystem::remove_all(folder);
  if (!count) {
    fmt::print("{}\n", count.error().message());
    return 1;
  }
  fmt::print("{} of {} stations imported in {:.1f} s, {:.0f} MB a second; peak memory {:.0f} MB\n",
             *count, dump.stations(), seconds, megabytes / seconds, peak_mb());
  return *count == dump.stations() ? 0 : 1;
}
