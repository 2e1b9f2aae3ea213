#include "platform/system_paths.hpp"

#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("assets are beside the program, else where a package puts them") {
  const test::TemporaryFolder folder;
  const std::string programs = folder / "usr/bin";
  const std::string beside = folder / "usr/bin/assets", installed = folder / "usr/share/mastwise";
  CHECK(platform::assets_beside(programs) == beside);  // for the error to name
  std::filesystem::create_directories(installed);
  CHECK(platform::assets_beside(programs) == installed);
  std::filesystem::create_directories(beside);
  CHECK(platform::assets_beside(programs) == beside);
}
