#pragma once

#include "app/parking/state.hpp"
#include "app/shared/json.hpp"

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::GearsAnswer> {
  static void to_json(json& out, const mastwise::GearsAnswer& answer);
  static void from_json(const json& in, mastwise::GearsAnswer& answer);
};

NLOHMANN_JSON_NAMESPACE_END
