#include "app/words/cautions.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

// By hand: 6.75 m are 22.15 ft; 7.05 m are 23.13 ft. The published 10 ft and 20 ft are printed as 3
// m and 6 m; every other length is rounded up, never down.
TEST_CASE("a distance to keep is never rounded down") {
  CHECK(words::at_least(6.75, true) == "23 ft (7 m)");
  CHECK(words::at_least(7.05, false) == "8 m (24 ft)");
  CHECK(words::at_least(20 * 0.3048, true) == "20 ft (6 m)");
  CHECK(words::at_least(10 * 0.3048, false) == "3 m (10 ft)");
  CHECK(words::at_least_alone(6.11, true) == "21 ft");
  CHECK(words::at_least_alone(6.11, false) == "7 m");
}

TEST_CASE("the head of a caution has the distance for this antenna") {
  const safety::Prompt& prompt = safety::before_raising();
  CHECK(words::caution_head(prompt.cautions.front(), 6.75, true) ==
        "Stay 23 ft (7 m) from any line");
  for (const safety::Caution& caution : prompt.cautions) {
    CHECK(words::caution_head(caution, 6.75, true).find('{') == std::string::npos);
  }
  const std::string sources = words::sources(prompt);
  CHECK(sources.find("US CPSC 2002") != std::string::npos);
  CHECK(sources.find("US CPSC 2002") == sources.rfind("US CPSC 2002"));  // once
}

// 50 knots are 92.6 km/h and 57.5 mph.
TEST_CASE("a speed is in the unit of the road") {
  CHECK(words::speed_number(92.6, true) + words::speed_unit(true) == "58mph");
  CHECK(words::speed_number(92.6, false) + words::speed_unit(false) == "93km/h");
}
