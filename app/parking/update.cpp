#include "app/parking/update.hpp"

#include "app/parking/sight.hpp"
#include "app/shared/actions.hpp"

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
  void operator()(const act::ChooseNeighbors& chosen) { state_.neighbors = chosen.neighbors; }
  void operator()(const act::NextNeighbors&) {
    const auto next = static_cast<std::size_t>(state_.neighbors) + 1;
    state_.neighbors = static_cast<Neighbors>(next % kStoredNames<Neighbors>.size());
  }
  void operator()(const act::GearsCompared& compared) { state_.answer = compared.answer; }
  void operator()(const act::ChooseBrush& chosen) {
    state_.brush = Brush{.kind = chosen.kind};
    state_.stroke.clear();
  }
  void operator()(const act::ShapeBrush& shape);
  void operator()(const act::PaintSide& paint);
  void operator()(const act::EndWipe&) { state_.wiping = false; }

 private:
  void mark(std::size_t side, const reception::Side& what);

  ParkingState& state_;
  Shared& shared_;
};

// A ring that is not here begins anew: with the nose in the middle of its first side.
void ParkingUpdater::mark(std::size_t side, const reception::Side& what) {
  reception::ObstacleRing ring = shared_.findings.ring;
  if (ring.blank()) {
    ring = {};
    if (shared_.findings.nose) ring.first = shared_.findings.nose->nose();
  }
  ring.sides[side] = what;
  shared_.stop.ring = shared_.findings.ring = ring;
  shared_.stop.ring_at = shared_.findings.position;
}

void ParkingUpdater::operator()(const act::PaintSide& paint) {
  if (paint.side >= reception::kSides) return;
  const bool begins = !paint.wipe || !state_.wiping;
  const reception::Side brush = state_.brush.side();
  const bool painted = shared_.findings.ring.sides[paint.side] == brush;
  const bool clears = painted && !paint.wipe;
  if (begins) {
    remember(shared_, "Side painted");
    state_.stroke.clear();
  }
  state_.wiping = paint.wipe;
  mark(paint.side, clears ? reception::Side() : brush);
  const bool known =
      std::find(state_.stroke.begin(), state_.stroke.end(), paint.side) != state_.stroke.end();
  if (!clears && !known) state_.stroke.push_back(paint.side);
}

void ParkingUpdater::operator()(const act::ShapeBrush& shape) {
  state_.brush.far = shape.far;
  state_.brush.high = shape.high;
  if (state_.stroke.empty()) return;
  remember(shared_, "Distance or height changed");
  for (const std::size_t side : state_.stroke) mark(side, state_.brush.side());
}

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
  // Undo may have taken the stroke back.
  if (action.is<act::TakeBack>() || action.is<act::SetStop>()) state.stroke.clear();
  if (const auto* found = action.get_if<act::StationsFound>()) {
    if (auto wanted = wanted_sights(found->answer)) state.wanted = *std::move(wanted);
  }
}

void derive(ParkingState& state, const Shared& shared) {
  state = {.neighbors = state.neighbors,
           .answer = std::move(state.answer),
           .brush = state.brush,
           .stroke = std::move(state.stroke),
           .wiping = state.wiping,
           .wanted = std::move(state.wanted)};
  if (shared.place == Place::Here && shared.sheet == Sheet::None) {
    state.verdict =
        judge(state.wanted, shared.findings.ring, state.neighbors, shared.findings.nose);
  }
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
