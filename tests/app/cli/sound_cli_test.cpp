#include "core/sound/wav.hpp"
#include "tests/support/child_program.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

// 22,050 samples a second of two bytes, and 44 bytes of head.
TEST_CASE("the verb sound writes what is heard and prints its level") {
  const test::TemporaryFolder data;
  const std::string file = data.file("alarm.wav");
  const auto ended =
      test::run_program({"sound", "alarm", file, "--seconds", "3"}, data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  CHECK(test::contains(ended.output, "alarm: 3.10 s, peak -1."));
  const std::string bytes = test::read_file(file);
  // The time is printed to a hundredth of a second.
  CHECK(bytes.size() == Approx(44 + 2 * 22'050 * 3.1).margin(2 * 22'050 * 0.005));
  CHECK(bytes.substr(0, 4) == "RIFF");
}

TEST_CASE("the verb sound renders a walk with words, and refuses an unknown sound", "[linux]") {
  const test::TemporaryFolder data;
  const auto walk = test::run_program(
      {"sound", "walk", data.file("walk.wav"), "--speech", "--left"}, data.file("data"));
  INFO(walk.errors);
  CHECK(walk.status == 0);
  CHECK(test::run_program({"sound", "drum", data.file("drum.wav")}, data.file("data")).status == 2);
}
