#pragma once

#include "app/shared/names.hpp"
#include "core/catalog/station_change.hpp"
#include "core/channels/channels.hpp"
#include "core/gear/near_towers.hpp"
#include "core/gear/noise.hpp"
#include "core/gear/television.hpp"
#include "core/geo/notation.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/heading_error.hpp"
#include "core/headings/needle.hpp"
#include "core/logbook/record.hpp"
#include "core/map/borders.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/reason.hpp"
#include "core/reception/signal_budget.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"
#include "core/stations/station.hpp"

// The stored names of the enums of core, which has no settings and no recordings.
namespace mastwise {

template <>
inline constexpr std::array kStoredNames<Notation> =
    names({"decimal", "degrees_minutes", "degrees_minutes_seconds", "utm_ups", "mgrs"});
// A star keeps the name of when there was only Polaris.
template <>
inline constexpr std::array kStoredNames<PointingMethod> =
    names({"bearing_alone", "map_ruler", "baseplate_compass", "sighting_compass", "set_compass",
           "tablet_magnetometer", "handle", "rig_sides", "sun_shadow", "pole_star",
           "pole_star_as_north", "landmark", "walked_line", "course_over_ground",
           "true_heading_sensor", "magnetic_heading_sensor", "turn_in_place"});
template <>
inline constexpr std::array kStoredNames<Standing> = names({"beside_rig", "on_roof", "picnic_table",
                                                            "few_steps_off", "well_clear"});
template <>
inline constexpr std::array kStoredNames<NeedleZone> = names({"northern", "equator", "southern",
                                                              "anywhere"});
template <>
inline constexpr std::array kStoredNames<CompassCheckBy> = names({"sun", "star", "landmark"});
template <>
inline constexpr std::array kStoredNames<Carrier> = names({"driven", "trailer_straight",
                                                           "trailer"});
template <>
inline constexpr std::array kStoredNames<SunFrom> = names({"nose", "right", "tail", "left"});
template <>
inline constexpr std::array kStoredNames<Raster> = names({"atsc", "europe", "australia", "japan",
                                                          "brazil"});
template <>
inline constexpr std::array kStoredNames<StationChange::Kind> = names({"added", "gone", "changed"});
template <>
inline constexpr std::array kStoredNames<Band> = names({"low_vhf", "high_vhf", "uhf"});
template <>
inline constexpr std::array kStoredNames<BroadcastStandard> = names({"atsc1", "atsc3", "dvb_t",
                                                                     "dvb_t2", "isdb_t"});
template <>
inline constexpr std::array kStoredNames<Polarization> = names({"unknown", "horizontal", "vertical",
                                                                "elliptical"});
template <>
inline constexpr std::array kStoredNames<gear::NoiseEnvironment> = names({"city", "residential",
                                                                          "rural", "quiet_rural"});
template <>
inline constexpr std::array kStoredNames<gear::TowerRange> = names({"none", "in_sight", "near",
                                                                    "beside"});
template <>
inline constexpr std::array kStoredNames<gear::Decoder> =
    names({"atsc1", "atsc3", "atsc3_encrypted", "dvb_t", "dvb_t2", "dvb_t2_hevc", "isdb_t"});
template <>
inline constexpr std::array kStoredNames<gear::Decoding> =
    names({"possible", "may_be_encrypted", "may_need_hevc", "standard_unknown", "impossible"});
template <>
inline constexpr std::array kStoredNames<Outcome> = names({"steady", "breaks_up", "nothing"});
template <>
inline constexpr std::array kStoredNames<map::LineKind> = names({"coast", "country_border",
                                                                 "state_border", "lake_shore"});
template <>
inline constexpr std::array kStoredNames<reception::Surroundings> =
    names({"open", "scrub", "scattered_trees", "forest", "houses", "town"});
template <>
inline constexpr std::array kStoredNames<reception::LeafChoice> = names({"by_season", "in_leaf",
                                                                         "bare"});
template <>
inline constexpr std::array kStoredNames<reception::SideKind> = names({"unmarked", "open", "trees",
                                                                       "rig", "hill"});
template <>
inline constexpr std::array kStoredNames<reception::PathMode> = names({"none", "point_to_point",
                                                                       "partial", "area"});
template <>
inline constexpr std::array kStoredNames<reception::SignalLoss> =
    names({"distance", "transmitter_pattern", "ridge", "earth_curve", "ground", "low_antenna",
           "surroundings", "leaves", "beside", "polarization", "heading", "amplifier_off", "noise",
           "same_channel", "next_channel", "helpers", "logbook"});
template <>
inline constexpr std::array kStoredNames<reception::ReasonKind> =
    names({"obstacle",     "rough_ground",        "surroundings", "leaves",       "polarization",
           "same_channel", "next_channel",        "noise",        "aim",          "fading",
           "model_spread", "transmitter_pattern", "shortfall",    "overload",     "logbook",
           "clear_line",   "no_terrain",          "model_limit",  "unknown_fact", "amplifier_off",
           "decoding",     "assumed_mode",        "on_its_side"});

}  // namespace mastwise
