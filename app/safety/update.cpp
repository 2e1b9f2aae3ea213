#include "app/safety/update.hpp"

#include "app/model/ways.hpp"

#include <utility>

namespace mastwise {
namespace {

using safety::Antenna;
using safety::Drive;

constexpr milliseconds kTryAgain{5'000};
constexpr milliseconds kUndoFor{60'000};
constexpr std::string_view kUndo = "Undo";

bool rig_moves(const Model& model) {
  return model.safety.drive != Drive::Parked ||
         safety::Motion{.speed_kmh = model.findings.speed_kmh}.moves();
}

void change(Model& model, Antenna antenna, std::string_view confirmed) {
  SafetyState& state = model.safety;
  if (antenna == Antenna::Down && rig_moves(model)) {
    model.trouble = "The rig is moving. Stop before you mark the antenna down.";
    return;
  }
  AntennaChange next{
      .antenna = antenna, .when = moment_of(model), .confirmed = std::string(confirmed)};
  // The practice area has no real position.
  if (!model.stop.practice) next.place = model.findings.position;
  state.unsaved = std::move(next);
  state.next_try = model.now;
  model.trouble.clear();
}

}  // namespace

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
    case Asking::MergeLogbook:
      return merge_prompt();
    case Asking::UndoRaise:
      return safety::undo_raising();
    case Asking::Raise:
    case Asking::Nothing:
      break;
  }
  return safety::before_raising();
}

void ask(Model& model, Asking what) {
  SafetyState& state = model.safety;
  const bool already_up = what == Asking::Raise && state.antenna == Antenna::Raised;
  state.asking = already_up ? Asking::Nothing : what;
}

void confirm_asked(Model& model) {
  SafetyState& state = model.safety;
  const Asking asked = std::exchange(state.asking, Asking::Nothing);
  const std::string statement(prompt_of(asked).accept);
  if (asked == Asking::Raise) change(model, Antenna::Raised, statement);
  if (asked == Asking::Drive || asked == Asking::AfterAlarm) {
    change(model, Antenna::Down, statement);
  }
  if (asked == Asking::UndoRaise)
    change(model, Antenna::Down, std::string(kUndo) + ": " + statement);
  if (asked == Asking::MergeLogbook) {
    ask_logbook_files(model, LogbookTask::TakeIn, model.log_files.to_merge);
  }
  if (asked == Asking::Roof) state.roof = state.roof_agreed = true;
}

void go_to_roof(Model& model) {
  model.safety.roof = model.safety.roof_agreed;
  if (!model.safety.roof_agreed) ask(model, Asking::Roof);
}

void undo_antenna(Model& model) {
  const auto& undo = model.safety.undo;
  if (!undo) return;
  if (undo->before == Antenna::Down) {
    ask(model, Asking::UndoRaise);
  } else {
    change(model, undo->before, kUndo);
  }
}

void antenna_written(Model& model, const std::string& trouble) {
  SafetyState& state = model.safety;
  if (!state.unsaved) return;
  const Antenna next = state.unsaved->antenna;
  const bool undone = state.unsaved->confirmed.starts_with(kUndo);
  const bool saved = trouble.empty();
  const bool changes = next != state.antenna && (saved || next == Antenna::Raised);
  if (changes) {
    state.undo.reset();
    if (!undone) state.undo = {.before = state.antenna, .until = model.now + kUndoFor};
    state.antenna = next;
    if (next == Antenna::Down) state.roof_agreed = false;
  }
  if (saved) {
    state.unsaved.reset();
    return;
  }
  model.trouble = trouble;
  if (next == Antenna::Down) state.unsaved.reset();  // not trusted, so not retried unseen
  state.next_try = model.now + kTryAgain;
}

bool antenna_to_write(const Model& model) {
  return model.safety.unsaved && model.now >= model.safety.next_try;
}

void follow_motion(Model& model) {
  SafetyState& state = model.safety;
  const auto& speed_kmh = model.findings.speed_kmh;
  if (speed_kmh) state.speed_heard = model.now;
  if (state.undo && model.now >= state.undo->until) state.undo.reset();
  const std::chrono::duration<double> silent = model.now - state.speed_heard;
  const Drive before = state.drive;
  state.drive = safety::drive_state(state.antenna,
                                    {.speed_kmh = speed_kmh, .silent_s = silent.count()}, before);
  if (state.drive != Drive::Parked) state.asking = Asking::Nothing;
  if (before == Drive::Alarm && state.drive == Drive::Parked) state.asking = Asking::AfterAlarm;
}

bool alarm_is_quiet(const Model& model) {
  return model.now < model.safety.quiet_until;
}

}  // namespace mastwise
