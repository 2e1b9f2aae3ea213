#include "app/session/questions.hpp"

#include "app/ahead/update.hpp"
#include "app/keypad/keypad.hpp"
#include "app/map/update.hpp"
#include "app/parking/update.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace mastwise {
namespace {

void add(std::vector<Position>& shown, const std::optional<Position>& position) {
  if (position && std::find(shown.begin(), shown.end(), *position) == shown.end()) {
    shown.push_back(*position);
  }
}

std::array<reception::LearnedBias, 3> biases(
    const std::array<learning::Correction, 3>& corrections) {
  std::array<reception::LearnedBias, 3> biases;
  std::transform(corrections.begin(), corrections.end(), biases.begin(), learning::as_bias);
  return biases;
}

}  // namespace

StationsQuestion stations_question(const Model& model) {
  StationsQuestion question{
      .from = model.findings.position,
      .search = model.search,
      .practice = model.stop.practice,
      .surroundings = model.stop.surroundings,
      .leaves = model.stop.leaves,
      .month = static_cast<unsigned>(std::chrono::year_month_day(model.findings.today).month()),
      .gear = model.settings.gear,
      .noise = model.stop.noise,
      .inverter_on = model.stop.inverter_on,
      .towers = model.stop.towers,
      .ring = model.findings.ring};
  if (model.stop.target) question.target = key_of(*model.stop.target);
  question.turn = model.stop.turn;
  question.pinned = model.stop.pinned;
  question.pin_notes = model.stop.pin_notes;
  question.plan_for = model.plan.plan_for;
  question.ticked_networks = model.settings.ticked_networks;
  question.appliances = model.settings.appliances;
  question.plan_floor_percent = kPlanFloors[model.plan.floor];
  question.heading_error_deg = model.findings.heading_error_deg;
  question.pinned_networks = model.settings.pinned_networks;
  if (!model.stop.practice && model.data.answer) {
    question.generation = model.data.answer->generation;
  }
  if (model.place == Place::Ahead || model.safety.drive == safety::Drive::Underway) {
    question.compare = true;
    question.compare_pinned = compares_pinned(model.ahead, model);
    question.ahead = model.ahead.places;
  }
  // The Logbook lists all stations, whatever is searched for elsewhere.
  if (model.place == Place::Logbook) question.search.clear();
  question.learned = biases(model.logbook.log.taught.corrections);
  return question;
}

std::optional<MapQuestion> map_question(const Model& model) {
  return map_question(model.map, model, stations_question(model));
}

std::optional<AreaQuestion> area_question(const Model& model) {
  return area_question(model.map, model, stations_question(model));
}

std::optional<RouteQuestion> route_question(const Model& model) {
  return route_question(model.ahead, model, stations_question(model));
}

std::optional<GearsQuestion> gears_question(const Model& model) {
  if (model.sheet != Sheet::Parking) return std::nullopt;
  const Taught& taught = model.logbook.log.taught;
  std::vector<std::array<reception::LearnedBias, 3>> learned;
  for (const GearChoice& choice : rig_gears(model.settings)) {
    learned.push_back(biases(taught.corrections_with(choice)));
  }
  return gears_question(model, stations_question(model), std::move(learned));
}

std::optional<PlacesQuestion> places_question(const Model& model) {
  PlacesQuestion question;
  add(question.shown, model.findings.position);
  if (model.keypad && types_name(*model.keypad)) {
    question.typed = model.keypad->text;
    question.near = model.findings.position;
  } else if (model.keypad && types_position(*model.keypad)) {
    if (const auto typed = parse_position(model.keypad->text)) add(question.shown, *typed);
  }
  if (model.place == Place::Map && model.map.spot) {
    add(question.shown, model.map.spot->position);
  }
  if (model.place == Place::Ahead || model.safety.drive == safety::Drive::Underway) {
    for (const Position& place : model.ahead.places) add(question.shown, place);
  }
  if (model.sheet == Sheet::Import) {
    for (const Position& place : model.data.question.way) add(question.shown, place);
  }
  if (model.place == Place::Logbook || model.sheet == Sheet::Stops) {
    for (const StopRecord& stop : listed_stops(model.logbook.log))
      add(question.shown, stop.position);
  }
  if (question.shown.empty() && question.typed.empty()) return std::nullopt;
  return question;
}

std::optional<IntakeQuestion> intake_question(const Model& model) {
  if (!model.data.opened || model.data.question.step == IntakeStep::Report) return std::nullopt;
  return model.data.question;
}

}  // namespace mastwise
