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

// Starts a sweep of the target at its computed heading; nothing without target or heading.
std::optional<Sweep> begun(const std::optional<Sweep>& before, const Shared& shared, SweepBy by) {
  const Findings& found = shared.findings;
  if (!shared.stop.target || !found.card || !found.outlook) return before;
  const aim::Scale scale = before ? before->scale : aim::Scale::quality_percent;
  Sweep sweep{.station = key_of(*shared.stop.target),
              .title = words::title(*shared.stop.target),
              .band = found.outlook->band,
              .by = by,
              .scale = scale,
              .value = scale_start(scale)};
  if (by == SweepBy::Compass) sweep.heading = on_compass(found.card->bearing_magnetic);
  return sweep;
}

class PeakUpdater {
 public:
  PeakUpdater(Sweep& sweep, Shared& shared) : sweep_(sweep), shared_(shared) {}

  void operator()(const act::BeginSweep&) {}
  void operator()(const act::PutSweepBack&) {}
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
    if (!sweep_.readings.empty()) return;
    const auto& scales = aim::kScales;
    const auto now = std::find(scales.begin(), scales.end(), sweep_.scale);
    const auto next = now + 1 == scales.end() ? scales.begin() : now + 1;
    sweep_.scale = *next;
    sweep_.value = scale_start(*next);
  }
  void operator()(const act::KeepSweep&);

 private:
  // What the antenna forgives: half of its half-power beamwidth, of any antenna at most 45 degrees.
  double forgiven() const {
    constexpr double kMost_deg = 45.0;
    const gear::Pattern pattern = this->pattern();
    double off_deg = 1.0;
    while (off_deg < kMost_deg && pattern.relative_db(Turn::clockwise_deg(off_deg)) > -3.0) {
      off_deg += 1.0;
    }
    return off_deg;
  }
  gear::Pattern pattern() const { return pattern_of(shared_, sweep_); }

  Sweep& sweep_;
  Shared& shared_;
};

void PeakUpdater::operator()(const act::KeepSweep&) {
  const auto result = result_of(sweep_);
  if (!result || !shared_.stations || !shared_.findings.position) return;
  const StationRow* row = find_row(*shared_.stations, sweep_.station);
  if (row == nullptr) return;
  remember(shared_, "Sweep saved");
  const double forgiven_deg = forgiven();
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
                    .sigma_deg = result->sigma_deg});
  }
  shared_.following.push_back(act::SweepKept{{.station = sweep_.station,
                                              .by = sweep_.by,
                                              .band = sweep_.band,
                                              .scale = std::string(aim::to_text(sweep_.scale)),
                                              .readings = sweep_.readings,
                                              .peak = result->peak,
                                              .sigma_deg = result->sigma_deg}});
}

}  // namespace

void update(PeakState& state, Shared& shared, const Action& action) {
  if (const auto* begin = action.get_if<act::BeginSweep>()) {
    if (state.sweep && !state.sweep->readings.empty()) {
      remember(shared, "Sweep started over").also.push_back(act::PutSweepBack{*state.sweep});
    }
    state.sweep = begun(state.sweep, shared, begin->by);
  } else if (const auto* back = action.get_if<act::PutSweepBack>()) {
    state.sweep = back->sweep;
    fit(*state.sweep, pattern_of(shared, *state.sweep));
  } else if (state.sweep) {
    visit(action, PeakActions{}, PeakUpdater(*state.sweep, shared));
  }
}

}  // namespace mastwise
