#include "app/model/sweeping.hpp"

#include "app/words/chances.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace mastwise {
namespace {

gear::Pattern pattern_of(const Model& model) {
  return gear_of(model.settings.gear).antenna.in(model.sweep->band).pattern;
}

// The stations peaked on at this stop by one dial; `direction`: where its readings point, by map
// north or magnetic north.
std::vector<aim::StrongStation> peaked_by(
    const Model& model, const Position& here, SweepBy by, double dial_sigma_deg,
    const std::function<Bearing<Dial>(double reading_deg)>& direction) {
  std::vector<aim::StrongStation> peaked;
  for (const PeakedStation& one : model.stop.strong_stations) {
    if (one.by != by || !same_stop(one.taken_at, here)) continue;
    const PathBetween path = path_between(here, one.position);
    peaked.push_back({.bearing = path.bearing,
                      .bearing_sigma_deg = angle_of_error_deg(
                          std::hypot(kTypedPosition_m, kTransmitter_m), path.distance_m),
                      .peak = direction(one.peak_deg),
                      .peak_sigma_deg = one.sigma_deg,
                      .dial_sigma_deg = dial_sigma_deg});
  }
  return peaked;
}

void check_compass(const Model& model, Findings& findings) {
  if (!findings.field) return;
  const auto peaked =
      peaked_by(model, *findings.position, SweepBy::Compass, kBaseplateCompass_deg,
                [](double reading_deg) { return Bearing<Dial>::degrees(reading_deg); });
  const auto expected = Turn::clockwise_deg(findings.field->declination.east_deg());
  findings.compass_check = aim::check_dial(peaked, expected);
  if (!findings.compass_check || !findings.compass_check->usable()) return;
  findings.corrected =
      aim::to_dial(findings.card->bearing_true, *findings.compass_check->correction);
}

// A handle reading becomes a true bearing by its calibration and the rig heading; the map shows
// their combined error.
void check_handle(const Model& model, Findings& findings) {
  if (!model.settings.handle || !findings.nose) return;
  const auto handle = handle_of(*model.settings.handle);
  if (!handle) return;
  const auto peaked = peaked_by(model, *findings.position, SweepBy::Handle,
                                handle->mechanism().play_deg / 2.0, [&](double reading_deg) {
                                  const RigAngle angle =
                                      handle->angle_at(HandleReading::dial_deg(reading_deg));
                                  return on_handle(to_true(angle, *findings.nose));
                                });
  findings.handle_check = aim::check_dial(peaked);
  if (!findings.handle_check || !findings.handle_check->usable()) return;
  const Bearing<True> nominal =
      findings.card->bearing_true - findings.handle_check->correction->turn;
  findings.handle_corrected = handle->nearest(to_rig_angle(nominal, *findings.nose)).reading;
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
                      .value = scale_start(scale)};
  if (by == SweepBy::Compass) {
    model.sweep->heading = on_compass(found.card->bearing_magnetic);
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
  model.sweep->value = scale_start(*next);
}

void mark_sweep_edge(Model& model, bool right) {
  if (model.sweep) mark_edge(*model.sweep, right);
}

void keep_sweep(Model& model) {
  if (!model.sweep || !model.stations || !model.findings.position) return;
  const Sweep& sweep = *model.sweep;
  const auto result = result_of(sweep);
  if (!result) return;
  const StationRow* row = find_row(*model.stations, sweep.station);
  if (row == nullptr) return;
  auto& kept = model.stop.strong_stations;
  std::erase_if(kept, [&](const PeakedStation& one) {
    return one.key == sweep.station && one.by == sweep.by;
  });
  kept.push_back({.key = sweep.station,
                  .by = sweep.by,
                  .position = row->station.position,
                  .taken_at = *model.findings.position,
                  .peak_deg = result->peak.degrees(),
                  .sigma_deg = result->sigma_deg});
}

void derive_dial_checks(const Model& model, Findings& findings) {
  if (!findings.position || !findings.card) return;
  check_compass(model, findings);
  check_handle(model, findings);
}

}  // namespace mastwise
