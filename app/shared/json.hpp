#pragma once

#include "app/shared/ahead_stop.hpp"
#include "app/shared/link.hpp"
#include "app/shared/reason_json.hpp"
#include "app/shared/stop.hpp"
#include "app/shared/stored_names.hpp"
#include "app/shared/survey.hpp"
#include "core/map/projection.hpp"
#include "core/sweep/sweep.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <variant>

#include <nlohmann/json.hpp>

// The types within actions as JSON. A reader throws json's exception on unknown input, which
// action_from_json() turns into an error.

namespace mastwise {

// Times within ten thousand years of 1970 or of the clock's start, so that sums with them stay
// within a milliseconds' range.
inline milliseconds milliseconds_from(const nlohmann::json& in) {
  constexpr std::int64_t kFarthest_ms = std::int64_t{10'000} * 366 * 86'400'000;
  const auto ms = in.is_number_integer() ? in.get<std::int64_t>() : kFarthest_ms + 1;
  if (ms < -kFarthest_ms || ms > kFarthest_ms) throw std::invalid_argument("impossible time");
  return milliseconds(ms);
}

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

template <class T>
struct adl_serializer<std::optional<T>> {
  static void to_json(json& out, const std::optional<T>& value) {
    out = value ? json(*value) : json(nullptr);
  }
  static void from_json(const json& in, std::optional<T>& value) {
    value = in.is_null() ? std::nullopt : std::optional<T>(in.get<T>());
  }
};

template <mastwise::StoredByName E>
struct adl_serializer<E> {
  static void to_json(json& out, E value) {
    out = mastwise::kStoredNames<E>.at(static_cast<std::size_t>(value));
  }
  static void from_json(const json& in, E& value) {
    constexpr const auto& kNames = mastwise::kStoredNames<E>;
    std::size_t index = kNames.size();
    if (in.is_string()) {
      index = static_cast<std::size_t>(
          std::find(kNames.begin(), kNames.end(), in.get<std::string>()) - kNames.begin());
    } else if (in.is_number_unsigned()) {
      index = in.get<std::size_t>();
    }
    if (index >= kNames.size()) throw std::invalid_argument("unknown value");
    value = static_cast<E>(index);
  }
};

template <>
struct adl_serializer<mastwise::gear::DecoderSet> {
  static void to_json(json& out, const mastwise::gear::DecoderSet& decoders) {
    out = json::array();
    for (const auto decoder : mastwise::gear::kDecoders) {
      if (decoders.has(decoder)) out.push_back(decoder);
    }
  }
  static void from_json(const json& in, mastwise::gear::DecoderSet& decoders) {
    decoders = {};
    for (const json& one : in) decoders.add(one.get<mastwise::gear::Decoder>());
  }
};

template <>
struct adl_serializer<mastwise::Position> {
  static void to_json(json& out, const mastwise::Position& position) {
    out = {position.latitude_deg(), position.longitude_deg()};
  }
  static mastwise::Position from_json(const json& in) {
    const auto position =
        mastwise::Position::at_deg(in.at(0).get<double>(), in.at(1).get<double>());
    if (!position) throw std::invalid_argument(position.error().message());
    return *position;
  }
};

template <class North>
struct adl_serializer<mastwise::Bearing<North>> {
  static void to_json(json& out, const mastwise::Bearing<North>& bearing) {
    out = bearing.degrees();
  }
  static void from_json(const json& in, mastwise::Bearing<North>& bearing) {
    bearing = mastwise::Bearing<North>::degrees(in.get<double>());
  }
};

template <>
struct adl_serializer<mastwise::Monotonic> {
  static void to_json(json& out, const mastwise::Monotonic& time) {
    out = time.time_since_epoch().count();
  }
  static void from_json(const json& in, mastwise::Monotonic& time) {
    time = mastwise::Monotonic(mastwise::milliseconds_from(in));
  }
};

template <>
struct adl_serializer<mastwise::UtcTime> {
  static void to_json(json& out, const mastwise::UtcTime& time) {
    out = time.time_since_epoch().count();
  }
  static void from_json(const json& in, mastwise::UtcTime& time) {
    time = mastwise::UtcTime(mastwise::milliseconds_from(in));
  }
};

template <>
struct adl_serializer<mastwise::ReadHeading> {
  static void to_json(json& out, const mastwise::ReadHeading& heading) {
    if (const auto* read = std::get_if<mastwise::Bearing<mastwise::True>>(&heading)) {
      out = {{"true", *read}};
    } else {
      out = {{"magnetic", std::get<mastwise::Bearing<mastwise::Magnetic>>(heading)}};
    }
  }
  static void from_json(const json& in, mastwise::ReadHeading& heading) {
    if (in.contains("true")) {
      heading = in.at("true").get<mastwise::Bearing<mastwise::True>>();
    } else {
      heading = in.at("magnetic").get<mastwise::Bearing<mastwise::Magnetic>>();
    }
  }
};

template <>
struct adl_serializer<mastwise::PeakedStation> {
  static void to_json(json& out, const mastwise::PeakedStation& s);
  static mastwise::PeakedStation from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::CompassSight> {
  static void to_json(json& out, const mastwise::CompassSight& s);
  static mastwise::CompassSight from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::DrivenStretch> {
  static void to_json(json& out, const mastwise::DrivenStretch& s);
  static mastwise::DrivenStretch from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::motion::Vector> {
  static void to_json(json& out, const mastwise::motion::Vector& v) { out = {v.x, v.y, v.z}; }
  static void from_json(const json& in, mastwise::motion::Vector& v) {
    constexpr double kMost = 10'000.0;
    in.at(0).get_to(v.x);
    in.at(1).get_to(v.y);
    in.at(2).get_to(v.z);
    if (!(length(v) <= kMost)) throw std::invalid_argument("impossible reading of a sensor");
  }
};

template <>
struct adl_serializer<mastwise::KeptReciprocal> {
  static void to_json(json& out, const mastwise::KeptReciprocal& r);
  static mastwise::KeptReciprocal from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::Station> {
  static void to_json(json& out, const mastwise::Station& station);
  static mastwise::Station from_json(const json& in);
};

template <>
struct adl_serializer<mastwise::AheadStop> {
  static void to_json(json& out, const mastwise::AheadStop& stop) {
    out = {{"position", stop.position}, {"name", stop.name}, {"via", stop.via}};
  }
  static mastwise::AheadStop from_json(const json& in) {
    return {.position = in.at("position").get<mastwise::Position>(),
            .name = in.at("name").get<std::string>(),
            .via = in.at("via").get<std::vector<mastwise::Position>>()};
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise::map {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlanePoint, east_m, north_m)

}  // namespace mastwise::map

namespace mastwise::aim {

inline void to_json(nlohmann::json& out, const Reading& reading) {
  out = {{"heading", reading.heading}, {"value", reading.value}};
  if (reading.waiting) out["waiting_ms"] = reading.waiting->count();
}
inline void from_json(const nlohmann::json& in, Reading& reading) {
  in.at("heading").get_to(reading.heading);
  in.at("value").get_to(reading.value);
  if (in.contains("waiting_ms")) {
    reading.waiting = milliseconds_from(in.at("waiting_ms"));
  }
}

}  // namespace mastwise::aim

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(LearnedBias, bias_db, sigma_db, stops)

inline void to_json(nlohmann::json& out, const Side& side) {
  out = {{"kind", side.kind}, {"distance_m", side.distance_m}, {"height_m", side.height_m}};
}
// Figures that nothing has would make the survey compute nonsense.
inline void from_json(const nlohmann::json& in, Side& side) {
  in.at("kind").get_to(side.kind);
  side.distance_m = in.value("distance_m", 0.0);
  side.height_m = in.value("height_m", 0.0);
  if (const auto error = fault(side)) throw std::invalid_argument(error->message());
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ObstacleRing, first, sides)

}  // namespace mastwise::reception

namespace mastwise::gear {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(NearTowers, radio, cell)
inline void to_json(nlohmann::json& out, const ApplianceNoise& noise) {
  out = {{"name", noise.name},
         {"band", noise.band},
         {"rise_db", noise.rise.db},
         {"sigma_db", noise.rise.sigma_db},
         {"on", noise.on}};
}
inline void from_json(const nlohmann::json& in, ApplianceNoise& noise) {
  constexpr double kMost_db = 100.0;
  in.at("name").get_to(noise.name);
  in.at("band").get_to(noise.band);
  in.at("rise_db").get_to(noise.rise.db);
  in.at("sigma_db").get_to(noise.rise.sigma_db);
  in.at("on").get_to(noise.on);
  const auto possible = [](double db) { return db >= 0.0 && db <= kMost_db; };
  if (!possible(noise.rise.db) || !possible(noise.rise.sigma_db)) {
    throw std::invalid_argument("impossible noise");
  }
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(NoiseStep, turned_off, readings_db)

}  // namespace mastwise::gear

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(Link, state, name, recorded)
// Figures that no gear has would make the survey compute nonsense.
inline void to_json(nlohmann::json& out, const GearChoice& gear) {
  out = {{"preset", gear.preset},       {"height_m", gear.height_m},
         {"cable_m", gear.cable_m},     {"splits", gear.splits},
         {"amplifier", gear.amplifier}, {"pattern_table", gear.pattern_table},
         {"decoders", gear.decoders}};
}
inline void from_json(const nlohmann::json& in, GearChoice& gear) {
  const GearChoice usual;
  gear.preset = in.value("preset", usual.preset);
  gear.height_m = in.value("height_m", usual.height_m);
  gear.cable_m = in.value("cable_m", usual.cable_m);
  gear.splits = in.value("splits", usual.splits);
  gear.amplifier = in.value("amplifier", usual.amplifier);
  gear.pattern_table = in.value("pattern_table", usual.pattern_table);
  gear.decoders = in.value("decoders", usual.decoders);
  const bool possible = (!gear.height_m || (*gear.height_m > 0.0 && *gear.height_m <= 100.0)) &&
                        (!gear.cable_m || (*gear.cable_m >= 0.0 && *gear.cable_m <= 1000.0)) &&
                        (!gear.splits || (*gear.splits >= 1 && *gear.splits <= 16));
  if (!possible) throw std::invalid_argument("impossible gear");
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(HandleChoice, first_reading_deg, first_angle_deg,
                                   second_reading_deg, second_angle_deg, reach_from_deg,
                                   reach_to_deg, stow_deg)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(CompassSetting, east_deg)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationKey, source, id)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PinNote, key, call_sign, facility_id, channel)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(TickedNetwork, key, network)

inline void to_json(nlohmann::json& out, const Settings& settings) {
  out = nlohmann::json::object();
  Settings::each(settings, [&](const char* name, const auto& setting) { out[name] = setting; });
}
// The look of before the red one, which was a switch.
inline void upgrade_settings(nlohmann::json& settings) {
  const auto night = settings.find("night");
  if (night == settings.end()) return;
  if (night->is_boolean() && !settings.contains("look")) {
    settings["look"] = night->get<bool>() ? "night" : "day";
  }
  settings.erase("night");
}
inline void from_json(const nlohmann::json& stored, Settings& settings) {
  nlohmann::json in = stored;
  upgrade_settings(in);
  Settings::each(settings, [&](const char* name, auto& setting) {
    if (in.contains(name)) in.at(name).get_to(setting);
  });
}

inline void to_json(nlohmann::json& out, const Nose& nose) {
  out = {{"heading", nose.heading},          {"origin", nose.origin},
         {"sigma_deg", nose.sigma_deg},      {"taken_at", nose.taken_at},
         {"caution", to_json(nose.caution)}, {"read_at", nose.read_at}};
}
inline void from_json(const nlohmann::json& in, Nose& nose) {
  in.at("heading").get_to(nose.heading);
  in.at("origin").get_to(nose.origin);
  in.at("sigma_deg").get_to(nose.sigma_deg);
  in.at("taken_at").get_to(nose.taken_at);
  nose.caution = caution_from_json(in.at("caution"));
  nose.read_at = in.value("read_at", std::optional<Standing>());
}

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(KeptSweep, station, by, band, scale, readings, peak, sigma_deg)
inline void to_json(nlohmann::json& nlohmann_json_j, const Stop& nlohmann_json_t) {
  NLOHMANN_JSON_EXPAND(NLOHMANN_JSON_PASTE(
      NLOHMANN_JSON_TO, practice, source, by_hand, nose, tail_mark, target, strong_stations, pinned,
      pin_notes, surroundings, leaves, by_name, by_hand_error_m, noise, inverter_on, towers, turn,
      ring, ring_at, standing, sights, reciprocal))
}
// Files of older versions lack the notes of pins, the leaves, the noise, the towers, the turn, what
// stands around the stop, and where the compass is read and how it was checked.
inline void from_json(const nlohmann::json& nlohmann_json_j, Stop& nlohmann_json_t) {
  NLOHMANN_JSON_EXPAND(NLOHMANN_JSON_PASTE(NLOHMANN_JSON_FROM, practice, source, by_hand, nose,
                                           tail_mark, target, strong_stations, pinned, surroundings,
                                           by_name, by_hand_error_m))
  const Stop usual;
  nlohmann_json_t.leaves = nlohmann_json_j.value("leaves", usual.leaves);
  nlohmann_json_t.pin_notes = nlohmann_json_j.value("pin_notes", usual.pin_notes);
  nlohmann_json_t.noise = nlohmann_json_j.value("noise", usual.noise);
  nlohmann_json_t.turn = nlohmann_json_j.value("turn", usual.turn);
  nlohmann_json_t.inverter_on = nlohmann_json_j.value("inverter_on", usual.inverter_on);
  nlohmann_json_t.towers = nlohmann_json_j.value("towers", usual.towers);
  nlohmann_json_t.ring = nlohmann_json_j.value("ring", usual.ring);
  nlohmann_json_t.ring_at = nlohmann_json_j.value("ring_at", usual.ring_at);
  nlohmann_json_t.standing = nlohmann_json_j.value("standing", usual.standing);
  nlohmann_json_t.sights = nlohmann_json_j.value("sights", usual.sights);
  nlohmann_json_t.reciprocal = nlohmann_json_j.value("reciprocal", usual.reciprocal);
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(StationsQuestion, from, search, practice,
                                                surroundings, leaves, month, gear, target, turn,
                                                pinned, plan_for, plan_floor_percent,
                                                heading_error_deg, learned, compare, compare_pinned,
                                                ahead, generation, pinned_networks, ticked_networks,
                                                noise, inverter_on, towers, ring, pin_notes,
                                                appliances)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Program, virtual_channel, name, network, language)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Note, column, text)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Source, name, date)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Provenance, source, line)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RfChannel, number, letter)

}  // namespace mastwise
