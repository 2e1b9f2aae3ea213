#include "platform/files.hpp"
#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("a file keeps a name in any script, whichever way it is opened") {
  const test::TemporaryFolder folder;
  const std::filesystem::path name(u8"Zürich Ω 地図 😀");
  const auto utf8 = name.u8string();
  const std::string text(utf8.begin(), utf8.end());
  CHECK(std::filesystem::path(text) == name);
  CHECK(name.string() == text);
  const std::filesystem::path inside = std::filesystem::path(folder.path()) / name;
  std::filesystem::create_directories(inside);
  std::ofstream(inside.string() + "/" + text) << "by a stream";
  const auto bytes = platform::read_file(inside.string() + "/" + text);
  REQUIRE(bytes);
  CHECK(*bytes == "by a stream");
  for (const auto& entry : std::filesystem::directory_iterator(inside)) {
    CHECK(entry.path().filename() == name);
  }
}
