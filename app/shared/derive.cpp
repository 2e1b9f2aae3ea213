#include "app/shared/dial_checks.hpp"
#include "app/shared/shared.hpp"
#include "core/geo/geodesic.hpp"
#include "core/sky/sun.hpp"

#include <cmath>
#include <utility>

namespace mastwise {
namespace {

std::optional<RigHeading> nose_heading(const std::optional<Nose>& nose,
                                       const std::optional<MagneticField>& field) {
  if (!nose) return std::nullopt;
  if (const auto* heading = std::get_if<Bearing<True>>(&nose->heading)) {
    return RigHeading::nose_at(*heading);
  }
  if (!field) return std::nullopt;
  const auto& heading = std::get<Bearing<Magnetic>>(nose->heading);
  return RigHeading::nose_at(to_true(heading, field->declination));
}

// Whether the rig is no longer where its surroundings were marked.
bool left_ring(const Stop& stop, const std::optional<Position>& position,
               const std::optional<nmea::ParkedPosition>& parked) {
  if (!stop.ring_at) return false;
  if (parked && rig_moved_m(*stop.ring_at, *parked)) return true;
  return position && !same_stop(*stop.ring_at, *position);
}

void find_position(const Shared& shared, Findings& findings) {
  if (shared.stop.source == PositionSource::ByHand) {
    findings.position = shared.stop.by_hand;
    return;
  }
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  findings.position_stale = fix.last_position && !fix.position;
  const auto parked = shared.parked.result();
  findings.position = parked ? parked->mean : fix.last_position;
}

void find_date(const Shared& shared, Findings& findings, const World& world) {
  using Origin = Findings::DateOrigin;
  findings.date = moment_of(shared);
  const bool machine = findings.date == shared.machine_time;
  findings.date_origin = shared.receiver.date() ? Origin::Receiver
                         : machine              ? Origin::Machine
                                                : Origin::Floor;
  findings.zone = world.zone_of(findings.position);
  findings.today = local_day(findings.date, *findings.zone.clocks);
  if (shared.earlier) {
    findings.earlier_day =
        local_day(shared.earlier->saved, *world.zone_of(shared.earlier->at).clocks);
  }
}

void find_leaves(const Shared& shared, Findings& findings) {
  using reception::LeafChoice;
  const auto month = std::chrono::year_month_day(findings.today).month();
  findings.in_leaf =
      findings.position
          ? reception::in_leaf(shared.stop.leaves, findings.position->latitude_deg(), month)
          : shared.stop.leaves != LeafChoice::bare;
}

void find_prospect(const Shared& shared, Findings& findings) {
  if (!shared.stations || !shared.stop.target) return;
  const StationRow* row = find_row(*shared.stations, key_of(*shared.stop.target));
  if (row == nullptr) return;
  findings.outlook = row->outlook;
  const StationsQuestion& asked = shared.stations->question;
  const bool of_turn =
      asked.target == key_of(*shared.stop.target) && asked.turn == shared.stop.turn;
  if (of_turn) findings.slack = shared.stations->target_slack;
  // The row's chance is that of the station's own best heading.
  if (shared.stop.turn && findings.outlook) {
    findings.outlook->chance_percent = of_turn ? shared.stations->turn_percent : std::nullopt;
  }
  findings.reasons = row->reasons;
}

// The error of the chosen way to point; the usual error while its inputs are unknown.
void find_heading_error(Shared& shared) {
  const auto budget = heading_budget(shared.settings.pointing, heading_context(shared));
  if (!budget) return;
  // A change asks the worker again, so it is rounded to steps that matter.
  constexpr double kStep_deg = 0.5;
  shared.findings.heading_error_deg = std::ceil(budget->total_deg / kStep_deg) * kStep_deg;
  shared.findings.heading_errors = budget->lines;
}

// The stop of the last run is this one until the receiver says that the rig is elsewhere: then it
// is set aside and offered, and nothing of it counts.
void check_earlier_stop(Shared& shared) {
  if (!shared.earlier || shared.earlier->elsewhere) return;
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  if (!fix.position) return;
  const Stop& stop = shared.earlier->stop;
  const bool by_hand = stop.source == PositionSource::ByHand && stop.by_hand;
  const Position& was = by_hand ? *stop.by_hand : shared.earlier->at;
  const double error_m = by_hand ? 3.0 * stop.by_hand_error_m : 0.0;
  if (path_between(was, *fix.position).distance_m <= kSameStop_m + error_m) {
    shared.earlier.reset();
    return;
  }
  shared.earlier->elsewhere = true;
  shared.earlier->stop = shared.stop;
  shared.stop = Stop{};
  shared.undo.clear();
}

// The rig's iron turns with the rig: a sensor on the antenna has another deviation at each turn.
void find_deviation(const Shared& shared, Findings& findings) {
  findings.deviation_card = fit_deviation(shared.settings.sensor_stretches);
  const auto& read = shared.receiver.heading(shared.now).magnetic_heading;
  if (shared.settings.sensor_mount != SensorMount::Rig || !read || !findings.field) return;
  findings.sensor_deviation =
      deviation_at(findings.deviation_card, *read, findings.field->horizontal_nt, findings.date);
}

// The fit is found anew only when its points change.
void fit_tablet(Shared& shared) {
  TabletIron& iron = shared.tablet_iron;
  const auto& points =
      shared.settings.tablet_points.empty() ? iron.seen : shared.settings.tablet_points;
  if (iron.fitted == points) return;
  iron.fitted = points;
  iron.fit = motion::fit_iron(points);
}

void read_own_sensors(const Shared& shared, Findings& findings) {
  using Kind = motion::Sample::Kind;
  if (findings.field) {
    findings.tablet = motion::read_tablet(
        shared.tablet_iron.fit, shared.tablet.mean(Kind::acceleration, shared.now),
        shared.tablet.mean(Kind::field, shared.now), *findings.field);
  }
  const auto& standing = shared.stop.standing;
  findings.tablet_stands_well = standing && !refuses_compass(*standing);
}

// A held tablet points only where a compass does, and only if it is the way to point.
void face_by_tablet(const Shared& shared, Findings& findings) {
  const auto& heading = findings.tablet.heading;
  const bool chosen = shared.settings.pointing == PointingMethod::tablet_magnetometer;
  if (findings.facing || !heading || !chosen || !findings.tablet_stands_well) return;
  findings.facing = to_true(*heading, findings.field->declination);
  findings.facing_by_tablet = true;
}

// By the tablet's accelerometer or a heading sensor on the rig, while they speak.
bool seems_to_move(const Shared& shared) {
  const auto acceleration = shared.tablet.mean(motion::Sample::Kind::acceleration, shared.now);
  const auto sensor = shared.receiver.heading(shared.now);
  const bool hears_sensor = sensor.true_heading || sensor.magnetic_heading;
  return (acceleration && shared.shake.shakes()) || (hears_sensor && shared.rig_turn.turns());
}

// By the sun's height at the stop: by night from the end of civil twilight, when it is 6 degrees
// below the horizon.
ui::Look look_now(const Settings& settings, const Findings& findings) {
  constexpr double kDark_deg = -6.0;
  if (settings.look == LookChoice::Night) return ui::Look::Night;
  if (settings.look == LookChoice::Red) return ui::Look::Red;
  if (settings.look == LookChoice::Day || !findings.position) return ui::Look::Day;
  const bool dark = sky::sun_at(*findings.position, findings.date).elevation_deg < kDark_deg;
  return dark ? ui::Look::Night : ui::Look::Day;
}

}  // namespace

// The declination here counts, not the one that may once have been set in the sensor.
std::optional<Bearing<True>> sensor_says(const nmea::HeadingSensor& sensor,
                                         const Findings& findings) {
  if (sensor.true_heading) return sensor.true_heading;
  if (!sensor.magnetic_heading || !findings.field) return std::nullopt;
  const Turn turn = findings.sensor_deviation ? findings.sensor_deviation->turn : Turn();
  return to_true(*sensor.magnetic_heading + turn, findings.field->declination);
}

void derive(Shared& shared, const World& world) {
  check_earlier_stop(shared);
  fit_tablet(shared);
  Findings findings;
  find_position(shared, findings);
  find_date(shared, findings, world);
  find_leaves(shared, findings);
  findings.look = look_now(shared.settings, findings);
  if (findings.position) {
    findings.field = world.magnetic.at(*findings.position, findings.date);
  }
  findings.nose = nose_heading(shared.stop.nose, findings.field);
  // A rig heading from another place is not valid here.
  const auto parked = shared.parked.result();
  if (shared.stop.nose && shared.stop.nose->taken_at && parked) {
    findings.moved_m = rig_moved_m(*shared.stop.nose->taken_at, *parked);
    if (findings.moved_m) findings.nose.reset();
  }
  if (!left_ring(shared.stop, findings.position, parked)) findings.ring = shared.stop.ring;
  if (findings.position && shared.stop.target &&
      *findings.position != shared.stop.target->position) {
    findings.card = aim_card(*findings.position, shared.stop.target->position, findings.date,
                             world.magnetic, findings.nose);
    if (shared.stop.turn) {
      findings.card = turned_to(*findings.card, *shared.stop.turn, findings.nose);
    }
  }
  find_deviation(shared, findings);
  read_own_sensors(shared, findings);
  findings.rig_seems_to_move = seems_to_move(shared);
  // A sensor on the rig does not turn with the antenna, so it says nothing of where that points.
  if (shared.settings.sensor_mount != SensorMount::Rig) {
    findings.facing = sensor_says(shared.receiver.heading(shared.now), findings);
  }
  if (const auto speed_mps = shared.receiver.fix(shared.now).speed_mps) {
    findings.speed_kmh = *speed_mps * 3.6;
  }
  find_prospect(shared, findings);
  if (shared.stations) findings.on_board = shared.stations->on_board;
  shared.findings = std::move(findings);
  derive_dial_checks(shared, shared.findings);
  face_by_tablet(shared, shared.findings);
  if (shared.findings.facing && shared.findings.card) {
    shared.findings.turn = shared.findings.card->bearing_true - *shared.findings.facing;
  }
  find_heading_error(shared);
  // A correction is one fact: the number on the dial, the roof and the card follow it.
  if (auto& card = shared.findings.card) {
    card->bearing_magnetic = *on_compass_here(shared, card->bearing_true);
  }
}

}  // namespace mastwise
