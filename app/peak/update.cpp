#include "app/peak/update.hpp"

#include "app/shared/actions.hpp"
#include "app/words/chances.hpp"

#include <algorithm>

namespace mastwise {
namespace {

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
  gear::Pattern pattern() const {
    return gear_of(shared_.settings.gear).antenna.in(sweep_.band).pattern;
  }

  Sweep& sweep_;
  Shared& shared_;
};

void PeakUpdater::operator()(const act::KeepSweep&) {
  const auto result = result_of(sweep_);
  if (!result || !shared_.stations || !shared_.findings.position) return;
  const StationRow* row = find_row(*shared_.stations, sweep_.station);
  if (row == nullptr) return;
  remember(shared_, "Sweep saved");
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
    state.sweep = begun(state.sweep, shared, begin->by);
  } else if (state.sweep) {
    visit(action, PeakActions{}, PeakUpdater(*state.sweep, shared));
  }
}

}  // namespace mastwise
