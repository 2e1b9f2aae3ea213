#pragma once

#include "app/service/startup.hpp"
#include "app/shell/logbook_keeper.hpp"
#include "app/shell/session.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mastwise::shell {

struct RuntimeWish {
  std::string catalog_path = {};                 // the user's stations
  std::string terrain_folder = {};               // the user's elevation tiles
  std::optional<std::string> logbook_path = {};  // empty: no logbook (pictures, trials)
  std::vector<std::string> import_folders = {};  // start folders of an import; else the user's
  std::string publishers_base = {};              // instead of the publishers' servers: for tests
  std::function<Result<places::Gazetteer>()> places =
      service::load_places;       // in the worker's thread
  std::string paper_folder = {};  // for paper cards
  std::chrono::sys_days built = service::build_date();
  std::function<void()> wake = [] {};  // called from the workers' threads
};

// Everything behind the screens: models of the world, stores, workers, session.
class Runtime {
 public:
  static Result<std::unique_ptr<Runtime>> start(const RuntimeWish& wish);

  Session& session() { return *session_; }
  const Stop& practice_stop() const { return world_.practice_stop; }

 private:
  Runtime(MagneticModel magnetic, service::Practice practice);
  ErrandSources errand_sources(const RuntimeWish& wish);
  Keeper keeper(const std::string& paper_folder);
  Result<Done> write_logbook(const LogbookKeeper::Change& change);

  MagneticModel magnetic_;
  service::Practice practice_;
  World world_;
  std::optional<LogbookKeeper> logbook_;
  Log log_at_start_ = {};  // until the session has it
  std::chrono::sys_days date_floor_ = service::build_date();
  std::unique_ptr<Session> session_;
};

}  // namespace mastwise::shell
