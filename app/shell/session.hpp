#pragma once

#include "app/model/apply.hpp"
#include "app/service/errand.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace mastwise::shell {

// What must outlive the program: called when it has changed, before the screen shows it.
struct Keeper {
  std::function<Result<Done>(const AntennaChange&)> keep_antenna;
  std::function<Result<Done>(const Settings&)> keep_settings;
  std::function<Result<Done>(const nmea::RepairedDate&)> keep_date;
  std::function<Result<Done>(const LogWrite&)> write_log;
  // Writes the card for paper and gives the file's path.
  std::function<Result<std::string>(const Model&)> save_paper;
};

using Errands = std::vector<std::unique_ptr<Errand>>;

// Owns the model and is the only place where actions reach it: records them, applies them, asks the
// workers, keeps what must be kept. The interface thread only.
class Session {
 public:
  Session(Model model, const World& world, Errands errands, Keeper keeper);

  const Model& model() const { return model_; }
  void act(const Action& action);
  // Takes the workers' answers; true when there was one.
  bool take_answers();
  // Waits until no worker has anything left to do; true when there was an answer. For tests and for
  // pictures.
  bool finish_errands();
  // Every action from now on is also given to `record`.
  void record_to(std::function<void(const Action&)> record) { record_ = std::move(record); }

 private:
  // What the keeper has been given last.
  struct Kept {
    Settings settings;
    std::optional<std::chrono::sys_days> date;
  };
  void keep();
  void ask();

  Model model_;
  const World& world_;
  Errands errands_;
  Keeper keeper_;
  std::function<void(const Action&)> record_;
  Kept kept_;
};

}  // namespace mastwise::shell
