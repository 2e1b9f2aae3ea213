#include "app/ahead/json.hpp"

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteChance, at_km, chance_percent)

}  // namespace mastwise::reception

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteRow, network, chances)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RoutePart, from_km, to_km)

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::RouteSheet>::to_json(json& out, const mastwise::RouteSheet& sheet) {
  out = {{"here", sheet.question.here},
         {"points", sheet.question.points},
         {"networks", sheet.question.networks},
         {"step_km", sheet.question.step_km},
         {"done", sheet.done},
         {"length_km", sheet.length_km},
         {"rows", sheet.rows},
         {"without_terrain", sheet.without_terrain},
         {"trouble", sheet.trouble}};
}

void adl_serializer<mastwise::RouteSheet>::from_json(const json& in, mastwise::RouteSheet& sheet) {
  in.at("here").get_to(sheet.question.here);
  for (const json& point : in.at("points")) {
    sheet.question.points.push_back(point.get<mastwise::Position>());
  }
  in.at("networks").get_to(sheet.question.networks);
  in.at("step_km").get_to(sheet.question.step_km);
  in.at("done").get_to(sheet.done);
  in.at("length_km").get_to(sheet.length_km);
  in.at("rows").get_to(sheet.rows);
  // Recordings from before missing ground was shown lack it.
  if (in.contains("without_terrain")) in.at("without_terrain").get_to(sheet.without_terrain);
  in.at("trouble").get_to(sheet.trouble);
}

NLOHMANN_JSON_NAMESPACE_END
