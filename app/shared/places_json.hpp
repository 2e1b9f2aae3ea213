#pragma once

#include "app/shared/json.hpp"

// The gazetteer's answers as JSON within actions.

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::places::PopulatedPlace> {
  static void to_json(json& out, const mastwise::places::PopulatedPlace& place) {
    out = {{"name", place.name},
           {"country", place.country},
           {"country_name", place.country_name},
           {"admin", place.admin},
           {"region", place.region},
           {"population", place.population},
           {"position", place.position}};
  }
  static mastwise::places::PopulatedPlace from_json(const json& in) {
    return {.name = in.at("name").get<std::string>(),
            .country = in.at("country").get<std::string>(),
            .country_name = in.at("country_name").get<std::string>(),
            .admin = in.at("admin").get<std::string>(),
            .region = in.at("region").get<std::string>(),
            .population = in.at("population").get<std::optional<std::uint32_t>>(),
            .position = in.at("position").get<mastwise::Position>()};
  }
};

template <>
struct adl_serializer<mastwise::places::NearPlace> {
  static void to_json(json& out, const mastwise::places::NearPlace& near) {
    out = {{"place", near.place}, {"distance_m", near.distance_m}, {"bearing", near.bearing}};
  }
  static mastwise::places::NearPlace from_json(const json& in) {
    return {.place = in.at("place").get<mastwise::places::PopulatedPlace>(),
            .distance_m = in.at("distance_m").get<double>(),
            .bearing = in.at("bearing").get<mastwise::Bearing<mastwise::True>>()};
  }
};

template <>
struct adl_serializer<mastwise::places::FoundPlace> {
  static void to_json(json& out, const mastwise::places::FoundPlace& found) {
    out = {{"place", found.place}, {"way", nullptr}};
    if (!found.way) return;
    out["way"] = {found.way->distance_m, found.way->bearing, found.way->bearing_at_end};
  }
  static mastwise::places::FoundPlace from_json(const json& in) {
    mastwise::places::FoundPlace found{.place =
                                           in.at("place").get<mastwise::places::PopulatedPlace>()};
    const json& way = in.at("way");
    if (way.is_null()) return found;
    using Bearing = mastwise::Bearing<mastwise::True>;
    found.way = mastwise::PathBetween{way.at(0).get<double>(), way.at(1).get<Bearing>(),
                                      way.at(2).get<Bearing>()};
    return found;
  }
};

template <>
struct adl_serializer<mastwise::PositionSaid> {
  static void to_json(json& out, const mastwise::PositionSaid& said) {
    out = {{"position", said.position}, {"near", said.near ? json(*said.near) : json(nullptr)}};
  }
  static mastwise::PositionSaid from_json(const json& in) {
    mastwise::PositionSaid said{.position = in.at("position").get<mastwise::Position>()};
    const json& near = in.at("near");
    if (!near.is_null()) said.near = near.get<mastwise::places::NearPlace>();
    return said;
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlacesQuestion, typed, near, shown)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlacesAnswer, question, found, said, trouble)

}  // namespace mastwise
