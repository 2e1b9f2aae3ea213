#pragma once

#include "app/shell/session.hpp"
#include "app/shell/startup.hpp"
#include "core/logbook/logbook.hpp"

#include <memory>
#include <optional>
#include <string>

namespace mastwise::shell {

struct RuntimeWish {
  std::string catalog_path = {};                 // the user's stations
  std::string terrain_folder = {};               // the user's elevation tiles
  std::optional<std::string> logbook_path = {};  // nothing: nothing is kept (pictures, trials)
  std::string paper_folder = {};                 // for the cards on paper
  std::function<void()> wake = [] {};            // called from the worker's thread
};

// Everything behind the screens, put together: models of the world, stores, worker, session.
class Runtime {
 public:
  static Result<std::unique_ptr<Runtime>> start(const RuntimeWish& wish);

  Session& session() { return *session_; }
  Worker& worker() { return *worker_; }
  const Stop& practice_stop() const { return world_.practice_stop; }

 private:
  Runtime(MagneticModel magnetic, Practice practice);
  Keeper keeper(const std::string& paper_folder);

  MagneticModel magnetic_;
  Practice practice_;
  World world_;
  std::optional<Logbook> logbook_;
  std::chrono::sys_days date_floor_ = build_date();
  std::unique_ptr<Worker> worker_;
  std::unique_ptr<Session> session_;
};

}  // namespace mastwise::shell
