#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "tests/support/made_rows.hpp"
#include "tests/support/memory_need.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Result<ImportReport> import_rows(Catalog& catalog, std::size_t rows, std::size_t stop_at) {
  const Source source{"large", ""};
  std::size_t looks = 0;
  return catalog.replace_source(source, [&](StationSink& sink) {
    test::MadeRows stream(rows);
    return stream_station_table(stream, own_mapping(source), sink,
                                [&](std::uint64_t) { return ++looks < stop_at; });
  });
}

constexpr std::size_t kNever = 1'000'000'000;

}  // namespace

TEST_CASE("a large table is imported in little memory") {
  if (test::kSanitized) return;
  constexpr std::size_t kRows = 60'000;
  const test::TemporaryFolder folder;
  const long need_mb = test::memory_need_mb([&] {
    auto catalog = Catalog::open(folder.file("catalog"));
    if (!catalog) return false;
    const auto report = import_rows(*catalog, kRows, kNever);
    return report && report->stations_added == kRows;
  });
  // Its stations alone would need more: 60,000 of about 1 kB with their texts.
  CHECK(need_mb < 45);
}

TEST_CASE("a stopped import leaves neither stations nor a large log") {
  const test::TemporaryFolder folder;
  auto catalog = Catalog::open(folder.file("catalog"));
  REQUIRE(catalog);
  REQUIRE(import_rows(*catalog, 100, kNever));
  const auto stopped = import_rows(*catalog, 50'000, 100);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().what == "the import was stopped");
  CHECK(*catalog->count() == 100);
  const std::string log = folder.file("catalog-wal");
  CHECK((!std::filesystem::exists(log) || std::filesystem::file_size(log) < 5'000'000));
}
