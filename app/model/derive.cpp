#include "app/model/apply.hpp"
#include "app/model/listing.hpp"
#include "app/model/sweeping.hpp"

#include <cmath>

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

void find_prospect(const Model& model, Findings& findings) {
  if (!model.stations || !model.stop.target) return;
  const StationRow* row = find_row(*model.stations, key_of(*model.stop.target));
  if (row == nullptr) return;
  findings.outlook = row->outlook;
  if (model.stations->question.target == key_of(*model.stop.target)) {
    findings.slack = model.stations->target_slack;
  }
  findings.reasons = row->reasons;
}

// The map follows north or the nose by itself.
void turn_map(Model& model) {
  if (model.map.up == MapUp::Turned) return;
  const bool by_nose = model.map.up == MapUp::Rig && model.findings.nose;
  model.map.view.up = by_nose ? model.findings.nose->nose() : Bearing<True>();
}

// The error of the chosen way to point; the usual error while its inputs are unknown.
void find_heading_error(Model& model) {
  const auto budget = heading_budget(model.settings.pointing, heading_context(model));
  if (!budget) return;
  // A change asks the worker again, so it is rounded to steps that matter.
  constexpr double kStep_deg = 0.5;
  model.findings.heading_error_deg = std::ceil(budget->total_deg / kStep_deg) * kStep_deg;
  model.findings.heading_errors = budget->lines;
}

// The answers of the open sheet's form.
void derive_forms(const Model& model, Findings& findings) {
  if (model.sheet == Sheet::Paper) {
    findings.from_map = place_from_map(model.form, model.settings.miles);
    findings.from_net = place_from_net(model.form);
    findings.ruler = ruler_for_heading(model, findings);
  }
  if (model.sheet == Sheet::Checks) {
    findings.reciprocal = reciprocal_check(model.form);
    findings.agreement = agreement_check(model.form);
  }
  if (model.sheet == Sheet::Handle) findings.handle = handle_turn(model, findings);
}

}  // namespace

StationsQuestion stations_question(const Model& model) {
  StationsQuestion question{.from = model.findings.position,
                            .search = model.search,
                            .practice = model.stop.practice,
                            .surroundings = model.stop.surroundings,
                            .gear = model.settings.gear};
  if (model.stop.target) question.target = key_of(*model.stop.target);
  question.pinned = model.stop.pinned;
  question.plan_for = model.plan_for;
  question.ticked_networks = model.settings.ticked_networks;
  question.plan_floor_percent = kPlanFloors[model.plan_floor];
  question.heading_error_deg = model.findings.heading_error_deg;
  question.pinned_networks = model.settings.pinned_networks;
  if (!model.stop.practice && model.intake.answer) {
    question.generation = model.intake.answer->generation;
  }
  if (model.place == Place::Ahead) {
    question.compare = true;
    question.ahead = model.ahead;
  }
  for (const Band band : {Band::low_vhf, Band::high_vhf, Band::uhf}) {
    const auto at = static_cast<std::size_t>(band);
    const learning::Correction& correction = model.log.taught.corrections[at];
    if (!correction.applied) continue;
    question.learned[at] = {
        .bias_db = correction.bias_db, .sigma_db = correction.sigma_db, .stops = correction.stops};
  }
  return question;
}

void derive(Model& model, const World& world) {
  Findings findings;
  find_position(model, findings);
  find_date(model, findings);
  if (findings.position) {
    findings.field = world.magnetic.at(*findings.position, findings.date);
  }
  findings.nose = nose_heading(model.stop.nose, findings.field);
  // A rig heading from another place is not valid here.
  const auto parked = model.parked.result();
  if (model.stop.nose && model.stop.nose->taken_at && parked) {
    findings.moved_m = rig_moved_m(*model.stop.nose->taken_at, *parked);
    if (findings.moved_m) findings.nose.reset();
  }
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
  derive_listing(model, findings);
  find_prospect(model, findings);
  model.findings = std::move(findings);
  turn_map(model);
  find_heading_error(model);
  derive_dial_checks(model, model.findings);
  if (model.sheet == Sheet::Ways) derive_ways(model, model.findings);
  if (model.sheet == Sheet::Scan) derive_scan(model, model.findings);
  derive_forms(model, model.findings);
  if (model.sheet == Sheet::Carries) derive_networks(model, model.findings);
  if (model.sheet == Sheet::Import) {
    const auto here = model.stop.practice ? std::nullopt : model.findings.position;
    model.findings.intake =
        intake_findings(model.intake, model.findings.date, here, model.settings.miles);
  }
  if (model.place == Place::Logbook) derive_log(model, model.findings);
}

}  // namespace mastwise
