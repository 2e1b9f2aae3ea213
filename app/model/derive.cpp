#include "app/model/apply.hpp"

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

void find_position(const Model& model, Findings& findings) {
  if (model.stop.source == PositionSource::ByHand) {
    findings.position = model.stop.by_hand;
    return;
  }
  const nmea::Fix fix = model.receiver.fix(model.now);
  findings.position_stale = fix.last_position && !fix.position;
  const auto parked = model.parked.result();
  findings.position = parked ? parked->mean : fix.last_position;
}

void find_date(const Model& model, Findings& findings) {
  const auto& trusted = model.receiver.date();
  findings.date = trusted ? UtcTime(trusted->date) : model.machine_time;
  findings.date_origin = trusted ? Findings::DateOrigin::Receiver : Findings::DateOrigin::Machine;
}

// Where the heading sensor points; one that counts from the needle's north needs the declination
// here, not the one that may once have been set in the sensor.
std::optional<Bearing<True>> facing(const nmea::HeadingSensor& sensor,
                                    const std::optional<MagneticField>& field) {
  if (sensor.true_heading) return sensor.true_heading;
  if (!sensor.magnetic_heading || !field) return std::nullopt;
  return to_true(*sensor.magnetic_heading, field->declination);
}

}  // namespace

StationsQuestion stations_question(const Model& model) {
  return {model.findings.position, model.search, model.stop.practice};
}

void derive(Model& model, const World& world) {
  Findings findings;
  find_position(model, findings);
  find_date(model, findings);
  if (findings.position) {
    findings.field = world.magnetic.at(*findings.position, findings.date);
  }
  findings.nose = nose_heading(model.stop.nose, findings.field);
  if (findings.position && model.stop.target && *findings.position != model.stop.target->position) {
    findings.card = aim_card(*findings.position, model.stop.target->position, findings.date,
                             world.magnetic, findings.nose);
  }
  findings.facing = facing(model.receiver.heading(model.now), findings.field);
  if (findings.facing && findings.card) {
    findings.turn = findings.card->bearing_true - *findings.facing;
  }
  if (const auto speed_mps = model.receiver.fix(model.now).speed_mps) {
    findings.speed_kmh = *speed_mps * 3.6;
  }
  findings.drive = safety::drive_state(model.antenna, findings.speed_kmh, model.findings.drive);
  model.findings = findings;
}

}  // namespace mastwise
