#pragma once

#include "app/ahead/state.hpp"
#include "app/shared/json.hpp"

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::RouteSheet> {
  static void to_json(json& out, const mastwise::RouteSheet& sheet);
  static void from_json(const json& in, mastwise::RouteSheet& sheet);
};

NLOHMANN_JSON_NAMESPACE_END
