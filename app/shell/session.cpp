#include "app/shell/session.hpp"

#include "app/safety/update.hpp"
#include "app/session/working_state.hpp"
#include "platform/practice_hills.hpp"

#include <algorithm>
#include <utility>

namespace mastwise::shell {

Session::Session(Model model, const World& world, Errands errands, Keeper keeper,
                 std::optional<Settings> kept)
    : model_(std::move(model)),
      world_(world),
      errands_(std::move(errands)),
      keeper_(std::move(keeper)),
      kept_{.settings = std::move(kept)} {
  derive_all(model_, world_);
  kept_.working_state = working_state(model_);
  keep();
  ask();
}

void Session::act(const Action& action) {
  if (record_) record_(action);
  apply(model_, action, world_);
  state_changed_ |= !action.is<act::Tick>() && !action.is<act::ReceiverBytes>();
  keep();
  ask();
}

bool Session::take_answers() {
  if (!model_.stop.practice || platform::practice_hills_ready()) {
    // At most one of them works between two frames, so that touches are heard meanwhile.
    for (const auto& errand : errands_) {
      if (errand->turn()) break;
    }
  }
  bool any = false;
  for (const auto& errand : errands_) {
    if (const auto answer = errand->take()) {
      act(*answer);
      any = true;
    }
  }
  return any;
}

bool Session::finish_errands() {
  bool any = false;
  for (bool answered = true; answered; any |= answered) {
    for (const auto& errand : errands_) errand->finish();
    answered = take_answers();
  }
  return any;
}

// The antenna's state is the first to be written, whatever else waits.
void Session::keep() {
  if (keeping_) return;
  keeping_ = true;
  keep_antenna();
  keep_rest();
  keep_paper();
  keeping_ = false;
}

void Session::keep_antenna() {
  if (!antenna_to_write(model_.safety, model_.now)) return;
  const auto kept = keeper_.keep_antenna(*model_.safety.unsaved);
  act(act::AntennaWritten{kept ? std::string() : kept.error().message()});
}

// If something cannot be written, the screen says so, and it is tried again after growing pauses.
void Session::keep_rest() {
  constexpr milliseconds kFirstPause{1'000}, kLongestPause{60'000};
  if (model_.now < next_try_) {
    if (waiting() != model_.unsaved.records) act(act::NotSaved{waiting(), model_.unsaved.why});
    return;
  }
  const auto kept = write_rest();
  if (kept) {
    pause_ = milliseconds(0);
    const std::size_t left = model_.logbook.writes.size();
    if (model_.unsaved.records != left) act(act::NotSaved{left, model_.unsaved.why});
    return;
  }
  pause_ = std::clamp(2 * pause_, kFirstPause, kLongestPause);
  next_try_ = model_.now + pause_;
  const act::NotSaved told{waiting(), kept.error().message()};
  if (model_.unsaved != Unsaved{told.records, told.why}) act(told);
}

std::size_t Session::waiting() const {
  const bool settings = kept_.settings != model_.settings;
  return model_.logbook.writes.size() + (settings ? 1 : 0) + (state_changed_ ? 1 : 0);
}

// After a long wait for the disk the records go in portions, so that the screen does not freeze.
Result<Done> Session::write_rest() {
  constexpr int kAtOnce = 200;
  for (int count = 0; !model_.logbook.writes.empty(); ++count) {
    if (count == kAtOnce) return Done{};
    const auto written = keeper_.write_log(model_.logbook.writes.front());
    if (!written) return written.error();
    act(act::LogWritten{});
  }
  if (kept_.settings != model_.settings) {
    const auto kept = keeper_.keep_settings(model_.settings);
    if (!kept) return kept.error();
    kept_.settings = model_.settings;
  }
  const auto& trusted = model_.receiver.date();
  if (trusted && kept_.date != trusted->date && !model_.link.recorded) {
    const auto kept = keeper_.keep_date(*trusted);
    if (!kept) return kept.error();
    kept_.date = trusted->date;
  }
  return write_working_state();
}

// Not for every touch of a quick row of touches; the last of them is written by the next tick.
Result<Done> Session::write_working_state() {
  constexpr milliseconds kRest{500};
  const auto& here = model_.findings.position;
  const bool moved = here && (!kept_.at || !same_stop(*kept_.at, *here));
  if (!state_changed_ && !moved) return Done{};
  if (state_written_ != Monotonic{} && model_.now < state_written_ + kRest) return Done{};
  std::string state = working_state(model_);
  if (state != kept_.working_state || moved) {
    const auto kept = keeper_.keep_working_state(kept_working_state(model_));
    if (!kept) return kept.error();
    state_written_ = model_.now;
    kept_.working_state = std::move(state);
    kept_.at = here;
  }
  state_changed_ = false;
  return Done{};
}

void Session::keep_paper() {
  if (!model_.plan.paper_wanted) return;
  const auto saved = keeper_.save_paper(model_);
  act(act::PaperSaved{saved ? *saved : std::string()});
  if (!saved) act(act::Trouble{saved.error().message()});
}

void Session::ask() {
  for (const auto& errand : errands_) errand->ask(model_);
}

}  // namespace mastwise::shell
