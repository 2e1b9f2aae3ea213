#pragma once

#include "app/model/choices.hpp"
#include "app/model/form.hpp"
#include "app/model/intake.hpp"
#include "app/model/logbook_files.hpp"
#include "app/model/map.hpp"
#include "app/model/plan.hpp"
#include "app/model/stop.hpp"
#include "app/model/sweep.hpp"
#include "app/safety/state.hpp"
#include "core/channels/channels.hpp"
#include "core/geo/notation.hpp"
#include "core/headings/heading_error.hpp"
#include "core/logbook/record.hpp"
#include "core/map/borders.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/reason.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"
#include "core/stations/station.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

// The names of enum values in settings and recordings, in the enum's order. A released name stays,
// so that old files still open. The first release stored numbers, which are read too.
namespace mastwise {

template <class E>
inline constexpr std::array<std::string_view, 0> kStoredNames{};

template <std::size_t N>
constexpr std::array<std::string_view, N> names(const std::string_view (&list)[N]) {
  return std::to_array(list);
}

template <>
inline constexpr std::array kStoredNames<Place> = names({"here", "stations", "aim", "peak",
                                                         "logbook", "ahead"});
template <>
inline constexpr std::array kStoredNames<Sheet> = names({"none", "gear", "surroundings", "path",
                                                         "plan", "scan", "ways", "nose", "paper",
                                                         "handle", "checks", "logbook_files",
                                                         "carries", "import"});
template <>
inline constexpr std::array kStoredNames<PositionSource> = names({"receiver", "by_hand"});
template <>
inline constexpr std::array kStoredNames<DialUp> = names({"true_north", "nose", "facing"});
template <>
inline constexpr std::array kStoredNames<KeypadPurpose> = names({"position", "nose", "search",
                                                                 "field"});
template <>
inline constexpr std::array kStoredNames<Link::State> = names({"searching", "open", "lost",
                                                               "ended"});
template <>
inline constexpr std::array kStoredNames<Field> =
    names({"map_bar_mm",       "map_bar_length",     "map_place",          "map_direction_deg",
           "map_length_mm",    "left_meridian_deg",  "right_meridian_deg", "meridians_apart_mm",
           "from_meridian_mm", "lower_parallel_deg", "upper_parallel_deg", "parallels_apart_mm",
           "from_parallel_mm", "sheet_width_mm",     "sheet_height_mm",    "stop_right_mm",
           "stop_up_mm",       "first_reading_deg",  "first_angle_deg",    "second_reading_deg",
           "second_angle_deg", "reach_from_deg",     "reach_to_deg",       "stow_deg",
           "handle_now_deg",   "there_bearing_deg",  "back_bearing_deg",   "landmark_place",
           "one_way_deg",      "one_way_error_deg",  "other_way_deg",      "other_way_error_deg",
           "ahead_place"});
template <>
inline constexpr std::array kStoredNames<IntakeStep> = names({"catalog", "folder", "table",
                                                              "taking_in", "report"});
template <>
inline constexpr std::array kStoredNames<LogbookTask> =
    names({"look", "give_table", "give_waypoints", "give_backup", "take_in"});
template <>
inline constexpr std::array kStoredNames<MapUp> = names({"north", "rig", "turned"});
template <>
inline constexpr std::array kStoredNames<PlanFor> = names({"pinned", "networks", "all"});
template <>
inline constexpr std::array kStoredNames<Nose::Origin> =
    names({"by_hand", "last_course", "backed_in", "sensor", "sun", "two_points"});
template <>
inline constexpr std::array kStoredNames<SweepBy> = names({"compass", "handle"});
template <>
inline constexpr std::array kStoredNames<Asking> = names({"nothing", "raise", "roof", "weather",
                                                          "drive", "after_alarm", "undo_raise",
                                                          "merge_logbook"});
template <>
inline constexpr std::array kStoredNames<Notation> =
    names({"decimal", "degrees_minutes", "degrees_minutes_seconds", "utm_ups", "mgrs"});
template <>
inline constexpr std::array kStoredNames<PointingMethod> =
    names({"bearing_alone", "map_ruler", "baseplate_compass", "sighting_compass", "set_compass",
           "tablet_magnetometer", "handle", "rig_sides", "sun_shadow", "pole_star",
           "pole_star_as_north", "landmark", "walked_line", "course_over_ground",
           "true_heading_sensor", "magnetic_heading_sensor"});
template <>
inline constexpr std::array kStoredNames<Carrier> = names({"driven", "trailer_straight",
                                                           "trailer"});
template <>
inline constexpr std::array kStoredNames<SunFrom> = names({"nose", "right", "tail", "left"});
template <>
inline constexpr std::array kStoredNames<Raster> = names({"atsc", "europe", "australia", "japan",
                                                          "brazil"});
template <>
inline constexpr std::array kStoredNames<Band> = names({"low_vhf", "high_vhf", "uhf"});
template <>
inline constexpr std::array kStoredNames<BroadcastStandard> = names({"atsc1", "atsc3", "dvb_t",
                                                                     "dvb_t2", "isdb_t"});
template <>
inline constexpr std::array kStoredNames<Polarization> = names({"unknown", "horizontal", "vertical",
                                                                "elliptical"});
template <>
inline constexpr std::array kStoredNames<Outcome> = names({"steady", "breaks_up", "nothing"});
template <>
inline constexpr std::array kStoredNames<map::LineKind> = names({"coast", "country_border",
                                                                 "state_border", "lake_shore"});
template <>
inline constexpr std::array kStoredNames<reception::Surroundings> =
    names({"open", "scrub", "scattered_trees", "forest", "houses", "town"});
template <>
inline constexpr std::array kStoredNames<reception::PathMode> = names({"none", "point_to_point",
                                                                       "area"});
template <>
inline constexpr std::array kStoredNames<reception::ReasonKind> = names(
    {"obstacle", "rough_ground", "surroundings", "leaves", "polarization", "same_channel",
     "next_channel", "noise", "aim", "fading", "model_spread", "transmitter_pattern", "shortfall",
     "overload", "logbook", "clear_line", "no_terrain", "model_limit", "unknown_fact"});

template <class E>
concept StoredByName = std::is_enum_v<E> && !kStoredNames<E>.empty();

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

template <mastwise::StoredByName E>
struct adl_serializer<E> {
  static void to_json(json& out, E value) {
    out = mastwise::kStoredNames<E>.at(static_cast<std::size_t>(value));
  }
  static void from_json(const json& in, E& value) {
    constexpr const auto& kNames = mastwise::kStoredNames<E>;
    const auto index =
        in.is_string()
            ? static_cast<std::size_t>(
                  std::find(kNames.begin(), kNames.end(), in.get<std::string>()) - kNames.begin())
            : in.get<std::size_t>();
    if (index >= kNames.size()) throw std::invalid_argument("unknown value " + in.dump());
    value = static_cast<E>(index);
  }
};

NLOHMANN_JSON_NAMESPACE_END
