#include "app/model/places.hpp"

#include "app/model/keypad.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

// Distances are shown to a tenth of a mile. A new question starts before the name gets too far, so
// that it does not flicker on the road.
constexpr double kSaysStill_m = 50.0, kAskAnew_m = 25.0;

bool within(const Position& a, const Position& b, double most_m) {
  if (a == b) return true;
  constexpr double kBox_deg = 0.001;  // of latitude 110 m: spares most geodesics
  if (std::fabs(a.latitude_deg() - b.latitude_deg()) > kBox_deg) return false;
  return path_between(a, b).distance_m <= most_m;
}

void add(std::vector<Position>& shown, const std::optional<Position>& position) {
  if (position && std::find(shown.begin(), shown.end(), *position) == shown.end()) {
    shown.push_back(*position);
  }
}

}  // namespace

std::optional<PlacesQuestion> places_question(const Model& model) {
  PlacesQuestion question;
  add(question.shown, model.findings.position);
  if (model.keypad && types_name(*model.keypad)) {
    question.typed = model.keypad->text;
    question.near = model.findings.position;
  } else if (model.keypad && types_position(*model.keypad)) {
    if (const auto typed = parse_position(model.keypad->text)) add(question.shown, *typed);
  }
  if (model.place == Place::Ahead) {
    for (const Position& place : model.ahead) add(question.shown, place);
  }
  if (model.place == Place::Logbook) {
    for (const StopRecord& stop : listed_stops(model.log)) add(question.shown, stop.position);
  }
  if (question.shown.empty() && question.typed.empty()) return std::nullopt;
  return question;
}

bool same_places(const PlacesQuestion& asked, const PlacesQuestion& now) {
  const auto near = [](const Position& a, const Position& b) { return within(a, b, kAskAnew_m); };
  if (asked.typed != now.typed || asked.near.has_value() != now.near.has_value()) return false;
  if (asked.near && !near(*asked.near, *now.near)) return false;
  return std::equal(asked.shown.begin(), asked.shown.end(), now.shown.begin(), now.shown.end(),
                    near);
}

const places::NearPlace* near_place_of(const Model& model, const Position& position) {
  if (!model.places) return nullptr;
  for (const PositionSaid& said : model.places->said) {
    if (said.near && within(said.position, position, kSaysStill_m)) return &*said.near;
  }
  return nullptr;
}

const std::vector<places::FoundPlace>* places_found(const Model& model) {
  if (!model.keypad || !types_name(*model.keypad) || !model.places) return nullptr;
  const std::string &asked = model.places->question.typed, &now = model.keypad->text;
  if (asked.empty() || !(asked.starts_with(now) || now.starts_with(asked))) return nullptr;
  return &model.places->found;
}

}  // namespace mastwise
