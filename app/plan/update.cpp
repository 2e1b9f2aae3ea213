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
  const auto& steps = shared.stations->plan->steps;
  return state.scan_step < steps.size() ? &steps[state.scan_step] : nullptr;
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

  void operator()(const act::ChoosePlan& chosen) { state_.plan_for = chosen.plan_for; }
  void operator()(const act::NextPlanFloor&) {
    state_.floor = (state_.floor + 1) % kPlanFloors.size();
  }
  void operator()(const act::ScanStep& scan) {
    state_.scan_step = scan.step;
    shared_.sheet = Sheet::Scan;
  }
  void operator()(const act::TickStation& ticked);
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
  PlanState& state_;
  Shared& shared_;
};

void PlanUpdater::operator()(const act::TickStation& ticked) {
  // Ticks of the receiver's list at another stop do not count here.
  const auto& here = shared_.findings.position;
  if (!state_.ticked_at || !here || !same_stop(*state_.ticked_at, *here)) state_.ticks.clear();
  state_.ticked_at = here;
  auto known = std::find_if(state_.ticks.begin(), state_.ticks.end(),
                            [&](const Ticked& one) { return one.key == ticked.key; });
  if (known == state_.ticks.end()) {
    known = state_.ticks.insert(known, Ticked{.key = ticked.key});
  }
  const bool last = known->tick == ScanTick::not_found;
  known->tick = last ? ScanTick{} : static_cast<ScanTick>(static_cast<int>(known->tick) + 1);
}

}  // namespace

void update(PlanState& state, Shared& shared, const Action& action) {
  if (action.is<act::OpenSheet>()) state.paper_file.clear();
  visit(action, PlanActions{}, PlanUpdater(state, shared));
}

void derive(PlanState& state, const Shared& shared) {
  state.scan = {};
  if (shared.sheet == Sheet::Scan) derive_scan(state, shared);
}

}  // namespace mastwise
