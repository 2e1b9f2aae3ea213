#include "app/session/turn_tone.hpp"

#include "app/safety/update.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

constexpr Tone kAlarm{.frequency_hz = 700.0, .pulses_per_s = 4.0, .other_hz = 950.0};
constexpr double kQuiet = 0.2;

bool within_slack(Turn turn, const std::optional<Slack>& slack) {
  constexpr double kWithoutSlack_deg = 2.0;
  // The turn leads to the target: a target to the right means that the antenna points left of it.
  const double room_deg = !slack                        ? kWithoutSlack_deg
                          : turn.clockwise_deg() >= 0.0 ? slack->left_deg
                                                        : slack->right_deg;
  return turn.size_deg() <= room_deg;
}

Tone turning(Turn turn) {
  constexpr double kLowest_hz = 440.0, kHighest_hz = 880.0, kFar_deg = 90.0;
  constexpr double kSlowest = 2.0, kFastest = 10.0;
  const double nearness = 1.0 - std::min(1.0, turn.size_deg() / kFar_deg);
  return {.frequency_hz = kLowest_hz * std::pow(kHighest_hz / kLowest_hz, nearness),
          .pulses_per_s = kSlowest + (kFastest - kSlowest) * nearness * nearness};
}

}  // namespace

std::optional<Tone> tone_of(const Model& model) {
  if (model.safety.drive == safety::Drive::Alarm) {
    Tone alarm = kAlarm;
    if (alarm_is_quiet(model.safety, model.now)) alarm.loudness = kQuiet;
    return alarm;
  }
  if (!model.safety.roof || !model.settings.tone || !model.findings.turn) return std::nullopt;
  const Turn turn = *model.findings.turn;
  if (within_slack(turn, model.findings.slack)) {
    return Tone{.frequency_hz = turning(turn).frequency_hz};
  }
  return turning(turn);
}

}  // namespace mastwise
