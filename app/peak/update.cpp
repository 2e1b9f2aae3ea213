#include "app/peak/update.hpp"

#include "app/shared/actions.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"

#include <algorithm>

namespace mastwise {
namespace {

gear::Pattern pattern_of(const Shared& shared, const Sweep& sweep) {
  return gear_of(shared.settings.gear).antenna.in(sweep.band).pattern;
}

// Starts a sweep of the target at its computed heading; none without target or heading.
std::optional<Sweep> begun(const PeakState& state, const Shared& shared, SweepBy by) {
  const Findings& found = shared.findings;
  if (!shared.stop.target || !found.card || !found.outlook) return state.sweep;
  const aim::Scale scale = scale_of(state.meter).value_or(aim::Scale::quality_percent);
  Sweep sweep{.station = key_of(*shared.stop.target),
              .title = words::title(*shared.stop.target),
              .band = found.outlook->band,
              .by = by,
              .scale = scale,
              .value = scale_start(scale),
              .no_meter = state.meter == Meter::none};
  if (by == SweepBy::Compass) sweep.heading = on_compass(found.card->bearing_magnetic);
  return sweep;
}

void set_scale(Sweep& sweep, aim::Scale scale) {
  if (!sweep.readings.empty() || sweep.scale == scale) return;
  sweep.scale = scale;
  sweep.value = scale_start(scale);
}

bool has_marks(const Sweep& sweep) {
  return !sweep.readings.empty() || sweep.left_edge || sweep.right_edge;
}

// Before a sweep is replaced or put away.
void remember_sweep(const PeakState& state, Shared& shared) {
  if (!state.sweep || !has_marks(*state.sweep)) return;
  remember(shared, "Sweep started over").also.push_back(act::PutSweepBack{*state.sweep});
}

// What the actions do to a sweep.
class SweepUpdater {
 public:
  SweepUpdater(Sweep& sweep, Shared& shared) : sweep_(sweep), shared_(shared) {}

  void operator()(const act::ChooseMeter& chosen) {
    const auto scale = scale_of(chosen.meter);
    sweep_.no_meter = !scale;
    if (scale) set_scale(sweep_, *scale);
  }
  void operator()(const act::TurnSweep& turn) {
    sweep_.heading = sweep_.heading + Turn::clockwise_deg(turn.degrees);
  }
  void operator()(const act::SetMeter& set) {
    const double least = sweep_.scale == aim::Scale::decibel ? -200.0 : 0.0;
    sweep_.value = std::clamp(sweep_.value + set.by, least, scale_most(sweep_.scale));
  }
  void operator()(const act::ReadMeter& read) { read_meter(sweep_, pattern(), read.nothing); }
  void operator()(const act::DropReading&) { drop_last_reading(sweep_, pattern()); }
  void operator()(const act::MarkEdge& edge) { mark_edge(sweep_, edge.right); }
  void operator()(const act::NextScale&) {
    const std::size_t now = static_cast<std::size_t>(meter_of(sweep_.scale));
    set_scale(sweep_, aim::kScales[(now + 1) % aim::kScales.size()]);
  }
  void operator()(const act::KeepSweep&);

 private:
  gear::Pattern pattern() const { return pattern_of(shared_, sweep_); }

  Sweep& sweep_;
  Shared& shared_;
};

void SweepUpdater::operator()(const act::KeepSweep&) {
  const auto result = result_of(sweep_);
  if (!result || !shared_.stations || !shared_.findings.position) return;
  const StationRow* row = find_row(*shared_.stations, sweep_.station);
  if (row == nullptr) return;
  remember(shared_, "Sweep saved");
  const double forgiven_deg = aim::forgiven_deg(pattern());
  if (result->error95_deg > forgiven_deg) {
    shared_.trouble = words::sweep_too_wide(result->error95_deg, forgiven_deg);
  } else {
    shared_.trouble.clear();
    auto& kept = shared_.stop.strong_stations;
    std::erase_if(kept, [&](const PeakedStation& one) {
      return one.key == sweep_.station && one.by == sweep_.by;
    });
    kept.push_back({.key = sweep_.station,
                    .by = sweep_.by,
                    .position = row->station.position,
                    .taken_at = *shared_.findings.position,
                    .peak_deg = result->peak.degrees(),
                    .sigma_deg = result->sigma_deg,
                    .standing = shared_.stop.standing,
                    .at = moment_of(shared_)});
  }
  shared_.following.push_back(act::SweepKept{{.station = sweep_.station,
                                              .by = sweep_.by,
                                              .band = sweep_.band,
                                              .scale = std::string(aim::to_text(sweep_.scale)),
                                              .readings = sweep_.readings,
                                              .peak = result->peak,
                                              .sigma_deg = result->sigma_deg}});
}

class PeakUpdater {
 public:
  PeakUpdater(PeakState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::BeginSweep& begin) {
    remember_sweep(state_, shared_);
    state_.by = begin.by;
    state_.sweep = begun(state_, shared_, begin.by);
    state_.turning = false;
  }
  void operator()(const act::EndSweep&) {
    remember_sweep(state_, shared_);
    state_.sweep.reset();
    state_.turning = false;
  }
  void operator()(const act::PutSweepBack& back) {
    state_.sweep = back.sweep;
    fit(*state_.sweep, pattern_of(shared_, *state_.sweep));
  }
  void operator()(const act::ChooseTurnBy& chosen) { state_.by = chosen.by; }
  void operator()(const act::SwitchTurning&) { state_.turning = !state_.turning; }
  void operator()(const act::ChooseMeter& chosen) {
    state_.meter = chosen.meter;
    to_sweep(chosen);
  }
  void operator()(const act::ReadMeter& read) {
    state_.turning = false;
    to_sweep(read);
  }
  template <class A>
  void operator()(const A& action) {
    to_sweep(action);
  }

 private:
  template <class A>
  void to_sweep(const A& action) {
    if (state_.sweep) SweepUpdater(*state_.sweep, shared_)(action);
  }

  PeakState& state_;
  Shared& shared_;
};

}  // namespace

void update(PeakState& state, Shared& shared, const Action& action) {
  visit(action, PeakActions{}, PeakUpdater(state, shared));
}

}  // namespace mastwise
