#include "app/ahead/json.hpp"

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteChance, at_km, chance_percent)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Stretch, from_km, to_km, least_percent, mean_percent)

}  // namespace mastwise::reception

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteRow, network, chances, stretches)

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::RouteSheet>::to_json(json& out, const mastwise::RouteSheet& sheet) {
  out = {{"here", sheet.question.here},
         {"points", sheet.question.points},
         {"networks", sheet.question.networks},
         {"floor_percent", sheet.question.floor_percent},
         {"step_km", sheet.question.step_km},
         {"done", sheet.done},
         {"length_km", sheet.length_km},
         {"rows", sheet.rows},
         {"trouble", sheet.trouble}};
}

void adl_serializer<mastwise::RouteSheet>::from_json(const json& in, mastwise::RouteSheet& sheet) {
  in.at("here").get_to(sheet.question.here);
  for (const json& point : in.at("points")) {
    sheet.question.points.push_back(point.get<mastwise::Position>());
  }
  in.at("networks").get_to(sheet.question.networks);
  in.at("floor_percent").get_to(sheet.question.floor_percent);
  in.at("step_km").get_to(sheet.question.step_km);
  in.at("done").get_to(sheet.done);
  in.at("length_km").get_to(sheet.length_km);
  in.at("rows").get_to(sheet.rows);
  in.at("trouble").get_to(sheet.trouble);
}

NLOHMANN_JSON_NAMESPACE_END
