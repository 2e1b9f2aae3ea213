#include "app/aim/aimed.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using State = Aimed::State;

namespace {

State state_at(double points_deg, double doubt_deg, const std::optional<Slack>& slack) {
  return aimed_state(Turn::clockwise_deg(-points_deg), doubt_deg, slack);
}

}  // namespace

// By hand: a tolerance of 9 left and 12 right, a heading known within 5, leaves -4 to 7.
TEST_CASE("good means that the heading with its whole doubt is inside the tolerance") {
  const Slack slack{.left_deg = 9.0, .right_deg = 12.0};
  CHECK(state_at(0.0, 5.0, slack) == State::Good);
  CHECK(state_at(6.9, 5.0, slack) == State::Good);
  CHECK(state_at(7.1, 5.0, slack) == State::Off);
  CHECK(state_at(-3.9, 5.0, slack) == State::Good);
  CHECK(state_at(-4.1, 5.0, slack) == State::Off);
  // Inside the tolerance alone is not enough.
  CHECK(state_at(11.0, 5.0, slack) == State::Off);
  CHECK(state_at(11.0, 0.5, slack) == State::Good);
}

TEST_CASE("a tolerance narrower than the doubt is never good, only as exact as the sensor") {
  const Slack narrow{.left_deg = 3.0, .right_deg = 3.0};
  CHECK(state_at(0.0, 5.0, narrow) == State::Best);
  CHECK(state_at(1.9, 5.0, narrow) == State::Best);
  CHECK(state_at(2.1, 5.0, narrow) == State::Off);
  CHECK(state_at(0.0, 5.0, std::nullopt) == State::Best);
  CHECK(state_at(10.0, 5.0, std::nullopt) == State::Off);
}

TEST_CASE("an antenna without a direction is good at any heading") {
  const Slack all_round{.left_deg = 180.0, .right_deg = 180.0};
  for (const double points_deg : {-179.0, -90.0, 0.0, 60.0, 180.0}) {
    CHECK(state_at(points_deg, 20.0, all_round) == State::Good);
  }
}

TEST_CASE("the doubt of a sensor is 95 of 100 cases of its error") {
  Shared shared{.receiver = nmea::Receiver(std::chrono::sys_days{})};
  shared.findings.turn = Turn::clockwise_deg(30.0);
  shared.findings.heading_error_deg = 4.0;
  // Without a position the budget is not known: the usual error counts.
  CHECK(aimed(shared)->doubt_deg == Approx(1.96 * 4.0));
  shared.findings.turn.reset();
  CHECK_FALSE(aimed(shared));
}
