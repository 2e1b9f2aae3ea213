#include "core/logbook/lesson.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::learning;

TEST_CASE("the main lesson is the used correction farthest from zero", "[learning]") {
  std::array<Correction, 3> corrections{};
  corrections[0] = {.bias_db = -9.0, .outcomes = 2, .stops = 1, .applied = false};
  corrections[1] = {.bias_db = -4.0, .sigma_db = 1.5, .outcomes = 12, .stops = 5, .applied = true};
  corrections[2] = {.bias_db = 3.0, .outcomes = 40, .stops = 9, .applied = true};
  const auto lesson = main_lesson(corrections);
  REQUIRE(lesson);
  CHECK(*lesson == Lesson{Band::high_vhf, -4.0, 1.5, 12, 5});
  corrections[1].applied = false;
  CHECK(main_lesson(corrections)->band == Band::uhf);
  corrections[2].applied = false;
  CHECK_FALSE(main_lesson(corrections));
}
