#include "app/map/json.hpp"

#include <utility>

namespace mastwise::map {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlaneLine, kind, points)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ReliefGrid, columns, rows, meters_per_cell)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Relief, grid, shade, band)

}  // namespace mastwise::map

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RidgeShadow, side, meters_per_cell, cells)

}  // namespace mastwise::reception

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MapTown, name, at, people)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MapRegion, name, within)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AreaSpot, distance_m, bearing, chance_percent, gain_percent)

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::act::MapDrawn>::to_json(json& out,
                                                      const mastwise::act::MapDrawn& drawn) {
  const mastwise::MapSheet& sheet = drawn.sheet;
  out = {{"from", sheet.question.from},
         {"practice", sheet.question.practice},
         {"radius_m", sheet.question.radius_m},
         {"generation", sheet.question.generation},
         {"target", sheet.question.target},
         {"antenna_m", sheet.question.antenna_m},
         {"lines", sheet.lines},
         {"relief", sheet.relief},
         {"stations", sheet.stations},
         {"towns", sheet.towns},
         {"regions", sheet.regions},
         {"shadow", sheet.shadow},
         {"trouble", sheet.trouble}};
}

// Recordings of earlier versions have no target, towns, regions and shadow.
mastwise::act::MapDrawn adl_serializer<mastwise::act::MapDrawn>::from_json(const json& in) {
  mastwise::MapSheet sheet{.question = {.from = in.at("from").get<mastwise::Position>(),
                                        .practice = in.at("practice").get<bool>(),
                                        .radius_m = in.at("radius_m").get<double>(),
                                        .generation = in.at("generation").get<std::size_t>()}};
  in.at("lines").get_to(sheet.lines);
  in.at("relief").get_to(sheet.relief);
  in.at("stations").get_to(sheet.stations);
  if (in.contains("towns")) {
    in.at("target").get_to(sheet.question.target);
    in.at("antenna_m").get_to(sheet.question.antenna_m);
    in.at("towns").get_to(sheet.towns);
    in.at("regions").get_to(sheet.regions);
    in.at("shadow").get_to(sheet.shadow);
  }
  in.at("trouble").get_to(sheet.trouble);
  return {std::move(sheet)};
}

void adl_serializer<mastwise::AreaSheet>::to_json(json& out, const mastwise::AreaSheet& sheet) {
  out = {{"here", sheet.question.here},
         {"stations", sheet.question.stations},
         {"radius_m", sheet.question.radius_m},
         {"done", sheet.done},
         {"side", sheet.side},
         {"percent", sheet.percent},
         {"here_percent", sheet.here_percent},
         {"spots", sheet.spots},
         {"left_out", sheet.left_out},
         {"trouble", sheet.trouble}};
}

void adl_serializer<mastwise::AreaSheet>::from_json(const json& in, mastwise::AreaSheet& sheet) {
  in.at("here").get_to(sheet.question.here);
  for (const json& station : in.at("stations")) {
    sheet.question.stations.push_back(station.get<mastwise::Station>());
  }
  in.at("radius_m").get_to(sheet.question.radius_m);
  in.at("done").get_to(sheet.done);
  in.at("side").get_to(sheet.side);
  in.at("percent").get_to(sheet.percent);
  in.at("here_percent").get_to(sheet.here_percent);
  in.at("spots").get_to(sheet.spots);
  sheet.left_out = in.value("left_out", std::vector<std::string>());
  in.at("trouble").get_to(sheet.trouble);
}

NLOHMANN_JSON_NAMESPACE_END
