#include "app/service/route_survey.hpp"

#include "app/words/language.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/compare.hpp"
#include "core/terrain/tile_source.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace mastwise {
namespace {

// About fifty surveys show where along a day's drive a network ends.
double step_km(const RouteQuestion& question) {
  if (question.step_km > 0.0) return question.step_km;
  constexpr double kPlaces = 50.0, kLeast_km = 2.0;
  double length_km = 0.0;
  for (std::size_t i = 1; i < question.points.size(); ++i) {
    length_km += path_between(question.points[i - 1], question.points[i]).distance_m / 1000.0;
  }
  return std::max(kLeast_km, length_km / kPlaces);
}

class Route {
 public:
  Route(StopSurveyor& surveyor, RouteSheet& sheet) : surveyor_(surveyor), sheet_(sheet) {
    for (const std::string& network : sheet.question.networks) {
      wishes_.push_back({reception::Wish::Kind::network, network});
      sheet.rows.push_back({.network = network});
    }
  }
  Result<Done> survey(const std::function<bool(const RouteSheet&)>& go_on);

 private:
  Result<Done> add_place(Country& country, const reception::RoutePoint& point);
  void find_terrain(const Country& country, const std::vector<reception::RoutePoint>& places);

  StopSurveyor& surveyor_;
  RouteSheet& sheet_;
  std::vector<reception::Wish> wishes_;
};

Result<Done> Route::add_place(Country& country, const reception::RoutePoint& point) {
  const StationsQuestion there = elsewhere(sheet_.question.here, point.position);
  const auto survey = surveyor_.survey(country, receiver_of(there), {.complete = completer(there)});
  if (!survey) return survey.error();
  const std::array place{(*survey)->prospects()};
  const auto offers = reception::compare_places(place, wishes_).front().offers;
  for (std::size_t i = 0; i < offers.size(); ++i) {
    reception::RouteChance chance{.at_km = point.at_km};
    if (offers[i]) chance.chance_percent = offers[i]->chance_percent;
    sheet_.rows[i].chances.push_back(chance);
  }
  return Done{};
}

// Whether each place has heights around it; a part reaches halfway to the next places that do.
void Route::find_terrain(const Country& country, const std::vector<reception::RoutePoint>& places) {
  bool before = true;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const bool known = terrain::ground_height_m(country.tiles, places[i].position).has_value();
    const double from_km = i == 0 ? 0.0 : (places[i - 1].at_km + places[i].at_km) / 2.0;
    if (!known && before) sheet_.without_terrain.push_back({from_km, sheet_.length_km});
    if (known && !before) sheet_.without_terrain.back().to_km = from_km;
    before = known;
  }
}

Result<Done> Route::survey(const std::function<bool(const RouteSheet&)>& go_on) {
  const auto places = reception::sample_route(sheet_.question.points, step_km(sheet_.question));
  if (!places) return places.error();
  sheet_.length_km = places->back().at_km;
  const auto visited = surveyor_.countries().visit(sheet_.question.here.practice);
  if (!visited) return visited.error();
  find_terrain(*visited->country, *places);
  for (std::size_t i = 0; i < places->size(); ++i) {
    const auto added = add_place(*visited->country, (*places)[i]);
    if (!added) return added;
    sheet_.done = static_cast<double>(i + 1) / static_cast<double>(places->size());
    if (!go_on(sheet_)) break;
  }
  return Done{};
}

}  // namespace

RouteSheet survey_route(StopSurveyor& surveyor, const RouteQuestion& question,
                        const std::function<bool(const RouteSheet&)>& go_on) {
  if (question.networks.empty()) {
    const Error error{.what = words::say("no network chosen"),
                      .remedy = words::say("pin a network")};
    return {.question = question, .trouble = error.message()};
  }
  return surveyor.countries().of_whole_land(question.here.practice, [&] {
    RouteSheet sheet{.question = question};
    if (const auto surveyed = Route(surveyor, sheet).survey(go_on); !surveyed) {
      sheet.trouble = surveyed.error().message();
    }
    return sheet;
  });
}

RouteWorker::Answerer route_answerer(SurveySources sources) {
  // Its threads start with the first question.
  return [sources = std::move(sources), surveyor = std::shared_ptr<StopSurveyor>()](
             const RouteQuestion& question, const RouteWorker::Work& work) mutable {
    if (!surveyor) surveyor = std::make_shared<StopSurveyor>(sources);
    return survey_route(*surveyor, question, [&](const RouteSheet& sheet) {
      work.publish(sheet);
      return !work.superseded();
    });
  };
}

}  // namespace mastwise
