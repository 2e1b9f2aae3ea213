#pragma once

#include "app/session/apply.hpp"
#include "app/shell/errands.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace mastwise::shell {

// Saves the state that must outlive the app: called on a change, before the screen shows it.
struct Keeper {
  std::function<Result<Done>(const AntennaChange&)> keep_antenna;
  std::function<Result<Done>(const Settings&)> keep_settings;
  std::function<Result<Done>(const std::string&)> keep_working_state;
  std::function<Result<Done>(const nmea::RepairedDate&)> keep_date;
  std::function<Result<Done>(const LogWrite&)> write_log;
  // Writes the paper card and returns the file's path.
  std::function<Result<std::string>(const Model&)> save_paper;
};

// Owns the model and is the only place where actions reach it: records and applies them, asks the
// workers, and saves changes. Interface thread only.
class Session {
 public:
  // `kept`: the settings as they are on the disk, if they are.
  Session(Model model, const World& world, Errands errands, Keeper keeper,
          std::optional<Settings> kept = {});

  const Model& model() const { return model_; }
  void act(const Action& action);
  // Derives what follows from the model again, where something beside it has changed.
  void derive_again() { derive_all(model_, world_); }
  // Applies the workers' answers; true if there was one.
  bool take_answers();
  // Waits until all workers are idle; true if there was an answer. For tests and pictures.
  bool finish_errands();
  // Passes every later action to `record` as well.
  void record_to(std::function<void(const Action&)> record) { record_ = std::move(record); }

 private:
  // What is on the disk.
  struct Kept {
    std::optional<Settings> settings = {};
    std::optional<std::chrono::sys_days> date = {};
    std::string working_state = {};
    std::optional<Position> at = {};  // kept with it
  };
  void keep();
  void keep_antenna();
  void keep_rest();
  Result<Done> write_rest();
  Result<Done> write_working_state();
  void keep_paper();
  std::size_t waiting() const;
  void ask();

  Model model_;
  const World& world_;
  Errands errands_;
  Keeper keeper_;
  std::function<void(const Action&)> record_;
  Kept kept_;
  bool keeping_ = false;
  bool state_changed_ = true;  // the working state may differ from what is on the disk
  Monotonic state_written_ = {};
  Monotonic next_try_ = {};  // to write what could not be written
  milliseconds pause_{0};    // before that
};

}  // namespace mastwise::shell
