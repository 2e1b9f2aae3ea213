#include "app/session/action_json.hpp"

#include "app/ahead/json.hpp"
#include "app/data/json.hpp"
#include "app/logbook/json.hpp"
#include "app/map/json.hpp"
#include "app/parking/json.hpp"
#include "app/peak/json.hpp"
#include "app/shared/json.hpp"
#include "app/shared/places_json.hpp"
#include "app/shared/survey_json.hpp"

#include <array>
#include <tuple>
#include <type_traits>
#include <utility>

namespace mastwise {
namespace act {

// Bytes of a line need not be UTF-8: each is one character of ISO 8859-1 in the JSON.
template <class Received>
nlohmann::json bytes_json(const Received& received) {
  std::vector<int> bytes;
  for (const char byte : received.bytes) bytes.push_back(static_cast<unsigned char>(byte));
  return {{"now", received.now}, {"bytes", bytes}};
}
template <class Received>
void read_bytes(const nlohmann::json& in, Received& received) {
  in.at("now").get_to(received.now);
  for (const int byte : in.at("bytes").get<std::vector<int>>()) {
    received.bytes.push_back(static_cast<char>(byte));
  }
}
void to_json(nlohmann::json& out, const ReceiverBytes& received) {
  out = bytes_json(received);
}
void from_json(const nlohmann::json& in, ReceiverBytes& received) {
  read_bytes(in, received);
}
void to_json(nlohmann::json& out, const TabletBytes& received) {
  out = bytes_json(received);
}
void from_json(const nlohmann::json& in, TabletBytes& received) {
  read_bytes(in, received);
}
void to_json(nlohmann::json& out, const MeterBytes& received) {
  out = bytes_json(received);
}
void from_json(const nlohmann::json& in, MeterBytes& received) {
  read_bytes(in, received);
}

}  // namespace act

namespace {

// The members of an action, in their order.
template <class A>
auto members(const A& action) {
  constexpr std::size_t kCount = A::kFields.size();
  static_assert(kCount >= 1 && kCount <= 2, "bind more members below");
  if constexpr (kCount == 1) {
    const auto& [a] = action;
    return std::tie(a);
  } else {
    const auto& [a, b] = action;
    return std::tie(a, b);
  }
}

template <class A>
concept WithFields = requires {
  A::kFields;
};

template <class A>
nlohmann::json written(const A& action) {
  if constexpr (WithFields<A>) {
    nlohmann::json json;
    const auto all = members(action);
    [&]<std::size_t... I>(std::index_sequence<I...>) {
      ((json[A::kFields[I]] = std::get<I>(all)), ...);
    }
    (std::make_index_sequence<A::kFields.size()>());
    return json;
  } else if constexpr (std::is_empty_v<A>) {
    return nlohmann::json::object();
  } else {
    return nlohmann::json(action);
  }
}

template <class A>
Action read(const nlohmann::json& json) {
  if constexpr (WithFields<A>) {
    using Members = decltype(members(std::declval<const A&>()));
    return [&]<std::size_t... I>(std::index_sequence<I...>) {
      return A{json.at(A::kFields[I])
                   .template get<std::remove_cvref_t<std::tuple_element_t<I, Members>>>()...};
    }
    (std::make_index_sequence<A::kFields.size()>());
  } else if constexpr (std::is_empty_v<A>) {
    return A{};
  } else {
    return json.get<A>();
  }
}

// An action of the first release that has another name today, and the setting it moved, if that
// is what it did.
struct Renamed {
  std::string_view before, now, setting = {};
};
constexpr std::array kRenamed{
    Renamed{"CentreMap", "CenterMap"},
    // It ended the alarm; no touch does that anymore.
    Renamed{"AntennaIsDown", "QuietAlarm"},
    Renamed{"SwitchNight", "NextSetting", "night"},
    Renamed{"SwitchUnits", "NextSetting", "miles"},
    Renamed{"SwitchHand", "NextSetting", "left_handed"},
    Renamed{"SwitchTone", "NextSetting", "tone"},
    Renamed{"SwitchChannelEntry", "NextSetting", "channels_by_hand"},
    Renamed{"NextNotation", "NextSetting", "notation"},
    Renamed{"NextCarrier", "NextSetting", "carrier"},
};

// The action as it is recorded today.
nlohmann::json present(nlohmann::json recorded) {
  for (const Renamed& renamed : kRenamed) {
    if (recorded.at("do") != renamed.before) continue;
    recorded["do"] = renamed.now;
    if (!renamed.setting.empty()) recorded["setting"] = renamed.setting;
    break;
  }
  return recorded;
}

template <class... A>
std::optional<Action> read_named(std::string_view name, const nlohmann::json& json,
                                 ActionList<A...>) {
  std::optional<Action> found;
  const bool known = ((name == A::kName && (found = read<A>(json), true)) || ...);
  return known ? found : std::nullopt;
}

}  // namespace

nlohmann::json to_json(const Action& action) {
  nlohmann::json json;
  visit(action, AllActions{}, [&](const auto& a) { json = written(a); });
  json["do"] = action.name();
  return json;
}

Result<Action> action_from_json(const nlohmann::json& json) {
  const auto kind = json.is_object() ? json.find("do") : json.end();
  const bool named = kind != json.end() && kind->is_string();
  const nlohmann::json today = named ? present(json) : nlohmann::json();
  const std::string name = named ? today.at("do").get<std::string>() : "";
  try {
    if (const auto action = read_named(name, today, AllActions{})) return *action;
  } catch (const std::exception& trouble) {
    return Error{.what = std::string("cannot read it: ") + trouble.what(), .where = name};
  }
  return Error{.what = "unknown action \"" + name + "\"",
               .remedy = "use the version of Mastwise that recorded it"};
}

nlohmann::json to_json(const Model& model) {
  const Findings& found = model.findings;
  nlohmann::json json{{"now", model.now},
                      {"machine_time", model.machine_time},
                      {"place", model.place},
                      {"settings", model.settings},
                      {"link", model.link},
                      {"stop", model.stop},
                      {"search", model.search},
                      {"trouble", model.trouble},
                      {"paper_file", model.plan.paper_file},
                      {"sheet", model.sheet},
                      {"list_of", model.list.list_of},
                      {"antenna_raised", model.safety.antenna == safety::Antenna::Raised},
                      {"asking", model.safety.asking},
                      {"roof", model.safety.roof},
                      {"dial_up", model.aim.dial_up},
                      {"keypad", model.keypad ? nlohmann::json(model.keypad->text) : nullptr},
                      {"sentences_good", model.receiver.counts().sentences_good},
                      {"stations", model.stations ? model.stations->rows.size() : 0},
                      {"position", found.position},
                      {"position_stale", found.position_stale}};
  if (found.outlook) json["outlook"] = *found.outlook;
  if (found.card) {
    json["bearing_true"] = found.card->bearing_true;
    json["bearing_magnetic"] = found.card->bearing_magnetic;
    json["distance_m"] = found.card->distance_m;
  }
  return json;
}

}  // namespace mastwise
