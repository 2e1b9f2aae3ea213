#include "app/model/sweeping.hpp"

#include "app/words.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

gear::Pattern pattern_of(const Model& model) {
  return gear_of(model.settings.gear).antenna.in(model.sweep->band).pattern;
}

}  // namespace

void begin_sweep(Model& model, SweepBy by) {
  const Findings& found = model.findings;
  if (!model.stop.target || !found.card || !found.outlook) return;
  const aim::Scale scale = model.sweep ? model.sweep->scale : aim::Scale::quality_percent;
  model.sweep = Sweep{.station = key_of(*model.stop.target),
                      .title = words::title(*model.stop.target),
                      .band = found.outlook->band,
                      .by = by,
                      .scale = scale,
                      .value = scale_most(scale) / 2.0};
  if (by == SweepBy::Compass) {
    model.sweep->heading = Bearing<Dial>::degrees(found.card->bearing_magnetic.degrees());
  }
}

void turn_sweep(Model& model, double clockwise_deg) {
  if (!model.sweep) return;
  model.sweep->heading = model.sweep->heading + Turn::clockwise_deg(clockwise_deg);
}

void set_meter(Model& model, double by) {
  if (!model.sweep) return;
  Sweep& sweep = *model.sweep;
  const double least = sweep.scale == aim::Scale::decibel ? -200.0 : 0.0;
  sweep.value = std::clamp(sweep.value + by, least, scale_most(sweep.scale));
}

void read_sweep(Model& model, bool nothing) {
  if (model.sweep) read_meter(*model.sweep, pattern_of(model), nothing);
}

void drop_sweep_reading(Model& model) {
  if (model.sweep) drop_last_reading(*model.sweep, pattern_of(model));
}

void next_scale(Model& model) {
  if (!model.sweep || !model.sweep->readings.empty()) return;
  const auto& scales = aim::kScales;
  const auto now = std::find(scales.begin(), scales.end(), model.sweep->scale);
  const auto next = now + 1 == scales.end() ? scales.begin() : now + 1;
  model.sweep->scale = *next;
  model.sweep->value = scale_most(*next) / 2.0;
}

void keep_sweep(Model& model) {
  if (!model.sweep || !model.sweep->fit || !model.stations || !model.findings.position) return;
  const Sweep& sweep = *model.sweep;
  const StationRow* row = find_row(*model.stations, sweep.station);
  if (row == nullptr) return;
  auto& kept = model.stop.strong_stations;
  std::erase_if(kept, [&](const StrongStation& one) {
    return one.key == sweep.station && one.by == sweep.by;
  });
  kept.push_back({.key = sweep.station,
                  .by = sweep.by,
                  .position = row->station.position,
                  .taken_at = *model.findings.position,
                  .peak_deg = sweep.fit->peak.degrees(),
                  .sigma_deg = sweep.fit->sigma_deg});
}

void derive_correction(const Model& model, Findings& findings) {
  if (!findings.position || !findings.field || !findings.card) return;
  std::vector<aim::StrongStation> peaked;
  for (const StrongStation& one : model.stop.strong_stations) {
    if (one.by != SweepBy::Compass || !same_stop(one.taken_at, *findings.position)) continue;
    const PathBetween path = path_between(*findings.position, one.position);
    peaked.push_back({.bearing = path.bearing,
                      .bearing_sigma_deg = angle_of_error_deg(
                          std::hypot(kTypedPosition_m, kTransmitter_m), path.distance_m),
                      .peak = Bearing<Dial>::degrees(one.peak_deg),
                      .peak_sigma_deg = one.sigma_deg,
                      .dial_sigma_deg = kBaseplateCompass_deg});
  }
  if (peaked.empty()) return;
  const double declination_deg = findings.field->declination.east_deg();
  const auto correction = aim::dial_correction(peaked, Turn::clockwise_deg(declination_deg));
  if (!correction) {
    findings.correction = correction.error().message();
    return;
  }
  if (correction->implausible) {
    findings.correction =
        "The compass seems over 20 degrees wrong: rather the wrong station was peaked, or a "
        "reflection. Nothing is corrected.";
    return;
  }
  const double off_deg = fold_half_circle_deg(correction->turn.clockwise_deg() - declination_deg);
  findings.corrected = aim::to_dial(findings.card->bearing_true, *correction);
  findings.correction = fmt::format(
      "By {} station{} peaked on, this compass reads {:.0f}° too {} here: turn to {} on it, ± "
      "{:.0f}°",
      peaked.size(), peaked.size() == 1 ? "" : "s", std::fabs(off_deg),
      off_deg >= 0.0 ? "low" : "high", words::whole_degrees(findings.corrected->degrees()),
      std::ceil(correction->sigma_deg));
  if (correction->contradicts) findings.correction += ". The stations contradict each other";
}

}  // namespace mastwise
