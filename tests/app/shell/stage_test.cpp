#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

TEST_CASE("the stage reads a picture's text back from its letters") {
  Stage stage;
  CHECK(stage.shows_within("Which way to park"));
  CHECK(stage.shows("42.500000, -118.500000"));
  CHECK_FALSE(stage.shows("42.500000, -118.500001"));
  CHECK(stage.shows_within("PRACTICE AREA"));
  stage.tap("place Aim");
  CHECK(stage.shows("59 ft off"));
  CHECK(stage.taps() == 1);
}
