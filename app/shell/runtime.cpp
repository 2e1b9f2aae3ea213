#include "app/shell/runtime.hpp"

#include "app/service/clocks.hpp"
#include "app/service/damaged_files.hpp"
#include "app/session/action.hpp"
#include "app/session/working_state.hpp"
#include "app/shared/settings_json.hpp"
#include "app/shell/paper_file.hpp"
#include "app/words/files.hpp"
#include "core/catalog/catalog.hpp"
#include "platform/clock.hpp"
#include "platform/places_to_look.hpp"

#include <algorithm>
#include <filesystem>
#include <random>
#include <variant>

#include <fmt/format.h>

namespace mastwise::shell {
namespace {

// Random digits, enough that no two tablets share them.
std::string new_tablet_name() {
  std::random_device random;
  return fmt::format("{:08x}{:08x}", random(), random());
}

Result<Done> write_log(Logbook& logbook, const LogWrite& write, const std::string& tablet) {
  if (const auto* stop = std::get_if<StopRecord>(&write)) return logbook.put(*stop);
  if (const auto* outcome = std::get_if<OutcomeRecord>(&write)) return logbook.put(*outcome);
  if (const auto* sweep = std::get_if<SweepRecord>(&write)) return logbook.put(*sweep);
  if (const auto* sweep = std::get_if<SweepTakenBack>(&write)) {
    return logbook.remove_sweep(sweep->id, platform::utc_now(), tablet);
  }
  const OutcomeRecord& touched = std::get<OutcomeTakenBack>(write).touched;
  const auto back = logbook.take_back(touched, platform::utc_now(), touched.mark.tablet);
  if (!back) return back.error();
  return Done{};
}

// Folders for logbook export and import: the user's documents first, or without them the logbook's
// folder.
std::vector<LogbookFolder> logbook_folders(const RuntimeWish& wish) {
  namespace fs = std::filesystem;
  std::vector<LogbookFolder> folders;
  for (const std::string& folder : wish.import_folders) {
    folders.push_back({.name = fs::path(folder).filename().string(), .path = folder});
  }
  if (!folders.empty() || !wish.logbook_path) return folders;
  for (const platform::PlaceToLook& place : platform::places_to_look()) {
    const LogbookFolder folder{.name = place.name, .path = place.path};
    folders.insert(place.name == "Documents" ? folders.begin() : folders.end(), folder);
  }
  const bool documents = !folders.empty() && folders.front().name == "Documents";
  folders.insert(documents ? folders.end() : folders.begin(),
                 {.name = "Mastwise", .path = fs::path(*wish.logbook_path).parent_path().string()});
  return folders;
}

std::vector<IntakeEntry> folders_to_begin(const std::vector<std::string>& wished) {
  std::vector<IntakeEntry> folders;
  for (const std::string& folder : wished) {
    folders.push_back({.path = folder, .name = std::filesystem::path(folder).filename().string()});
  }
  if (!wished.empty()) return folders;
  for (const platform::PlaceToLook& place : platform::places_to_look()) {
    folders.push_back({.path = place.path, .name = place.name});
  }
  return folders;
}

IntakeSources intake_sources(const RuntimeWish& wish) {
  const std::filesystem::path data = std::filesystem::path(wish.catalog_path).parent_path();
  return {.catalog_path = wish.catalog_path,
          .mapping_folder = (data / "mappings").string(),
          .ground = {.terrain = wish.terrain_folder,
                     .practice_terrain = service::practice_folder(),
                     .cover = (data / "landcover").string(),
                     .class_tables = service::class_table_folder()},
          .downloads = (data / "downloads").string(),
          .publishers_base = wish.publishers_base,
          .places = [wished = wish.import_folders] { return folders_to_begin(wished); },
          .borders = service::load_borders,
          .towns = service::load_places};
}

}  // namespace

Runtime::Runtime(MagneticModel magnetic, service::Practice practice)
    : magnetic_(std::move(magnetic)),
      practice_(std::move(practice)),
      world_{magnetic_, service::practice_stop(practice_), service::clocks_of_this_system()} {}

Result<std::unique_ptr<Runtime>> Runtime::start(const RuntimeWish& wish) {
  auto magnetic = service::load_magnetic_model();
  if (!magnetic) return magnetic.error();
  auto practice = service::load_practice();
  if (!practice) return practice.error();
  std::unique_ptr<Runtime> runtime(new Runtime(*std::move(magnetic), *std::move(practice)));

  service::OpenedLogbook opened;
  if (wish.logbook_path) {
    auto read = service::open_logbook(*wish.logbook_path, platform::utc_now());
    if (!read) return read.error();
    opened = *std::move(read);
    runtime->logbook_.emplace(*wish.logbook_path, std::move(opened.logbook));
  }
  service::Kept& kept = opened.kept;
  runtime->date_floor_ = kept.date_floor;
  Model model{Shared{.settings = kept.settings, .receiver = nmea::Receiver(kept.date_floor)}};
  model.safety.antenna = kept.antenna;
  model.logbook.log.stops = std::move(opened.records.stops);
  model.logbook.log.outcomes = std::move(opened.records.outcomes);
  if (!kept.dropped.empty()) model.trouble = words::settings_dropped(kept.dropped);
  model.now = platform::monotonic_now();
  model.machine_time = platform::utc_now();
  model.clock_floor = std::max(wish.built, kept.trusted_date.value_or(wish.built));
  const std::string catalog_notice = service::check_catalog(wish.catalog_path, model.machine_time);
  // The very first start leads to a first heading; practice is offered there, never assumed.
  if (wish.logbook_path && !kept.working_state) model.sheet = Sheet::Start;
  if (kept.working_state) {
    const auto back = restore(model, *kept.working_state, runtime->world_);
    if (!back) model.trouble = words::state_dropped(back.error().message());
  }
  model.notice = opened.notice.empty() ? catalog_notice : opened.notice;
  const std::optional<Settings> on_disk = model.settings;
  if (model.settings.tablet.empty()) model.settings.tablet = new_tablet_name();

  // The session writes already while it is made.
  runtime->log_at_start_ = model.logbook.log;
  runtime->session_ = std::make_unique<Session>(std::move(model), runtime->world_,
                                                errands(runtime->errand_sources(wish), wish.wake),
                                                runtime->keeper(wish.paper_folder), on_disk);
  runtime->log_at_start_ = {};
  return runtime;
}

ErrandSources Runtime::errand_sources(const RuntimeWish& wish) {
  return {.survey = {.catalog_path = wish.catalog_path,
                     .terrain_folder = wish.terrain_folder,
                     .practice_stations = practice_.stations,
                     .practice_terrain_folder = service::practice_folder()},
          .places = wish.places,
          .borders = service::load_borders,
          .logbook = {.logbook_path = wish.logbook_path,
                      .folders = [wish] { return logbook_folders(wish); }},
          .read_again = [this] { return logbook_->records(); },
          .intake = intake_sources(wish)};
}

Keeper Runtime::keeper(const std::string& paper_folder) {
  const auto save_paper = [paper_folder](const Model& model) {
    return save_card(model, paper_folder);
  };
  if (!logbook_) {
    const auto nothing = [](const auto&) -> Result<Done> { return Done{}; };
    return {nothing, nothing, nothing, nothing, nothing, save_paper};
  }
  const auto write = [this](const LogbookKeeper::Change& change) { return write_logbook(change); };
  return {
      [=](const AntennaChange& change) {
        return write([&](Logbook& logbook) { return logbook.keep_antenna(change); });
      },
      [=](const Settings& settings) {
        return write(
            [&](Logbook& logbook) { return logbook.keep_settings(settings_text(settings)); });
      },
      [=](const std::string& state) {
        return write([&](Logbook& logbook) { return logbook.keep_working_state(state); });
      },
      [=, this](const nmea::RepairedDate& date) -> Result<Done> {
        const auto day = nmea::date_worth_saving(date, date_floor_);
        if (!day) return Done{};
        return write([&](Logbook& logbook) { return logbook.keep_trusted_date(*day); });
      },
      [=, this](const LogWrite& record) {
        const std::string& tablet = session_->model().settings.tablet;
        return write([&](Logbook& logbook) { return write_log(logbook, record, tablet); });
      },
      save_paper,
  };
}

// A logbook that was damaged during the run gets back what is in memory.
Result<Done> Runtime::write_logbook(const LogbookKeeper::Change& change) {
  if (!session_) return logbook_->write(change, log_at_start_);
  auto done = logbook_->write(change, session_->model().logbook.log);
  const std::string notice = logbook_->take_notice();
  if (!notice.empty()) session_->act(act::Trouble{notice});
  return done;
}

}  // namespace mastwise::shell
