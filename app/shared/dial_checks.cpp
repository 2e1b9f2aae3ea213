#include "app/shared/dial_checks.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>

namespace mastwise {
namespace {

// Whether a check that was made at one place to stand says something of the other. Nobody may have
// said of either.
bool same_standing(const std::optional<Standing>& one, const std::optional<Standing>& other) {
  return !one || !other || *one == *other;
}

double age_sigma_deg(const Shared& shared, const Position& taken_at, UtcTime at) {
  using Hours = std::chrono::duration<double, std::ratio<3600>>;
  const double hours = std::fabs(Hours(moment_of(shared) - at).count());
  return check_age_sigma_deg(hours, path_between(taken_at, *shared.findings.position).distance_m);
}

// The stations peaked on at this stop by one dial; `direction`: where its readings point, by map
// north or magnetic north.
std::vector<aim::StrongStation> peaked_by(
    const Shared& shared, const Position& here, SweepBy by, double dial_sigma_deg,
    const std::function<Bearing<Dial>(double reading_deg)>& direction) {
  std::vector<aim::StrongStation> peaked;
  for (const PeakedStation& one : shared.stop.strong_stations) {
    if (one.by != by || !same_stop(one.taken_at, here)) continue;
    const bool compass = by == SweepBy::Compass;
    if (compass && !same_standing(one.standing, shared.stop.standing)) continue;
    const double age_deg = compass && one.at ? age_sigma_deg(shared, one.taken_at, *one.at) : 0.0;
    const PathBetween path = path_between(here, one.position);
    peaked.push_back(
        {.bearing = path.bearing,
         .bearing_sigma_deg = std::hypot(
             angle_of_error_deg(std::hypot(kTypedPosition_m, kTransmitter_m), path.distance_m),
             age_deg),
         .peak = direction(one.peak_deg),
         .peak_sigma_deg = one.sigma_deg,
         .dial_sigma_deg = dial_sigma_deg});
  }
  return peaked;
}

void add_sights(const Shared& shared, std::vector<aim::StrongStation>& peaked) {
  for (const CompassSight& one : shared.stop.sights) {
    if (!same_stop(one.taken_at, *shared.findings.position)) continue;
    if (!same_standing(one.standing, shared.stop.standing)) continue;
    peaked.push_back({.bearing = one.bearing,
                      .bearing_sigma_deg = std::hypot(one.bearing_sigma_deg,
                                                      age_sigma_deg(shared, one.taken_at, one.at)),
                      .peak = Bearing<Dial>::degrees(one.read.degrees()),
                      .dial_sigma_deg = kBaseplateCompass_deg});
  }
}

void check_compass(const Shared& shared, Findings& findings) {
  if (!findings.field) return;
  auto peaked = peaked_by(shared, *findings.position, SweepBy::Compass, kBaseplateCompass_deg,
                          [](double reading_deg) { return Bearing<Dial>::degrees(reading_deg); });
  const auto expected = Turn::clockwise_deg(findings.field->declination.east_deg());
  const bool by_station = !peaked.empty();
  add_sights(shared, peaked);
  findings.compass_check = aim::check_dial(peaked, expected);
  if (!findings.compass_check || !findings.compass_check->usable()) return;
  const double check_deg = findings.compass_check->correction->sigma_deg;
  const auto place_deg = unchecked_deviation_deg(shared, shared.stop.standing);
  // A peak is where the antenna itself wants to be, so it always corrects.
  findings.compass_agrees =
      !by_station && place_deg &&
      findings.compass_check->off.size_deg() <= std::hypot(*place_deg, check_deg);
  if (findings.compass_agrees) return;
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

std::optional<double> unchecked_deviation_deg(const Shared& shared,
                                              std::optional<Standing> standing) {
  const Findings& found = shared.findings;
  if (!standing || !found.field || !found.position) return std::nullopt;
  const double place_deg = deviation_sigma_deg(*standing, found.field->horizontal_nt);
  const auto& kept = shared.stop.reciprocal;
  const bool here = kept && same_stop(kept->taken_at, *found.position) && kept->standing &&
                    *kept->standing == *standing;
  if (!here) return place_deg;
  const double off_deg = std::fabs(kept->disagreement_deg);
  if (off_deg > kReciprocalTolerance_deg) return std::max(place_deg, off_deg);
  return deviation_after_reciprocal_deg(
      place_deg,
      std::hypot(kBaseplateCompass_deg, age_sigma_deg(shared, kept->taken_at, kept->at)));
}

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
