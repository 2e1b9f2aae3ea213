#include "app/shell/session.hpp"

#include "app/safety/update.hpp"

#include <utility>

namespace mastwise::shell {

Session::Session(Model model, const World& world, Errands errands, Keeper keeper)
    : model_(std::move(model)),
      world_(world),
      errands_(std::move(errands)),
      keeper_(std::move(keeper)),
      kept_{model_.settings, std::nullopt} {
  derive_all(model_, world_);
  ask();
}

void Session::act(const Action& action) {
  if (record_) record_(action);
  apply(model_, action, world_);
  keep();
  ask();
}

bool Session::take_answers() {
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

void Session::keep() {
  const auto tell = [this](const Result<Done>& kept) {
    if (!kept) act(act::Trouble{kept.error().message()});
  };
  if (antenna_to_write(model_.safety, model_.now)) {
    const auto kept = keeper_.keep_antenna(*model_.safety.unsaved);
    act(act::AntennaWritten{kept ? std::string() : kept.error().message()});
  }
  if (std::exchange(kept_.settings, model_.settings) != model_.settings) {
    tell(keeper_.keep_settings(model_.settings));
  }
  if (!model_.logbook.writes.empty()) {
    const std::vector<LogWrite> writes = model_.logbook.writes;
    act(act::LogWritten{});
    for (const LogWrite& write : writes) tell(keeper_.write_log(write));
  }
  if (model_.plan.paper_wanted) {
    const auto saved = keeper_.save_paper(model_);
    act(act::PaperSaved{saved ? *saved : std::string()});
    if (!saved) act(act::Trouble{saved.error().message()});
  }
  const auto& trusted = model_.receiver.date();
  if (trusted && kept_.date != trusted->date) {
    kept_.date = trusted->date;
    tell(keeper_.keep_date(*trusted));
  }
}

void Session::ask() {
  for (const auto& errand : errands_) errand->ask(model_);
}

}  // namespace mastwise::shell
