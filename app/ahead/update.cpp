#include "app/ahead/update.hpp"

#include "app/ahead/found.hpp"
#include "app/ahead/way.hpp"
#include "app/shared/actions.hpp"

namespace mastwise {
namespace {

// The places of before keep their names and ways for Undo, as far as there is room.
void take_stops(AheadState& state, const std::vector<AheadStop>& stops) {
  constexpr std::size_t kMostKept = 96;
  state.places.clear();
  for (const AheadStop& stop : stops) state.places.push_back(stop.position);
  state.from_file.insert(state.from_file.begin(), stops.begin(), stops.end());
  if (state.from_file.size() > kMostKept) {
    state.from_file.erase(state.from_file.begin() + kMostKept, state.from_file.end());
  }
  state.chosen.reset();
  state.first_shown.reset();
}

class AheadUpdater {
 public:
  AheadUpdater(AheadState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::DropPlace& drop) {
    if (drop.index >= state_.places.size()) return;
    remember_places("Place removed");
    erase(drop.index);
  }
  void operator()(const act::DropAllPlaces&) {
    remember_places("All places removed");
    state_.places.clear();
  }
  void operator()(const act::PlacesBack& back) { state_.places = back.places; }
  void operator()(const act::ChoosePlace& choose) {
    if (choose.index < state_.places.size()) state_.chosen = state_.places[choose.index];
  }
  void operator()(const act::SetNextStop& set) {
    if (set.index >= state_.places.size()) return;
    remember_places("Next stop set");
    stand_at(shared_.stop, state_.places[set.index], kTypedPosition_m);
    // The places up to there are passed.
    state_.places.erase(state_.places.begin(),
                        state_.places.begin() + static_cast<std::ptrdiff_t>(set.index) + 1);
    state_.first_shown.reset();
  }
  void operator()(const act::CompareBy& by) { state_.wants = by.wants; }
  void operator()(const act::NextAheadFloor&) {
    state_.floor = (state_.floor + 1) % kPlanFloors.size();
  }
  void operator()(const act::ShowPlacesFrom& show) { state_.first_shown = show.column; }
  void operator()(const act::SwitchAlong&) {}
  void operator()(const act::RouteSurveyed& surveyed) { state_.route = surveyed.sheet; }

 private:
  void remember_places(const char* what) {
    remember(shared_, what).also.push_back(act::PlacesBack{state_.places});
  }
  void erase(std::size_t index) {
    state_.places.erase(state_.places.begin() + static_cast<std::ptrdiff_t>(index));
  }

  AheadState& state_;
  Shared& shared_;
};

}  // namespace

void update(AheadState& state, Shared& shared, const Action& action) {
  if (const auto* typed = action.get_if<act::PlaceTyped>()) {
    state.places.push_back(typed->position);
    state.chosen = typed->position;
    state.first_shown.reset();
  }
  if (const auto* file = action.get_if<act::PlacesFromFile>()) {
    remember(shared, "Places from a file").also.push_back(act::PlacesBack{state.places});
    take_stops(state, file->stops);
  }
  if (const auto* found = action.get_if<act::StationsFound>(); found && found->answer.ahead) {
    state.table = found->answer.ahead;
    state.table_from = found->answer.question.from;
  }
  visit(action, AheadActions{}, AheadUpdater(state, shared));
}

void derive(AheadState& state, Shared& shared, const World& world) {
  shared.findings.way.clear();
  if (shared.findings.position) shared.findings.way.push_back(*shared.findings.position);
  shared.findings.way.insert(shared.findings.way.end(), state.places.begin(), state.places.end());
  state.found = {};
  if (shared.place == Place::Ahead) state.found = ahead_found(state, shared, world);
}

bool compares_pinned(const AheadState& state, const Shared& shared) {
  if (state.wants) return *state.wants == AheadWants::Pinned;
  return !shared.stop.pinned.empty() || !shared.settings.pinned_networks.empty();
}

std::optional<RouteQuestion> route_question(const AheadState& state, const Shared& shared,
                                            const StationsQuestion& here) {
  if (shared.place != Place::Ahead || !state.table || state.places.empty() ||
      !shared.findings.position) {
    return std::nullopt;
  }
  RouteQuestion question{.here = survey_part(here), .networks = state.table->networks};
  if (question.networks.empty()) return std::nullopt;
  question.points = way_ahead(state, *shared.findings.position).points;
  return question;
}

}  // namespace mastwise
