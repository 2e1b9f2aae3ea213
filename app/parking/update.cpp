#include "app/parking/update.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

class ParkingUpdater {
 public:
  ParkingUpdater(ParkingState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::UseGear& use) {
    for (const GearChoice& choice : rig_gears(shared_.settings)) {
      if (gear_of(choice).name == use.preset) use_gear(shared_.settings, choice);
    }
  }
  void operator()(const act::ToggleGear& toggle) {
    if (gear::preset(toggle.preset)) toggle_gear(shared_.settings, toggle.preset);
  }
  void operator()(const act::NextNeighbors&) {
    const auto next = static_cast<std::size_t>(state_.neighbors) + 1;
    state_.neighbors = static_cast<Neighbors>(next % kStoredNames<Neighbors>.size());
  }
  void operator()(const act::GearsCompared& compared) { state_.answer = compared.answer; }

 private:
  ParkingState& state_;
  Shared& shared_;
};

std::optional<std::size_t> row_in_use(const GearsAnswer& answer, const GearChoice& in_use) {
  const auto& gears = answer.question.gears;
  const auto found = std::find(gears.begin(), gears.end(), in_use);
  const auto row = static_cast<std::size_t>(found - gears.begin());
  return row < answer.rows.size() ? std::optional(row) : std::nullopt;
}

// Whether a rig with this nose keeps the occupied sector out of the arcs.
bool keeps_out(const std::vector<HeadingArc>& arcs, const RigSector& occupied, RigHeading nose) {
  return slack_within(noses_that_clear(arcs, {&occupied, 1}), nose.nose()).has_value();
}

// What follows from the sectors of the gear in use.
void derive_sectors(ParkingState& state, const std::vector<HeadingArc>& arcs) {
  const RigSector right = neighbor_sector(true), left = neighbor_sector(false);
  std::vector<RigSector> occupied;
  if (on_right(state.neighbors)) occupied.push_back(right);
  if (on_left(state.neighbors)) occupied.push_back(left);
  state.free = gaps_between(arcs);
  state.noses = noses_that_clear(arcs, occupied);
  if (!state.drawn && !state.noses.empty()) {
    const HeadingArc& widest = state.noses.front();
    state.drawn = RigHeading::nose_at(
        Bearing<True>::degrees(widest.from.degrees() + widest.length_deg / 2.0));
  }
  if (!state.drawn) return;
  state.right_blocks = on_right(state.neighbors) && !keeps_out(arcs, right, *state.drawn);
  state.left_blocks = on_left(state.neighbors) && !keeps_out(arcs, left, *state.drawn);
}

}  // namespace

void update(ParkingState& state, Shared& shared, const Action& action) {
  visit(action, ParkingActions{}, ParkingUpdater(state, shared));
}

void derive(ParkingState& state, const Shared& shared) {
  state = {.neighbors = state.neighbors, .answer = std::move(state.answer)};
  if (shared.sheet != Sheet::Parking || !state.answer) return;
  state.row = row_in_use(*state.answer, shared.settings.gear);
  state.drawn = shared.findings.nose;
  if (!state.row) return;
  std::vector<HeadingArc> arcs;
  for (const KeptSector& sector : state.answer->rows[*state.row].sectors) {
    arcs.push_back(sector.arc);
  }
  derive_sectors(state, arcs);
}

std::optional<GearsQuestion> gears_question(
    const Shared& shared, const StationsQuestion& here,
    std::vector<std::array<reception::LearnedBias, 3>> learned) {
  if (!here.from) return std::nullopt;
  GearsQuestion question{.here = survey_part(here),
                         .gears = rig_gears(shared.settings),
                         .learned = std::move(learned)};
  question.here.gear = {};
  question.here.learned = {};
  question.here.pinned = here.pinned;
  question.here.pinned_networks = here.pinned_networks;
  return question;
}

bool same_gears(const GearsQuestion& asked, const GearsQuestion& now) {
  return asked.gears == now.gears && asked.learned == now.learned &&
         same_question(asked.here, now.here);
}

}  // namespace mastwise
