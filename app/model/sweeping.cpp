#include "app/model/sweeping.hpp"

#include "app/words.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include <fmt/format.h>

namespace mastwise {
namespace {

gear::Pattern pattern_of(const Model& model) {
  return gear_of(model.settings.gear).antenna.in(model.sweep->band).pattern;
}

// What was peaked on at this stop by one dial; `direction`: where its readings point, by the map's
// north or the needle's.
std::vector<aim::StrongStation> peaked_by(
    const Model& model, const Position& here, SweepBy by, double dial_sigma_deg,
    const std::function<Bearing<Dial>(double reading_deg)>& direction) {
  std::vector<aim::StrongStation> peaked;
  for (const StrongStation& one : model.stop.strong_stations) {
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

// The correction where there is one to be used; else why not, in `words`.
std::optional<aim::DialCorrection> usable_correction(const std::vector<aim::StrongStation>& peaked,
                                                     Turn expected, std::string& words) {
  if (peaked.empty()) return std::nullopt;
  const auto correction = aim::dial_correction(peaked, expected);
  if (!correction) {
    words = correction.error().message();
    return std::nullopt;
  }
  if (correction->implausible) {
    words =
        "It seems over 20 degrees wrong: rather the wrong station was peaked, or a reflection. "
        "Nothing is corrected.";
    return std::nullopt;
  }
  return *correction;
}

std::string by_stations(const std::vector<aim::StrongStation>& peaked) {
  return fmt::format("By {} station{} peaked on", peaked.size(), peaked.size() == 1 ? "" : "s");
}

std::string remaining_error(const aim::DialCorrection& correction) {
  return fmt::format(", ± {:.0f}°{}", std::ceil(correction.sigma_deg),
                     correction.contradicts ? ". The stations contradict each other" : "");
}

void correct_compass(const Model& model, Findings& findings) {
  if (!findings.field) return;
  const auto peaked =
      peaked_by(model, *findings.position, SweepBy::Compass, kBaseplateCompass_deg,
                [](double reading_deg) { return Bearing<Dial>::degrees(reading_deg); });
  const double declination_deg = findings.field->declination.east_deg();
  const auto correction =
      usable_correction(peaked, Turn::clockwise_deg(declination_deg), findings.correction);
  if (!correction) return;
  const double off_deg = fold_half_circle_deg(correction->turn.clockwise_deg() - declination_deg);
  findings.corrected = aim::to_dial(findings.card->bearing_true, *correction);
  findings.correction = fmt::format(
      "{}, this compass reads {:.0f}° too {} here: turn to {} on it{}", by_stations(peaked),
      std::fabs(off_deg), off_deg >= 0.0 ? "low" : "high",
      words::whole_degrees(findings.corrected->degrees()), remaining_error(*correction));
}

// A handle's readings lead to true north by its calibration and the nose; what they are off by
// together shows against the map.
void correct_handle(const Model& model, Findings& findings) {
  if (!model.settings.handle || !findings.nose) return;
  const auto handle = handle_of(*model.settings.handle);
  if (!handle) return;
  const auto peaked =
      peaked_by(model, *findings.position, SweepBy::Handle, handle->mechanism().play_deg / 2.0,
                [&](double reading_deg) {
                  const RigAngle angle = handle->angle_at(HandleReading::dial_deg(reading_deg));
                  return Bearing<Dial>::degrees(to_true(angle, *findings.nose).degrees());
                });
  const auto correction = usable_correction(peaked, Turn(), findings.handle_correction);
  if (!correction) return;
  const auto wanted =
      Bearing<True>::degrees(aim::to_dial(findings.card->bearing_true, *correction).degrees());
  const NearestAim aim = handle->nearest(to_rig_angle(wanted, *findings.nose));
  findings.handle_correction =
      fmt::format("{}, nose and handle together are {:.0f}° off here: set the handle to {:.0f}{}",
                  by_stations(peaked), correction->turn.size_deg(), aim.reading.dial_deg(),
                  remaining_error(*correction));
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
  std::erase_if(kept, [&](const StrongStation& one) {
    return one.key == sweep.station && one.by == sweep.by;
  });
  kept.push_back({.key = sweep.station,
                  .by = sweep.by,
                  .position = row->station.position,
                  .taken_at = *model.findings.position,
                  .peak_deg = result->peak.degrees(),
                  .sigma_deg = result->sigma_deg});
}

void derive_correction(const Model& model, Findings& findings) {
  if (!findings.position || !findings.card) return;
  correct_compass(model, findings);
  correct_handle(model, findings);
}

}  // namespace mastwise
