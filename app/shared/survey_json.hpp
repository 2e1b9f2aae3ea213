#pragma once

#include "app/shared/json.hpp"

// The answers of the survey as JSON within actions.

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Obstacle, distance_m, ground_amsl_m, above_line_m, loss_db,
                                   earth_curve)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(Deviations, location_db, time_db, model_db,
                                                ground_db, heading_db, station_db, interference_db,
                                                logbook_db, noise_db)

}  // namespace mastwise::reception

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::reception::Obstacles> {
  static void to_json(json& out, const mastwise::reception::Obstacles& obstacles) {
    out = json::array();
    for (const auto& obstacle : obstacles) out.push_back(obstacle);
  }
  static void from_json(const json& in, mastwise::reception::Obstacles& obstacles) {
    for (const json& one : in) obstacles.add(one.get<mastwise::reception::Obstacle>());
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(Outlook, distance_m, bearing, frequency_mhz, band,
                                                mode, terrain_coverage, transmitter_height_m,
                                                field_p1812_dbuvm, field_itm_dbuvm, field_dbuvm,
                                                spread_db, margin_db, chance_percent,
                                                chance_cap_percent, deviations, obstacles,
                                                amplifier_off, decoding, side_db)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PicturePoint, distance_m, ground_m, line_m, fresnel_m)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PictureObstacle, obstacle, ground_m)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PathPicture, distance_m, frequency_mhz, points, obstacles,
                                   stop_antenna_m, station_antenna_m, stop_clutter_m,
                                   terrain_coverage)

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SignalStep, what, decibel, distance_m, height_m, station)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SignalBudget, erp_kw, tower_db, steps, margin_db,
                                   margin_p1812_db, margin_itm_db)

}  // namespace mastwise::reception

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AheadOffer, call_sign, chance_percent, distance_m, bearing)

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::AheadPlace> {
  static void to_json(json& out, const mastwise::AheadPlace& place) {
    out = {{"position", place.position}, {"here", place.here}, {"offers", place.offers}};
  }
  static mastwise::AheadPlace from_json(const json& in) {
    mastwise::AheadPlace place{.position = in.at("position").get<mastwise::Position>()};
    in.at("here").get_to(place.here);
    in.at("offers").get_to(place.offers);
    return place;
  }
};

template <>
struct adl_serializer<mastwise::StationRow> {
  static void to_json(json& out, const mastwise::StationRow& row) {
    out = {{"station", row.station},
           {"outlook", row.outlook},
           {"reasons", mastwise::to_json(row.reasons)}};
  }
  static mastwise::StationRow from_json(const json& in) {
    mastwise::StationRow row{.station = in.at("station").get<mastwise::Station>()};
    in.at("outlook").get_to(row.outlook);
    row.reasons = mastwise::reasons_from_json(in.at("reasons"));
    return row;
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AheadTable, networks, places)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Slack, left_deg, right_deg)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlanStation, key, title, rf_channel, network, chance_percent,
                                   pinned)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(PlanRemark, station, interferer, gain_percent,
                                                on_null, loses)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(NullHint, heading, interferer, interferer_bearing, width_deg,
                                   depth_db, chance_percent, gain_percent, loses)
// Old recordings have a finished sentence, "remark", in place of the remarks.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(PlanStep, bearing, slack, brings, loses, remarks)
inline void to_json(nlohmann::json& out, const NotInPlan& station) {
  out = {{"name", station.name}, {"best_percent", station.best_percent}, {"key", station.key}};
}
// Old recordings have one text with name and chance.
inline void from_json(const nlohmann::json& in, NotInPlan& station) {
  if (in.is_string()) {
    in.get_to(station.name);
    return;
  }
  in.at("name").get_to(station.name);
  in.at("best_percent").get_to(station.best_percent);
  if (in.contains("key")) in.at("key").get_to(station.key);
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationsOnBoard, count, networks_named, nearest_m,
                                   nearest_bearing)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LostPin, pin, instead)
// Recordings of the first releases have no second turn, no weak stations, no link budget, no turns,
// no lost pins.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(Plan, steps, again, out, too_weak, fewest_proved)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(StationsAnswer, question, rows, measured, all,
                                                target_path, target_budget, target_slack,
                                                turn_percent, target_null, plan, turns, ahead,
                                                on_board, lost_pins, trouble)

}  // namespace mastwise
