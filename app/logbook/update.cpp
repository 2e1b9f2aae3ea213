#include "app/logbook/update.hpp"

#include "app/logbook/log.hpp"
#include "app/logbook/tasks.hpp"
#include "app/logbook/tried.hpp"
#include "app/shared/actions.hpp"

#include <utility>

namespace mastwise {
namespace {

class LogbookUpdater {
 public:
  LogbookUpdater(LogbookState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::LogOutcome& log) {
    log_outcome(state_, shared_, log.key, log.outcome);
  }
  void operator()(const act::ListTried& list) {
    state_.tried_by = list.by;
    list_tried(state_, shared_, true);
  }
  void operator()(const act::OutcomeBack& back) {
    take_back_outcome(state_, shared_, back.touched, back.replaced);
  }
  void operator()(const act::SweepBack& back) { take_back_sweep(state_, shared_, back.id); }
  void operator()(const act::NextWeather&) { state_.weather = next_weather(state_.weather); }
  void operator()(const act::LogWritten&) {
    if (!state_.writes.empty()) state_.writes.pop_front();
  }

  void operator()(const act::AskMerge& asked) {
    state_.files.to_merge = asked.path;
    shared_.following.push_back(act::Ask{Asking::MergeLogbook});
  }
  void operator()(const act::AskLogbookFiles& ask) {
    ask_logbook_files(state_.files, shared_, ask.task, ask.path);
  }
  void operator()(const act::NextLogbookFolder&) { next_logbook_folder(state_.files); }
  void operator()(const act::LogbookFilesDone& done) {
    logbook_files_done(state_, done.answer);
    if (done.answer.records) teach(state_, shared_);
  }

 private:
  LogbookState& state_;
  Shared& shared_;
};

// Actions of all features that matter here too.
void hear(LogbookState& state, Shared& shared, const Action& action) {
  if (const auto* kept = action.get_if<act::SweepKept>()) log_sweep(state, shared, kept->sweep);
  if (shared.place == Place::Logbook) {
    if (action.get_if<act::Show>()) list_tried(state, shared, true);
    if (action.get_if<act::StationsFound>()) list_tried(state, shared, false);
  }
  const auto* open = action.get_if<act::OpenSheet>();
  if (open != nullptr && open->sheet == Sheet::LogbookFiles) {
    ask_logbook_files(state.files, shared, LogbookTask::Look);
  }
  const auto* confirmed = action.get_if<act::Confirmed>();
  if (confirmed != nullptr && confirmed->what == Asking::MergeLogbook) {
    ask_logbook_files(state.files, shared, LogbookTask::TakeIn, state.files.to_merge);
  }
}

}  // namespace

void update(LogbookState& state, Shared& shared, const Action& action) {
  hear(state, shared, action);
  visit(action, LogbookActions{}, LogbookUpdater(state, shared));
}

void derive(LogbookState& state, const Shared& shared, const World& world) {
  state.log.stop_id = stop_here(state.log, shared);
  const Taught& taught = state.log.taught;
  if (taught.practice != shared.stop.practice ||
      taught.gear != gear_of(shared.settings.gear).name ||
      taught.other_gears != shared.settings.other_gears || taught.stop_id != state.log.stop_id) {
    teach(state, shared);
  }
  state.outcomes_here.clear();
  state.found = {};
  state.days.clear();
  if (shared.place != Place::Logbook && shared.sheet != Sheet::Stops) return;
  mark_tried(state, shared);
  derive_log(state, shared, world);
}

}  // namespace mastwise
