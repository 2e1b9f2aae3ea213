#include "app/service/place_search.hpp"

#include <utility>

namespace mastwise {
namespace {

using PlacesErrand = WorkerErrand<PlacesQuestion, PlacesAnswer>;

PlacesAnswer answer_of(const places::Gazetteer& gazetteer, const PlacesQuestion& question) {
  constexpr std::size_t kMost = 20;
  PlacesAnswer answer{.question = question};
  if (!question.typed.empty()) {
    answer.found = gazetteer.search(question.typed, kMost, question.near);
  }
  for (const Position& position : question.shown) {
    answer.said.push_back({.position = position, .near = gazetteer.nearest_place(position)});
  }
  return answer;
}

}  // namespace

std::unique_ptr<Errand> places_errand(std::function<Result<places::Gazetteer>()> load,
                                      std::function<void()> wake) {
  auto gazetteer = std::make_shared<std::optional<places::Gazetteer>>();
  const auto answer = [load = std::move(load), gazetteer](const PlacesQuestion& question,
                                                          const auto&) -> PlacesAnswer {
    if (!*gazetteer) {
      auto loaded = load();
      if (!loaded) return {.question = question, .trouble = loaded.error().message()};
      *gazetteer = *std::move(loaded);
    }
    return answer_of(**gazetteer, question);
  };
  return std::make_unique<PlacesErrand>(
      PlacesErrand::Way{
          .question = places_question,
          .found = [](PlacesAnswer found) { return act::PlacesFound{std::move(found)}; },
          .same = same_places},
      answer, std::move(wake));
}

}  // namespace mastwise
