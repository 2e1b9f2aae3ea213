#include "app/ahead/update.hpp"

#include "app/shared/actions.hpp"

namespace mastwise {
namespace {

class AheadUpdater {
 public:
  AheadUpdater(AheadState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::DropPlace& drop) {
    if (drop.index >= state_.places.size()) return;
    remember_places("Place removed");
    state_.places.erase(state_.places.begin() + static_cast<std::ptrdiff_t>(drop.index));
  }
  void operator()(const act::DropAllPlaces&) {
    remember_places("All places removed");
    state_.places.clear();
  }
  void operator()(const act::PlacesBack& back) { state_.places = back.places; }
  void operator()(const act::SwitchAlong&) { state_.along = !state_.along; }
  void operator()(const act::RouteSurveyed& surveyed) { state_.route = surveyed.sheet; }

 private:
  void remember_places(const char* what) {
    remember(shared_, what).also.push_back(act::PlacesBack{state_.places});
  }

  AheadState& state_;
  Shared& shared_;
};

}  // namespace

void update(AheadState& state, Shared& shared, const Action& action) {
  if (const auto* typed = action.get_if<act::PlaceTyped>()) {
    state.places.push_back(typed->position);
  }
  visit(action, AheadActions{}, AheadUpdater(state, shared));
}

std::optional<RouteQuestion> route_question(const AheadState& state, const Shared& shared,
                                            const StationsQuestion& here) {
  const bool looked_at = shared.place == Place::Ahead && state.along;
  if (!looked_at || !shared.stations || !shared.stations->ahead || state.places.empty() ||
      !shared.findings.position) {
    return std::nullopt;
  }
  RouteQuestion question{.here = survey_part(here),
                         .networks = shared.stations->ahead->networks,
                         .floor_percent = here.plan_floor_percent};
  if (question.networks.empty()) return std::nullopt;
  question.points.push_back(*shared.findings.position);
  for (const Position& place : state.places) question.points.push_back(place);
  return question;
}

}  // namespace mastwise
