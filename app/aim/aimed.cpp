#include "app/aim/aimed.hpp"

namespace mastwise {
namespace {

// No sensor is trusted to be nearer. A free choice: half of the usual aiming step of 5 degrees.
constexpr double kOnHeading_deg = 2.0;

double doubt_of_sensor_deg(const Shared& shared) {
  const bool knows_true = shared.receiver.heading(shared.now).true_heading.has_value();
  const auto budget = heading_budget(
      knows_true ? PointingMethod::true_heading_sensor : PointingMethod::magnetic_heading_sensor,
      heading_context(shared));
  constexpr double kOf95Percent = 1.96;
  return kOf95Percent * (budget ? budget->total_deg : shared.findings.heading_error_deg);
}

}  // namespace

Aimed::State aimed_state(Turn turn, double doubt_deg, const std::optional<Slack>& slack) {
  using State = Aimed::State;
  if (slack && slack->all_round()) return State::Good;
  // The turn leads to the target: a turn to the right means that the antenna points left of it.
  const double points_deg = -turn.clockwise_deg();
  if (slack && points_deg - doubt_deg >= -slack->left_deg &&
      points_deg + doubt_deg <= slack->right_deg) {
    return State::Good;
  }
  return turn.size_deg() <= kOnHeading_deg ? State::Best : State::Off;
}

std::optional<Aimed> aimed(const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.turn) return std::nullopt;
  const double doubt_deg = doubt_of_sensor_deg(shared);
  return Aimed{.state = aimed_state(*found.turn, doubt_deg, found.slack),
               .turn = *found.turn,
               .doubt_deg = doubt_deg};
}

}  // namespace mastwise
