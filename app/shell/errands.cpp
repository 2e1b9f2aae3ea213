#include "app/shell/errands.hpp"

#include "app/map/actions.hpp"
#include "app/parking/update.hpp"
#include "app/service/gear_survey.hpp"
#include "app/service/place_search.hpp"
#include "app/service/route_survey.hpp"
#include "app/service/station_search.hpp"
#include "app/session/action.hpp"
#include "app/session/questions.hpp"

#include <memory>
#include <mutex>
#include <optional>
#include <utility>

namespace mastwise::shell {
namespace {

// An errand whose answer becomes the action `Found`.
template <class Found, class Question, class Answer>
std::unique_ptr<Errand> errand(
    std::optional<Question> (*question)(const Model&),
    std::function<Answer(const Question&, const typename Worker<Question, Answer>::Work&)> answer,
    const std::function<void()>& wake,
    std::type_identity_t<std::function<bool(const Question&, const Question&)>> same =
        std::equal_to<>()) {
  using One = WorkerErrand<Question, Answer>;
  return std::make_unique<One>(
      typename One::Way{.question = question,
                        .found = [](Answer found) { return Found{std::move(found)}; },
                        .same = std::move(same)},
      std::move(answer), wake);
}

std::optional<StationsQuestion> survey_question(const Model& model) {
  return stations_question(model);
}

std::optional<GearsQuestion> rig_question(const Model& model) {
  return gears_question(model);
}

// Reads the gazetteer once for all workers that want it; a copy shares the data.
LoadPlaces read_once(LoadPlaces load) {
  struct Shelf {
    std::mutex mutex;
    std::optional<places::Gazetteer> places = {};
  };
  return
      [load = std::move(load), shelf = std::make_shared<Shelf>()]() -> Result<places::Gazetteer> {
        const std::lock_guard lock(shelf->mutex);
        if (!shelf->places) {
          auto loaded = load();
          if (!loaded) return loaded;
          shelf->places = *std::move(loaded);
        }
        return *shelf->places;
      };
}

std::unique_ptr<Errand> logbook_errand(const ErrandSources& sources,
                                       const std::function<void()>& wake) {
  using FilesErrand = WorkerErrand<LogbookFilesQuestion, LogbookFilesAnswer>;
  const auto found = [read_again = sources.read_again](LogbookFilesAnswer answer) -> Action {
    if (answer.question.task == LogbookTask::TakeIn && answer.trouble.empty()) {
      if (auto records = read_again()) {
        answer.records = *std::move(records);
      } else {
        answer.trouble = records.error().message();
      }
    }
    return act::LogbookFilesDone{std::move(answer)};
  };
  return std::make_unique<FilesErrand>(
      FilesErrand::Way{.question = [](const Model& model) { return model.logbook.files.asked; },
                       .found = found},
      logbook_files_answerer(sources.logbook), wake);
}

}  // namespace

Errands errands(const ErrandSources& sources, const std::function<void()>& wake) {
  Errands all;
  const LoadPlaces places = read_once(sources.places);
  all.push_back(errand<act::StationsFound>(survey_question, station_answerer(sources.survey), wake,
                                           same_question));
  all.push_back(errand<act::MapDrawn>(
      map_question, map_answerer(sources.survey, sources.borders, places), wake, same_sheet));
  all.push_back(
      errand<act::AreaScanned>(area_question, area_answerer(sources.survey), wake, same_area));
  all.push_back(errand<act::RouteSurveyed>(route_question, route_answerer(sources.survey), wake));
  all.push_back(
      errand<act::GearsCompared>(rig_question, gears_answerer(sources.survey), wake, same_gears));
  all.push_back(
      errand<act::PlacesFound>(places_question, places_answerer(places), wake, same_places));
  all.push_back(logbook_errand(sources, wake));
  all.push_back(errand<act::IntakeFound>(intake_question, intake_answerer(sources.intake), wake));
  return all;
}

}  // namespace mastwise::shell
