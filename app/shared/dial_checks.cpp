#include "app/shared/dial_checks.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <cmath>
#include <functional>

namespace mastwise {
namespace {

// The stations peaked on at this stop by one dial; `direction`: where its readings point, by map
// north or magnetic north.
std::vector<aim::StrongStation> peaked_by(
    const Shared& shared, const Position& here, SweepBy by, double dial_sigma_deg,
    const std::function<Bearing<Dial>(double reading_deg)>& direction) {
  std::vector<aim::StrongStation> peaked;
  for (const PeakedStation& one : shared.stop.strong_stations) {
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

void check_compass(const Shared& shared, Findings& findings) {
  if (!findings.field) return;
  const auto peaked =
      peaked_by(shared, *findings.position, SweepBy::Compass, kBaseplateCompass_deg,
                [](double reading_deg) { return Bearing<Dial>::degrees(reading_deg); });
  const auto expected = Turn::clockwise_deg(findings.field->declination.east_deg());
  findings.compass_check = aim::check_dial(peaked, expected);
  if (!findings.compass_check || !findings.compass_check->usable()) return;
  findings.corrected =
      aim::to_dial(findings.card->bearing_true, *findings.compass_check->correction);
}

// A handle reading becomes a true bearing by its calibration and the rig heading; the map shows
// their combined error.
void check_handle(const Shared& shared, Findings& findings) {
  if (!shared.settings.handle || !findings.nose) return;
  const auto handle = handle_of(*shared.settings.handle);
  if (!handle) return;
  const auto peaked = peaked_by(shared, *findings.position, SweepBy::Handle,
                                handle->mechanism().play_deg / 2.0, [&](double reading_deg) {
                                  const RigAngle angle =
                                      handle->angle_at(HandleReading::dial_deg(reading_deg));
                                  return on_handle(to_true(angle, *findings.nose));
                                });
  findings.handle_check = aim::check_dial(peaked);
  if (!findings.handle_check || !findings.handle_check->usable()) return;
  findings.handle_corrected = handle->nearest(*angle_by_handle(findings)).reading;
}

// What a kept sweep by the sensor shows corrects where it points, at this stop.
void check_sensor(const Shared& shared, Findings& findings) {
  const bool magnetic = !shared.receiver.heading(shared.now).true_heading;
  const auto peaked =
      peaked_by(shared, *findings.position, SweepBy::Sensor,
                magnetic ? kMagneticHeadingSensor_deg : kTrueHeadingSensor_deg,
                [](double reading_deg) { return Bearing<Dial>::degrees(reading_deg); });
  findings.sensor_check = aim::check_dial(peaked);
  if (!findings.facing || !findings.sensor_check || !findings.sensor_check->usable()) return;
  const auto dial = Bearing<Dial>::degrees(findings.facing->degrees());
  findings.facing = aim::to_true(dial, *findings.sensor_check->correction).bearing;
}

}  // namespace

std::optional<RigAngle> angle_by_handle(const Findings& findings) {
  if (!findings.card || !findings.nose) return std::nullopt;
  Bearing<True> nominal = findings.card->bearing_true;
  if (findings.handle_check && findings.handle_check->usable()) {
    nominal = nominal - findings.handle_check->correction->turn;
  }
  return to_rig_angle(nominal, *findings.nose);
}

void derive_dial_checks(const Shared& shared, Findings& findings) {
  if (!findings.position || !findings.card) return;
  check_compass(shared, findings);
  check_handle(shared, findings);
  check_sensor(shared, findings);
}

}  // namespace mastwise
