#include "app/safety/update.hpp"

#include "app/shared/actions.hpp"

#include <utility>

namespace mastwise {
namespace {

using safety::Antenna;
using safety::Drive;

constexpr milliseconds kTryAgain{5'000};
constexpr milliseconds kUndoFor{60'000};
constexpr milliseconds kQuietFor{30'000};
// A free choice: longer than a traffic light, shorter than a change of drivers.
constexpr milliseconds kPassengerStays{120'000};
constexpr std::string_view kUndo = "Undo";

bool rig_moves(const SafetyState& state, const Shared& shared) {
  return state.drive != Drive::Parked ||
         safety::Motion{.speed_kmh = shared.findings.speed_kmh}.moves();
}

void ask(SafetyState& state, Asking what) {
  const bool already_up = what == Asking::Raise && state.antenna == Antenna::Raised;
  state.asking = already_up ? Asking::Nothing : what;
}

void change(SafetyState& state, Shared& shared, Antenna antenna, std::string confirmed) {
  if (antenna == Antenna::Down && rig_moves(state, shared)) {
    shared.trouble = "The rig is moving. Stop before you mark the antenna down.";
    return;
  }
  shared.trouble.clear();
  state.unsaved = AntennaChange{
      .antenna = antenna, .when = moment_of(shared), .confirmed = std::move(confirmed)};
  // The practice area is nowhere.
  if (!shared.stop.practice) state.unsaved->place = shared.findings.position;
  state.next_try = shared.now;
  state.asked = shared.now;
}

// Undoes the last change of the antenna, and writes that too. What would mark the antenna down asks
// first.
void undo_antenna(SafetyState& state, Shared& shared) {
  if (!state.undo) return;
  if (state.undo->before == Antenna::Raised) {
    change(state, shared, Antenna::Raised, std::string(kUndo));
  } else {
    ask(state, Asking::UndoRaise);
  }
}

// Without a speed nothing else would notice a drive with the antenna up: it is asked about when the
// app starts, after a night, and when the tablet is unplugged.
void ask_if_still_up(SafetyState& state, Monotonic now) {
  constexpr milliseconds kNight = std::chrono::hours(8);
  const bool due = !state.asked || now - *state.asked >= kNight;
  if (state.antenna != Antenna::Raised || !due) return;
  if (state.drive == Drive::Parked && state.asking == Asking::Nothing) {
    state.asking = Asking::StillUp;
  }
}

// The sensors say that the rig moves, and no receiver says that it stands: that question comes
// before any other. On the roof the person's steps shake the tablet.
void ask_if_moving(SafetyState& state, const Shared& shared) {
  constexpr milliseconds kAgain{120'000};
  const auto& speed_kmh = shared.findings.speed_kmh;
  const bool stands = speed_kmh && *speed_kmh < safety::kStandingKmh;
  if (!shared.findings.rig_seems_to_move || stands || state.roof) return;
  if (state.antenna != Antenna::Raised || state.unsaved || state.drive != Drive::Parked) return;
  if (state.moving_asked && shared.now - *state.moving_asked < kAgain) return;
  if (state.asking != Asking::AfterAlarm) state.asking = Asking::Moving;
}

// The alarm's screen stays until somebody says that they will lower the antenna; then comes the
// question whether it is down.
void follow_alarm(SafetyState& state, Drive before) {
  if (before == Drive::Alarm && state.drive == Drive::Parked) {
    state.asking = Asking::AfterAlarm;
    state.stopped = true;
  }
  if (state.asking != Asking::AfterAlarm) state.stopped = false;
}

void follow_passenger(SafetyState& state, Monotonic now) {
  if (!state.passenger_until) return;
  if (state.drive == Drive::Underway) state.passenger_until = now + kPassengerStays;
  if (state.drive == Drive::Alarm || now >= *state.passenger_until) state.passenger_until.reset();
}

// Where the drive began: a halt of minutes, as at a light, does not begin another.
void follow_drive(SafetyState& state, const Shared& shared, Drive before) {
  constexpr milliseconds kParked = std::chrono::minutes(10);
  if (state.drive == Drive::Parked || before != Drive::Parked) return;
  const auto parked = shared.parked.result();
  if (parked && parked->duration >= kParked) state.departed = parked->mean;
  if (!state.departed) state.departed = shared.findings.position;
}

// On the roof one stands on the roof: there no compass answers. Down again, one stands where
// one stood before.
void go_up(SafetyState& state, Shared& shared) {
  if (!state.roof) state.stood = shared.stop.standing;
  state.roof = state.roof_agreed = true;
  shared.stop.standing = Standing::on_roof;
}

void come_down(SafetyState& state, Shared& shared) {
  if (!state.roof) return;
  state.roof = false;
  if (shared.stop.standing == Standing::on_roof) shared.stop.standing = state.stood;
  state.stood.reset();
}

class SafetyUpdater {
 public:
  SafetyUpdater(SafetyState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::RefuseAsked&) {
    if (state_.asking == Asking::StillUp) state_.asked = shared_.now;
    if (state_.asking == Asking::Moving) state_.moving_asked = state_.asked = shared_.now;
    state_.asking = Asking::Nothing;
  }
  void operator()(const act::ConfirmAsked&);
  void operator()(const act::AntennaWritten& written);
  void operator()(const act::Unplugged&) { state_.asked.reset(); }
  void operator()(const act::QuietAlarm&) { state_.quiet_until = shared_.now + kQuietFor; }
  void operator()(const act::WillLower&) { state_.stopped = false; }
  void operator()(const act::UnlockForPassenger&) {
    if (state_.drive == Drive::Underway) state_.passenger_until = shared_.now + kPassengerStays;
  }

 private:
  SafetyState& state_;
  Shared& shared_;
};

void SafetyUpdater::operator()(const act::ConfirmAsked&) {
  const Asking asked = std::exchange(state_.asking, Asking::Nothing);
  const std::string statement(prompt_of(asked).accept);
  switch (asked) {
    case Asking::Raise:
      return change(state_, shared_, Antenna::Raised, statement);
    case Asking::Drive:
    case Asking::AfterAlarm:
    case Asking::StillUp:
    case Asking::Moving:
      return change(state_, shared_, Antenna::Down, statement);
    case Asking::UndoRaise:
      return change(state_, shared_, Antenna::Down, std::string(kUndo) + ": " + statement);
    case Asking::Roof:
      return go_up(state_, shared_);
    case Asking::MergeLogbook:
      shared_.following.push_back(act::Confirmed{asked});
      return;
    case Asking::Weather:
    case Asking::Nothing:
      return;
  }
}

void SafetyUpdater::operator()(const act::AntennaWritten& written) {
  if (!state_.unsaved) return;
  const Antenna next = state_.unsaved->antenna;
  const bool undone = state_.unsaved->confirmed.starts_with(kUndo);
  const bool saved = written.trouble.empty();
  if (next != state_.antenna && (saved || next == Antenna::Raised)) {
    state_.undo.reset();
    if (!undone) state_.undo = {.before = state_.antenna, .until = shared_.now + kUndoFor};
    state_.antenna = next;
    if (next == Antenna::Down) state_.roof_agreed = false;
  }
  if (saved) {
    state_.unsaved.reset();
    return;
  }
  // A lowering that was not written is not believed, so it is not retried unseen.
  if (next == Antenna::Down) state_.unsaved.reset();
  state_.next_try = shared_.now + kTryAgain;
  shared_.trouble = written.trouble;
}

// Actions of all features that matter here too.
void hear(SafetyState& state, Shared& shared, const Action& action) {
  if (const auto* asked = action.get_if<act::Ask>()) ask(state, asked->what);
  if (action.is<act::LeaveRoof>()) come_down(state, shared);
  if (action.is<act::GoToRoof>()) {
    state.roof_agreed ? go_up(state, shared) : ask(state, Asking::Roof);
  }
  if (action.is<act::TakeBack>() && undo_is_antennas(shared)) undo_antenna(state, shared);
}

}  // namespace

void update(SafetyState& state, Shared& shared, const Action& action) {
  hear(state, shared, action);
  visit(action, SafetyActions{}, SafetyUpdater(state, shared));
}

void derive(SafetyState& state, Shared& shared) {
  const std::optional<double> speed_kmh = shared.findings.speed_kmh;
  if (speed_kmh) state.speed_heard = shared.now;
  if (state.undo && shared.now >= state.undo->until) state.undo.reset();
  const std::chrono::duration<double> silent = shared.now - state.speed_heard;
  const Drive before = state.drive;
  state.drive = safety::drive_state(state.antenna,
                                    {.speed_kmh = speed_kmh, .silent_s = silent.count()}, before);
  if (state.drive != Drive::Parked) state.asking = Asking::Nothing;
  follow_alarm(state, before);
  follow_passenger(state, shared.now);
  follow_drive(state, shared, before);
  ask_if_still_up(state, shared.now);
  ask_if_moving(state, shared);
  if (state.asking != Asking::Nothing) {
    state.raised_m = gear_of(shared.settings.gear).height_m;
    state.keep_out = safety::keep_out(state.raised_m);
  }
  shared.findings.antenna_up = state.antenna == Antenna::Raised;
  if (state.undo) shared.findings.antenna_changed = state.undo->until - kUndoFor;
}

bool antenna_to_write(const SafetyState& state, Monotonic now) {
  return state.unsaved && now >= state.next_try;
}

bool screens_locked(const SafetyState& state) {
  return state.stopped || state.drive == Drive::Alarm ||
         (state.drive == Drive::Underway && !state.passenger_until);
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
    case Asking::StillUp:
      return safety::still_up();
    case Asking::Moving:
      return safety::seems_to_move();
    case Asking::MergeLogbook:
      return safety::before_merging();
    case Asking::Raise:
    case Asking::Nothing:
      break;
  }
  return safety::before_raising();
}

}  // namespace mastwise
