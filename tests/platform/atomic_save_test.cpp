#include "platform/atomic_save.hpp"

#include "platform/mapped_file.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <string>
#include <string_view>

#include <catch2/catch.hpp>

namespace mastwise::platform {
namespace {

std::span<const std::byte> bytes_of(std::string_view text) {
  return std::as_bytes(std::span(text));
}

}  // namespace

TEST_CASE("a save replaces the old content and leaves no other files") {
  const test::TemporaryFolder folder;
  REQUIRE(save_atomically(folder / "stops", bytes_of("first")));
  REQUIRE(save_atomically(folder / "stops", bytes_of("second")));
  const auto content = folder.content();
  REQUIRE(content.size() == 1);
  CHECK(content[0].first == "stops");
  CHECK(content[0].second == "second");
}

TEST_CASE("a failed save reports the path and keeps the old content") {
  const test::TemporaryFolder folder;
  const auto nowhere = save_atomically(folder / "missing/stops", bytes_of("text"));
  REQUIRE_FALSE(nowhere);
  CHECK(nowhere.error().where.find("missing/stops") != std::string::npos);

  // A folder is in the way of the file.
  std::filesystem::create_directories(folder / "stops/within");
  CHECK_FALSE(save_atomically(folder / "stops", bytes_of("text")));
  CHECK(std::filesystem::is_directory(folder / "stops/within"));
  CHECK_FALSE(std::filesystem::exists(folder / "stops.part"));
}

TEST_CASE("a mapped file can be replaced, and who reads it keeps the old content") {
  const test::TemporaryFolder folder;
  REQUIRE(save_atomically(folder / "tile", bytes_of("first")));
  {
    const auto mapped = MappedFile::open(folder / "tile", {});
    REQUIRE(mapped);
    REQUIRE(save_atomically(folder / "tile", bytes_of("second")));
    const auto seen = mapped->bytes();
    CHECK(std::string_view(reinterpret_cast<const char*>(seen.data()), seen.size()) == "first");
    CHECK(test::read_file(folder / "tile") == "second");
  }
  REQUIRE(save_atomically(folder / "tile", bytes_of("third")));
  CHECK(test::read_file(folder / "tile") == "third");
  CHECK(folder.content().size() == 1);
}

}  // namespace mastwise::platform
