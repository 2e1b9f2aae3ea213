#include "app/model/route.hpp"

#include "app/model/model.hpp"

namespace mastwise {

std::optional<RouteQuestion> route_question(const Model& model) {
  const bool looked_at = model.place == Place::Ahead && model.along;
  if (!looked_at || !model.stations || !model.stations->ahead || model.ahead.empty() ||
      !model.findings.position) {
    return std::nullopt;
  }
  RouteQuestion question{.here = survey_part(stations_question(model)),
                         .networks = model.stations->ahead->networks,
                         .floor_percent = kPlanFloors[model.plan_floor]};
  if (question.networks.empty()) return std::nullopt;
  question.points.push_back(*model.findings.position);
  for (const Position& place : model.ahead) question.points.push_back(place);
  return question;
}

}  // namespace mastwise
