#include "app/service/place_search.hpp"

#include <utility>

namespace mastwise {
namespace {

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

PlacesWorker::Answerer places_answerer(std::function<Result<places::Gazetteer>()> load) {
  auto gazetteer = std::make_shared<std::optional<places::Gazetteer>>();
  return [load = std::move(load), gazetteer](const PlacesQuestion& question,
                                             const auto&) -> PlacesAnswer {
    if (!*gazetteer) {
      auto loaded = load();
      if (!loaded) return {.question = question, .trouble = loaded.error().message()};
      *gazetteer = *std::move(loaded);
    }
    return answer_of(**gazetteer, question);
  };
}

}  // namespace mastwise
