#include "app/model/action_json.hpp"

#include "app/model/intake_json.hpp"
#include "app/model/json_types.hpp"
#include "app/model/logbook_files_json.hpp"
#include "app/model/map_json.hpp"
#include "app/model/places_json.hpp"

#include <type_traits>
#include <utility>

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::Station>::to_json(json& out, const mastwise::Station& s) {
  out = {{"id", s.id},
         {"call_sign", s.call_sign},
         {"facility_id", s.facility_id},
         {"name", s.name},
         {"network", s.network},
         {"programs", s.programs},
         {"raster", s.raster},
         {"rf_channel", s.rf_channel},
         {"standard", s.standard},
         {"position", s.position},
         {"site_amsl_m", s.site_amsl_m},
         {"antenna_amsl_m", s.antenna_amsl_m},
         {"haat_m", s.haat_m},
         {"erp_kw", s.erp_kw},
         {"polarization", s.polarization},
         {"directional", s.directional},
         {"pattern", s.pattern ? to_text(*s.pattern) : std::string()},
         {"translator", s.translator},
         {"city", s.city},
         {"state", s.state},
         {"notes", s.notes},
         {"provenance", s.provenance}};
}

void adl_serializer<mastwise::PeakedStation>::to_json(json& out, const mastwise::PeakedStation& s) {
  out = {{"key", s.key},           {"by", s.by},
         {"position", s.position}, {"taken_at", s.taken_at},
         {"peak_deg", s.peak_deg}, {"sigma_deg", s.sigma_deg}};
}

mastwise::PeakedStation adl_serializer<mastwise::PeakedStation>::from_json(const json& in) {
  return {.key = in.at("key").get<mastwise::StationKey>(),
          .by = in.at("by").get<mastwise::SweepBy>(),
          .position = in.at("position").get<mastwise::Position>(),
          .taken_at = in.at("taken_at").get<mastwise::Position>(),
          .peak_deg = in.at("peak_deg").get<double>(),
          .sigma_deg = in.at("sigma_deg").get<double>()};
}

mastwise::Station adl_serializer<mastwise::Station>::from_json(const json& in) {
  mastwise::Station s{.position = in.at("position").get<mastwise::Position>()};
  in.at("id").get_to(s.id);
  in.at("call_sign").get_to(s.call_sign);
  in.at("facility_id").get_to(s.facility_id);
  in.at("name").get_to(s.name);
  in.at("network").get_to(s.network);
  in.at(in.contains("programs") ? "programs" : "programmes").get_to(s.programs);
  in.at("raster").get_to(s.raster);
  in.at("rf_channel").get_to(s.rf_channel);
  in.at("standard").get_to(s.standard);
  in.at("site_amsl_m").get_to(s.site_amsl_m);
  in.at("antenna_amsl_m").get_to(s.antenna_amsl_m);
  in.at("haat_m").get_to(s.haat_m);
  in.at("erp_kw").get_to(s.erp_kw);
  in.at("polarization").get_to(s.polarization);
  in.at("directional").get_to(s.directional);
  if (const auto text = in.value("pattern", std::string()); !text.empty()) {
    auto pattern = mastwise::parse_transmit_pattern(text);
    if (pattern) s.pattern = std::move(pattern).value();
  }
  in.at("translator").get_to(s.translator);
  in.at("city").get_to(s.city);
  in.at("state").get_to(s.state);
  in.at("notes").get_to(s.notes);
  in.at("provenance").get_to(s.provenance);
  return s;
}

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise::reception {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Obstacle, distance_m, ground_amsl_m, above_line_m, loss_db,
                                   earth_curve)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Deviations, location_db, time_db, model_db, heading_db,
                                   station_db, interference_db, logbook_db)

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

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Outlook, distance_m, bearing, frequency_mhz, band, mode,
                                   terrain_coverage, transmitter_height_m, field_p1812_dbuvm,
                                   field_itm_dbuvm, field_dbuvm, spread_db, margin_db,
                                   chance_percent, deviations, obstacles, amplifier_off)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PicturePoint, distance_m, ground_m, line_m, fresnel_m)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PictureObstacle, obstacle, ground_m)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PathPicture, distance_m, frequency_mhz, points, obstacles,
                                   stop_antenna_m, station_antenna_m, stop_clutter_m,
                                   terrain_coverage)

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
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlanRemark, station, interferer, gain_percent)
// Old recordings have a finished sentence, "remark", in place of the remarks.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(PlanStep, bearing, slack, brings, loses, remarks)
void to_json(nlohmann::json& out, const NotInPlan& station) {
  out = {{"name", station.name}, {"best_percent", station.best_percent}};
}
// Old recordings have one text with name and chance.
void from_json(const nlohmann::json& in, NotInPlan& station) {
  if (in.is_string()) {
    in.get_to(station.name);
    return;
  }
  in.at("name").get_to(station.name);
  in.at("best_percent").get_to(station.best_percent);
}
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Plan, steps, out, fewest_proved)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationsAnswer, question, rows, measured, all, target_path,
                                   target_slack, plan, ahead, trouble)

namespace act {

// Bytes of a line need not be UTF-8: each is one character of ISO 8859-1 in the JSON.
void to_json(nlohmann::json& out, const ReceiverBytes& received) {
  std::vector<int> bytes;
  for (const char byte : received.bytes) bytes.push_back(static_cast<unsigned char>(byte));
  out = {{"now", received.now}, {"bytes", bytes}};
}
void from_json(const nlohmann::json& in, ReceiverBytes& received) {
  in.at("now").get_to(received.now);
  for (const int byte : in.at("bytes").get<std::vector<int>>()) {
    received.bytes.push_back(static_cast<char>(byte));
  }
}

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Tick, now, utc)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LinkChanged, link)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Show, place)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SetStop, stop)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(OpenSheet, sheet)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ChooseSurroundings, surroundings)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ChooseGear, gear)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(OpenKeypad, purpose)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(KeypadType, text)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(NoseFromCourse, backed_in)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(NoseFromSun, side)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(OpenField, field)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(UseMapPlace, by_net)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ChoosePointing, method)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SelectStation, key)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PinStation, key)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ChoosePlan, plan_for)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ScanStep, step)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(TickStation, key)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationsFound, answer)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MoveMap, move)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(TouchMap, at)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AreaScanned, sheet)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteSurveyed, sheet)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Ask, what)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(BeginSweep, by)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(TurnSweep, degrees)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SetMeter, by)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ReadMeter, nothing)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(MarkEdge, right)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogOutcome, key, outcome)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(DropPlace, index)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PaperSaved, file)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(OpenIntakeFolder, path)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PickTable, path)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ChooseColumnOf, part)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(CorrectReading, part, value)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(IntakeFound, answer)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PinNetwork, network)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(TickNetwork, ticked)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Trouble, what)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AntennaWritten, trouble)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PlacesFound, answer)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AskMerge, path)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AskLogbookFiles, task, path)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookFilesDone, answer)

}  // namespace act

namespace {

template <class A>
nlohmann::json written(const A& action) {
  if constexpr (std::is_empty_v<A>) {
    return nlohmann::json::object();
  } else {
    return nlohmann::json(action);
  }
}

template <class A>
Action read(const nlohmann::json& json) {
  if constexpr (std::is_empty_v<A>) {
    return A{};
  } else {
    return json.get<A>();
  }
}

// Recordings of the first release have other names for some actions.
std::string present_name(const std::string& recorded) {
  if (recorded == "CentreMap") return "CenterMap";
  // It ended the alarm; no touch does that anymore.
  if (recorded == "AntennaIsDown") return "QuietAlarm";
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
  const std::string name = named ? present_name(kind->get<std::string>()) : "";
  try {
    if (const auto action = read_named(name, json, AllActions{})) return *action;
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
                      {"paper_file", model.paper_file},
                      {"sheet", model.sheet},
                      {"chance_floor", model.chance_floor},
                      {"by_network", model.by_network},
                      {"antenna_raised", model.safety.antenna == safety::Antenna::Raised},
                      {"asking", model.safety.asking},
                      {"roof", model.safety.roof},
                      {"dial_up", model.dial_up},
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
