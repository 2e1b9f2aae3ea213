#include "app/safety/update.hpp"

#include <utility>

namespace mastwise {
namespace {

using safety::Antenna;
using safety::Drive;

constexpr milliseconds kTryAgain{5'000};
constexpr milliseconds kUndoFor{60'000};
constexpr milliseconds kQuietFor{30'000};
constexpr std::string_view kUndo = "Undo";

bool rig_moves(const SafetyState& state, const SafetyContext& context) {
  return state.drive != Drive::Parked || safety::Motion{.speed_kmh = context.speed_kmh}.moves();
}

SafetyAnswer change(SafetyState& state, const SafetyContext& context, Antenna antenna,
                    std::string confirmed) {
  if (antenna == Antenna::Down && rig_moves(state, context)) {
    return {.trouble = "The rig is moving. Stop before you mark the antenna down."};
  }
  state.unsaved = AntennaChange{.antenna = antenna,
                                .when = context.when,
                                .place = context.place,
                                .confirmed = std::move(confirmed)};
  state.next_try = context.now;
  return {.trouble = ""};
}

class Updater {
 public:
  Updater(SafetyState& state, const SafetyContext& context) : state_(state), context_(context) {}

  SafetyAnswer operator()(const act::Ask& asked) {
    ask(state_, asked.what);
    return {};
  }
  SafetyAnswer operator()(const act::RefuseAsked&) {
    state_.asking = Asking::Nothing;
    return {};
  }
  SafetyAnswer operator()(const act::ConfirmAsked&);
  SafetyAnswer operator()(const act::AntennaWritten& written);
  SafetyAnswer operator()(const act::QuietAlarm&) {
    state_.quiet_until = context_.now + kQuietFor;
    return {};
  }
  SafetyAnswer operator()(const act::GoToRoof&) {
    state_.roof = state_.roof_agreed;
    if (!state_.roof_agreed) ask(state_, Asking::Roof);
    return {};
  }
  SafetyAnswer operator()(const act::LeaveRoof&) {
    state_.roof = false;
    return {};
  }

 private:
  SafetyState& state_;
  const SafetyContext& context_;
};

SafetyAnswer Updater::operator()(const act::ConfirmAsked&) {
  const Asking asked = std::exchange(state_.asking, Asking::Nothing);
  const std::string statement(prompt_of(asked).accept);
  switch (asked) {
    case Asking::Raise:
      return change(state_, context_, Antenna::Raised, statement);
    case Asking::Drive:
    case Asking::AfterAlarm:
      return change(state_, context_, Antenna::Down, statement);
    case Asking::UndoRaise:
      return change(state_, context_, Antenna::Down, std::string(kUndo) + ": " + statement);
    case Asking::Roof:
      state_.roof = state_.roof_agreed = true;
      return {};
    case Asking::MergeLogbook:
    case Asking::Weather:
    case Asking::Nothing:
      break;
  }
  return {.confirmed = asked};
}

SafetyAnswer Updater::operator()(const act::AntennaWritten& written) {
  if (!state_.unsaved) return {};
  const Antenna next = state_.unsaved->antenna;
  const bool undone = state_.unsaved->confirmed.starts_with(kUndo);
  const bool saved = written.trouble.empty();
  if (next != state_.antenna && (saved || next == Antenna::Raised)) {
    state_.undo.reset();
    if (!undone) state_.undo = {.before = state_.antenna, .until = context_.now + kUndoFor};
    state_.antenna = next;
    if (next == Antenna::Down) state_.roof_agreed = false;
  }
  if (saved) {
    state_.unsaved.reset();
    return {};
  }
  // A lowering that was not written is not believed, so it is not retried unseen.
  if (next == Antenna::Down) state_.unsaved.reset();
  state_.next_try = context_.now + kTryAgain;
  return {.trouble = written.trouble};
}

}  // namespace

std::optional<SafetyAnswer> update(SafetyState& state, const SafetyContext& context,
                                   const Action& action) {
  std::optional<SafetyAnswer> answer;
  Updater updater(state, context);
  visit(action, SafetyActions{}, [&](const auto& one) { answer = updater(one); });
  return answer;
}

SafetyAnswer undo_antenna(SafetyState& state, const SafetyContext& context) {
  if (!state.undo) return {};
  if (state.undo->before == Antenna::Raised) {
    return change(state, context, Antenna::Raised, std::string(kUndo));
  }
  ask(state, Asking::UndoRaise);
  return {};
}

void ask(SafetyState& state, Asking what) {
  const bool already_up = what == Asking::Raise && state.antenna == Antenna::Raised;
  state.asking = already_up ? Asking::Nothing : what;
}

bool antenna_to_write(const SafetyState& state, Monotonic now) {
  return state.unsaved && now >= state.next_try;
}

void follow_motion(SafetyState& state, const SafetyContext& context) {
  if (context.speed_kmh) state.speed_heard = context.now;
  if (state.undo && context.now >= state.undo->until) state.undo.reset();
  const std::chrono::duration<double> silent = context.now - state.speed_heard;
  const Drive before = state.drive;
  state.drive = safety::drive_state(
      state.antenna, {.speed_kmh = context.speed_kmh, .silent_s = silent.count()}, before);
  if (state.drive != Drive::Parked) state.asking = Asking::Nothing;
  if (before == Drive::Alarm && state.drive == Drive::Parked) state.asking = Asking::AfterAlarm;
}

bool alarm_is_quiet(const SafetyState& state, Monotonic now) {
  return now < state.quiet_until;
}

const safety::Prompt& prompt_of(Asking asking) {
  switch (asking) {
    case Asking::Roof:
      return safety::before_roof();
    case Asking::Weather:
      return safety::weather();
    case Asking::Drive:
      return safety::before_driving();
    case Asking::AfterAlarm:
      return safety::after_alarm();
    case Asking::UndoRaise:
      return safety::undo_raising();
    case Asking::MergeLogbook:
      return safety::before_merging();
    case Asking::Raise:
    case Asking::Nothing:
      break;
  }
  return safety::before_raising();
}

}  // namespace mastwise
