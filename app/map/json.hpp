#pragma once

#include "app/map/actions.hpp"
#include "app/shared/json.hpp"

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::act::MapDrawn> {
  static void to_json(json& out, const mastwise::act::MapDrawn& drawn);
  static mastwise::act::MapDrawn from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::AreaSheet> {
  static void to_json(json& out, const mastwise::AreaSheet& sheet);
  static void from_json(const json& in, mastwise::AreaSheet& sheet);
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MapOffset, right, down)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MapMove, drag, scale, turn_deg, about)

}  // namespace mastwise
