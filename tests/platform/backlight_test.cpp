#include "platform/backlight.hpp"

#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>

// Files named as the kernel's ABI document sysfs-class-backlight names them.
using namespace mastwise;
using platform::Backlight;

namespace {

void make_screen(const test::TemporaryFolder& folder, const std::string& name, int level,
                 int most) {
  std::filesystem::create_directory(folder.file(name));
  std::ofstream(folder.file(name + "/max_brightness")) << most << '\n';
  std::ofstream(folder.file(name + "/brightness")) << level << '\n';
}

int level_of(const test::TemporaryFolder& folder, const std::string& name) {
  int level = -1;
  std::ifstream(folder.file(name + "/brightness")) >> level;
  return level;
}

}  // namespace

TEST_CASE("a backlight is darkened, and gets its level back") {
  test::TemporaryFolder folder;
  make_screen(folder, "panel", 800, 1000);
  {
    Backlight light = Backlight::in(folder.path());
    REQUIRE(light.found());
    light.at_most(0.4);
    CHECK(level_of(folder, "panel") == 400);
    light.at_most(0.1);
    CHECK(level_of(folder, "panel") == 100);
    light.restore();
    CHECK(level_of(folder, "panel") == 800);
    light.at_most(0.4);
  }
  CHECK(level_of(folder, "panel") == 800);
}

TEST_CASE("a backlight is never made brighter, nor turned off") {
  test::TemporaryFolder folder;
  make_screen(folder, "dim", 200, 1000);
  make_screen(folder, "coarse", 3, 4);
  Backlight light = Backlight::in(folder.path());
  light.at_most(0.4);
  CHECK(level_of(folder, "dim") == 200);
  CHECK(level_of(folder, "coarse") == 2);
  light.at_most(0.01);
  CHECK(level_of(folder, "coarse") == 1);
}

TEST_CASE("a level that somebody else sets meanwhile stays") {
  test::TemporaryFolder folder;
  make_screen(folder, "panel", 800, 1000);
  Backlight light = Backlight::in(folder.path());
  light.at_most(0.4);
  make_screen(folder, "panel", 650, 1000);
  light.restore();
  CHECK(level_of(folder, "panel") == 650);
}

TEST_CASE("a folder without backlights has none, and one that tells no level does not count") {
  test::TemporaryFolder folder;
  CHECK_FALSE(Backlight::in(folder.file("none")).found());
  std::filesystem::create_directory(folder.file("broken"));
  std::ofstream(folder.file("broken/brightness")) << "bright\n";
  CHECK_FALSE(Backlight::in(folder.path()).found());
}
