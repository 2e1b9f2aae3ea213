#include "core/plan/slack.hpp"

#include "tests/core/plan/curves.hpp"

#include <catch2/catch.hpp>

// Worked by hand: a tent of 90 percent falls by 2 a degree and so meets 70 after 10 degrees.
namespace mastwise {

namespace {

Bearing<True> at(double degrees) {
  return Bearing<True>::degrees(degrees);
}

}  // namespace

TEST_CASE("tolerance: it ends where the chance meets the floor") {
  const auto curve = test::tent(100.0);
  CHECK(slack(curve, at(100.0), 70.0) == Slack{10.0, 10.0});
  CHECK(slack(curve, at(96.5), 70.0) == Slack{6.5, 13.5});
  // At the very edge one side is 0, and a hair beyond it is empty.
  CHECK(slack(curve, at(110.0), 70.0) == Slack{20.0, 0.0});
  CHECK_FALSE(slack(curve, at(110.001), 70.0));
  CHECK_FALSE(slack(curve, at(280.0), 70.0));
  // 75 is met after 7.5 degrees, between whole degrees.
  CHECK(slack(curve, at(100.0), 75.0) == Slack{7.5, 7.5});
  // Touched in one point.
  CHECK(slack(curve, at(100.0), 90.0) == Slack{0.0, 0.0});
  CHECK_FALSE(slack(curve, at(100.0), 90.001));
}

TEST_CASE("tolerance: it works across north, across the opposite side and all round") {
  const auto over_north = test::tent(355.0);
  CHECK(slack(over_north, at(0.0), 70.0) == Slack{15.0, 5.0});
  REQUIRE(arcs_above(over_north.percent(), 70.0).size() == 1);
  CHECK(arcs_above(over_north.percent(), 70.0)[0] == HeadingArc{at(345.0), 20.0});
  // Below the floor only from 170 to 190.
  auto values = test::level(80.0).percent();
  for (std::size_t h = 171; h < 190; ++h) values[h] = 60.0;
  const auto wide = reception::ChanceCurve(at(0.0), values);
  const auto most = slack(wide, at(90.0), 80.0);
  REQUIRE(most);
  CHECK(most->left_deg == Approx(260.0));
  CHECK(most->right_deg == Approx(80.0));
  CHECK_FALSE(most->all_round());
  CHECK(slack(test::level(70.0), at(33.0), 70.0) == Slack{180.0, 180.0});
  CHECK_FALSE(slack(test::level(69.999), at(33.0), 70.0));
}

TEST_CASE("tolerance: two faces give two arcs") {
  const auto curve = test::tents({{20.0}, {200.0}});
  CHECK(arcs_above(curve.percent(), 70.0) ==
        std::vector<HeadingArc>{{at(10.0), 20.0}, {at(190.0), 20.0}});
  CHECK(slack(curve, at(195.0), 70.0) == Slack{5.0, 15.0});
}

TEST_CASE("best heading: a flat top is aimed at in its middle") {
  // A roof cut off at 95 from 90 to 120: the peaks of many tents.
  auto values = test::tent(105.0, 125.0).percent();
  for (double& value : values) value = std::min(value, 95.0);
  CHECK(best_heading({at(60.0), values}).degrees() == Approx(105.0));
  CHECK(best_heading(test::tent(359.0)).degrees() == Approx(359.0));
  // Two faces: the one toward the station. All round: the station itself.
  CHECK(best_heading(test::tents({{200.0}, {20.0}})).degrees() == Approx(200.0));
  CHECK(best_heading(test::tents({{20.0}, {200.0}})).degrees() == Approx(20.0));
  CHECK(best_heading(test::level(64.0, 123.0)).degrees() == 123.0);
}

}  // namespace mastwise
