#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "tests/support/memory_need.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <filesystem>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;

namespace {

// PRACTICE: a table of any size, made while it is read.
class RowsStream : public ByteStream {
 public:
  explicit RowsStream(std::size_t rows) : rows_(rows) {}
  Result<std::size_t> read(std::span<char> into) override {
    while (rest_.size() < into.size() && next_ < rows_) {
      rest_ += fmt::format("Q{:06},ATSC,{},{:.5f},{:.5f},{},a note on this station,Alder Reach\n",
                           next_, 2 + next_ % 35, 30.0 + static_cast<double>(next_ % 1500) / 100.0,
                           -110.0 + static_cast<double>(next_ % 2900) / 100.0, 1 + next_ % 900);
      ++next_;
    }
    const std::size_t given = std::min(rest_.size(), into.size());
    std::copy_n(rest_.begin(), given, into.begin());
    rest_.erase(0, given);
    return given;
  }
  std::uint64_t size() const override { return 0; }

 private:
  std::string rest_ = "call_sign,raster,rf_channel,latitude_deg,longitude_deg,erp_kw,remark,city\n";
  std::size_t rows_;
  std::size_t next_ = 0;
};

Result<ImportReport> import_rows(Catalog& catalog, std::size_t rows, std::size_t stop_at) {
  const Source source{"large", ""};
  std::size_t looks = 0;
  return catalog.replace_source(source, [&](StationSink& sink) {
    RowsStream stream(rows);
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
