#include "app/shell/session.hpp"

#include "core/geo/geodesic.hpp"

#include <utility>

namespace mastwise::shell {
namespace {

// A list for a place some steps away is still the list of this stop.
constexpr double kSamePlaceM = 50.0;

bool same_question(const StationsQuestion& asked, StationsQuestion now) {
  if (asked.from && now.from && path_between(*asked.from, *now.from).distance_m < kSamePlaceM) {
    now.from = asked.from;
  }
  return asked == now;
}

}  // namespace

Session::Session(Model model, const World& world, Worker& worker, Keeper keeper)
    : model_(std::move(model)),
      world_(world),
      worker_(worker),
      keeper_(std::move(keeper)),
      kept_{model_.antenna, model_.settings, std::nullopt} {
  derive(model_, world_);
  ask();
}

void Session::act(const Action& action) {
  if (record_) record_(action);
  apply(model_, action, world_);
  keep();
  ask();
}

bool Session::take_answers() {
  auto answer = worker_.take();
  if (!answer) return false;
  act(act::StationsFound{std::move(*answer)});
  return true;
}

void Session::keep() {
  const auto tell = [this](const Result<Done>& kept) {
    if (!kept) act(act::Trouble{kept.error().message()});
  };
  if (std::exchange(kept_.antenna, model_.antenna) != model_.antenna) {
    tell(keeper_.keep_antenna(model_.antenna));
  }
  if (std::exchange(kept_.settings, model_.settings) != model_.settings) {
    tell(keeper_.keep_settings(model_.settings));
  }
  if (!model_.log_writes.empty()) {
    const std::vector<LogWrite> writes = model_.log_writes;
    act(act::LogWritten{});
    for (const LogWrite& write : writes) tell(keeper_.write_log(write));
  }
  if (model_.paper_wanted) {
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
  const StationsQuestion question = stations_question(model_);
  if (asked_ && same_question(*asked_, question)) return;
  asked_ = question;
  worker_.ask(question);
}

}  // namespace mastwise::shell
