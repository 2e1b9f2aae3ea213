#include "core/import/program_table.hpp"
#include "tests/support/memory_need.hpp"
#include "tests/support/sanitized.hpp"

#include <string>

#include <catch2/catch.hpp>
#include <fmt/core.h>

namespace mastwise {
namespace {

// The longest text that the app reads.
constexpr std::size_t kLongest = std::size_t{32} << 20;
constexpr long kBound_mb = 200;
constexpr std::size_t kMostPrograms = 200'000;

}  // namespace

TEST_CASE("a table of programs is read in under 200 MB, whatever is in it") {
  const auto need_mb = [](const std::string& table, bool readable) {
    return test::memory_need_mb([&] {
      const auto read = read_program_csv(table, {"PRACTICE", {}});
      return static_cast<bool>(read) == readable;
    });
  };
  // As many programs as are taken, with texts as long as that leaves room for.
  const std::string texts(kLongest / kMostPrograms / 3 - 6, 'n');
  std::string full = "facility_id,virtual_channel,name,network,language\n";
  for (std::size_t i = 0; i < kMostPrograms; ++i) {
    full += fmt::format("{},6.1,{},{},{}\n", i, texts, texts, "en");
  }
  REQUIRE(full.size() < kLongest);
  std::string short_rows = "facility_id,virtual_channel\n", bad_rows = short_rows;
  while (short_rows.size() < kLongest) short_rows += "1,6.1\n";
  while (bad_rows.size() < kLongest) bad_rows += ",6.1\n";
  const auto too_many = read_program_csv(short_rows, {"PRACTICE", {}});
  REQUIRE_FALSE(too_many);
  CHECK(too_many.error().message().find("200000 programs") != std::string::npos);
  CHECK_FALSE(too_many.error().remedy.empty());
  const auto all_bad = read_program_csv(bad_rows, {"PRACTICE", {}});
  REQUIRE_FALSE(all_bad);
  CHECK(all_bad.error().where == "line 2");
  if (test::kSanitized) return;
  const long full_mb = need_mb(full, true), short_mb = need_mb(short_rows, false),
             bad_mb = need_mb(bad_rows, false);
  INFO(full_mb << " MB, " << short_mb << " MB, " << bad_mb << " MB");
  CHECK(full_mb < kBound_mb);
  CHECK(short_mb < kBound_mb);
  CHECK(bad_mb < kBound_mb);
  CHECK(full_mb > 20);
}

}  // namespace mastwise
