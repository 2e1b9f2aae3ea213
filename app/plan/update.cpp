#include "app/plan/update.hpp"

#include "app/shared/actions.hpp"
#include "app/words/chances.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

ScanTick tick_of(const PlanState& state, const Shared& shared, const StationKey& key) {
  const auto& here = shared.findings.position;
  if (!state.ticked_at || !here || !same_stop(*state.ticked_at, *here)) return ScanTick::not_tried;
  for (const Ticked& ticked : state.ticks) {
    if (ticked.key == key) return ticked.tick;
  }
  return ScanTick::not_tried;
}

const PlanStep* chosen_step(const PlanState& state, const Shared& shared) {
  if (!shared.stations || !shared.stations->plan) return nullptr;
  const Plan& plan = *shared.stations->plan;
  if (state.chosen < plan.steps.size()) return &plan.steps[state.chosen];
  return plan.again ? &*plan.again : nullptr;
}

void derive_scan(PlanState& state, const Shared& shared) {
  const PlanStep* step = chosen_step(state, shared);
  if (step == nullptr) return;
  const std::vector<ScanCandidate> candidates = scan_candidates(*shared.stations, *step);
  std::vector<ScanTick> ticks;
  for (const ScanCandidate& candidate : candidates) {
    ticks.push_back(tick_of(state, shared, key_of(candidate.station)));
  }
  ScanList& list = state.scan;
  list.heading = step->bearing;
  ScanPlan plan = plan_scan(candidates);
  list.twins = std::move(plan.twins);
  for (ChannelToEnter& channel : plan.channels) {
    const std::size_t best = channel.expected.front().candidate;
    list.lines.push_back({.key = key_of(candidates[best].station),
                          .channel = std::move(channel),
                          .carries = words::carries(candidates[best].station),
                          .tick = ticks[best]});
  }
  const bool ticked_here = std::any_of(ticks.begin(), ticks.end(),
                                       [](ScanTick tick) { return tick != ScanTick::not_tried; });
  list.which = which_scan({.made_at_this_stop = ticked_here,
                           .takes_channels_by_hand = shared.settings.channels_by_hand});
  list.state = advise(candidates, ticks).state;
}

class PlanUpdater {
 public:
  PlanUpdater(PlanState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::ChoosePlan& chosen) {
    state_.plan_for = chosen.plan_for;
    state_.chosen = 0;
    state_.second = 1;
  }
  void operator()(const act::NextPlanFloor&) {
    state_.floor = (state_.floor + 1) % kPlanFloors.size();
  }
  void operator()(const act::ShowTurn& turn) { state_.second = turn.column; }
  void operator()(const act::ChooseTurn& turn) { state_.chosen = turn.column; }
  void operator()(const act::ScanStep& scan) {
    state_.chosen = scan.step;
    shared_.sheet = Sheet::Scan;
  }
  void operator()(const act::SetTick& set) { tick_here(set.key) = set.tick; }
  void operator()(const act::TickStation& ticked) {
    ScanTick& tick = tick_here(ticked.key);
    const bool last = tick == ScanTick::not_found;
    tick = last ? ScanTick{} : static_cast<ScanTick>(static_cast<int>(tick) + 1);
  }
  void operator()(const act::SavePaper&) {
    state_.paper_wanted = true;
    state_.paper_file.clear();
    shared_.trouble.clear();
  }
  void operator()(const act::PaperSaved& saved) {
    state_.paper_wanted = false;
    state_.paper_file = saved.file;
  }

 private:
  ScanTick& tick_here(const StationKey& key);

  PlanState& state_;
  Shared& shared_;
};

ScanTick& PlanUpdater::tick_here(const StationKey& key) {
  // Ticks of the receiver's list at another stop do not count here.
  const auto& here = shared_.findings.position;
  if (!state_.ticked_at || !here || !same_stop(*state_.ticked_at, *here)) state_.ticks.clear();
  state_.ticked_at = here;
  auto known = std::find_if(state_.ticks.begin(), state_.ticks.end(),
                            [&](const Ticked& one) { return one.key == key; });
  if (known == state_.ticks.end()) known = state_.ticks.insert(known, Ticked{.key = key});
  return known->tick;
}

}  // namespace

void update(PlanState& state, Shared& shared, const Action& action) {
  if (action.is<act::OpenSheet>()) state.paper_file.clear();
  visit(action, PlanActions{}, PlanUpdater(state, shared));
}

void derive(PlanState& state, const Shared& shared) {
  state.scan = {};
  state.table.reset();
  if (shared.sheet == Sheet::Scan) derive_scan(state, shared);
  if (shared.sheet == Sheet::Plan && shared.stations && shared.stations->plan) {
    state.table = plan_table(*shared.stations, state.second);
  }
}

}  // namespace mastwise
