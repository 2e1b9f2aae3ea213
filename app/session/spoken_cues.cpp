#include "app/session/spoken_cues.hpp"

#include "app/aim/aimed.hpp"
#include "app/safety/update.hpp"
#include "app/words/spoken.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise {
namespace {

// All free choices, tried by ear on rendered walks (`mastwise sound walk`).
constexpr milliseconds kPause{700};  // between words
constexpr milliseconds kRemindAfter{12'000};
constexpr milliseconds kAlarmEvery{5'000};  // begin to begin
constexpr milliseconds kAlarmFirst{2'000};
constexpr double kLeaveBy_deg = 2.0;  // beyond the edge, before "There" counts no longer

// A number is worth saying once this much less is left than was said.
int worth_saying(int said_deg) {
  return std::max(3, said_deg / 3);
}

// Whether it has left the heading for good, not only by the sensor's noise at the edge.
bool clearly_off(const Aimed& pointing, const std::optional<Slack>& slack) {
  const Turn nearer = Turn::clockwise_deg(std::copysign(
      std::max(0.0, pointing.turn.size_deg() - kLeaveBy_deg), pointing.turn.clockwise_deg()));
  return aimed_state(nearer, pointing.doubt_deg, slack) == Aimed::State::Off;
}

}  // namespace

std::optional<std::string> SpokenCues::alarm_words(const Model& model) {
  if (!alarmed_) alarmed_ = model.now - kAlarmEvery + kAlarmFirst;
  if (alarm_is_quiet(model.safety, model.now)) return std::nullopt;
  if (model.now - *alarmed_ < kAlarmEvery) return std::nullopt;
  alarmed_ = model.now;
  return words::spoken_alarm();
}

std::optional<std::string> SpokenCues::turn_words(const Model& model) {
  const auto pointing = aimed(model);
  if (!pointing) return std::nullopt;
  if (pointing->state != Aimed::State::Off) {
    if (said_ && said_->there) return std::nullopt;
    said_ = Said{.there = true, .at = model.now};
    return words::spoken_there();
  }
  if (said_ && said_->there && !clearly_off(*pointing, model.findings.slack)) return std::nullopt;
  const int left_deg = std::max(1, static_cast<int>(std::lround(pointing->turn.size_deg())));
  const bool right = pointing->turn.clockwise_deg() >= 0.0;
  const Said now{.degrees = left_deg, .right = right, .at = model.now};
  const bool farther = said_ && left_deg >= said_->degrees + worth_saying(said_->degrees);
  if (!said_ || said_->there || said_->right != right || farther) {
    said_ = now;
    return words::spoken_turn(pointing->turn);
  }
  if (left_deg <= said_->degrees - worth_saying(said_->degrees)) {
    said_ = now;
    return words::spoken_degrees(left_deg);
  }
  if (said_->reminded || model.now - said_->at < kRemindAfter) return std::nullopt;
  said_ = now;
  said_->reminded = true;
  return words::spoken_turn(pointing->turn);
}

std::optional<std::string> SpokenCues::next(const Model& model, bool speaking) {
  const bool alarm = model.safety.drive == safety::Drive::Alarm;
  const bool turning = !alarm && model.safety.roof && model.settings.speech;
  const bool moving = model.safety.asking == Asking::Moving;
  if (!alarm) alarmed_.reset();
  if (!moving) asked_moving_ = false;
  if (!turning) said_.reset();
  if (speaking) quiet_since_ = model.now;
  if (speaking || model.now - quiet_since_ < kPause) return std::nullopt;
  if (alarm) return alarm_words(model);
  if (moving && !std::exchange(asked_moving_, true)) return words::spoken_moving();
  if (turning) return turn_words(model);
  return std::nullopt;
}

}  // namespace mastwise
