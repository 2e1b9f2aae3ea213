#include "app/session/working_state.hpp"

#include "app/peak/json.hpp"
#include "app/session/action_json.hpp"
#include "app/shared/json.hpp"
#include "core/text/json_text.hpp"

#include <utility>

namespace mastwise {
namespace {

using nlohmann::json;

template <class Value>
json by_field(const std::map<Field, Value>& values) {
  json all = json::object();
  for (const auto& [field, value] : values) all[json(field).get<std::string>()] = value;
  return all;
}

template <class Value>
void from_fields(const json& in, std::map<Field, Value>& values) {
  for (const auto& [name, value] : in.items()) {
    values.insert_or_assign(json(name).get<Field>(), value.template get<Value>());
  }
}

json undo_json(const std::vector<TakenBack>& undo) {
  json steps = json::array();
  for (const TakenBack& step : undo) {
    json also = json::array();
    for (const Action& action : step.also) also.push_back(to_json(action));
    steps.push_back({{"what", step.what}, {"stop", step.stop}, {"also", std::move(also)}});
  }
  return steps;
}

std::vector<TakenBack> undo_from(const json& in) {
  std::vector<TakenBack> undo;
  for (const json& one : in) {
    TakenBack step{.what = one.at("what").get<std::string>(), .stop = one.at("stop").get<Stop>()};
    for (const json& action : one.at("also")) {
      auto read = action_from_json(action);
      if (!read) throw std::invalid_argument(read.error().message());
      step.also.push_back(*std::move(read));
    }
    undo.push_back(std::move(step));
  }
  return undo;
}

json state_of(const Model& model) {
  json ticks = json::array();
  for (const Ticked& ticked : model.plan.ticks) {
    ticks.push_back({{"key", ticked.key}, {"tick", static_cast<int>(ticked.tick)}});
  }
  return {{"stop", model.stop},
          {"place", model.place},
          {"search", model.search},
          {"numbers", by_field(model.form.numbers)},
          {"places", by_field(model.form.places)},
          {"names", by_field(model.form.names)},
          {"list_of", model.list.list_of},
          {"dial_up", model.aim.dial_up},
          {"plan_for", model.plan.plan_for},
          {"plan_floor", model.plan.floor},
          {"ticks", std::move(ticks)},
          {"ticked_at", model.plan.ticked_at},
          {"sweep", model.peak.sweep},
          {"noise_hunt", model.peak.hunt},
          {"sweep_by", model.peak.by},
          {"sweep_meter", model.peak.meter},
          {"ahead", model.ahead.places},
          {"ahead_from_file", model.ahead.from_file},
          {"ahead_wants", model.ahead.wants},
          {"ahead_floor", model.ahead.floor},
          {"neighbors", model.parking.neighbors},
          {"weather", model.logbook.weather},
          {"tried_by", model.logbook.tried_by},
          {"undo", undo_json(model.undo)}};
}

void read_index(const json& in, std::size_t most, std::size_t& index) {
  const auto read = in.is_number_unsigned() ? in.get<std::size_t>() : most;
  if (read >= most) throw std::invalid_argument("index out of range");
  index = read;
}

std::vector<Ticked> ticks_from(const json& in) {
  std::vector<Ticked> ticks;
  for (const json& one : in) {
    std::size_t tick = 0;
    read_index(one.at("tick"), static_cast<std::size_t>(ScanTick::not_found) + 1, tick);
    ticks.push_back({one.at("key").get<StationKey>(), static_cast<ScanTick>(tick)});
  }
  return ticks;
}

// Reads each part alone, so that one bad part takes no other with it.
class Restorer {
 public:
  explicit Restorer(const json& state) : state_(state) {}

  template <class Read>
  void part(const char* name, Read read) {
    if (!state_.contains(name)) return;
    try {
      read(state_.at(name));
    } catch (const std::exception& trouble) {
      if (!failed_) failed_ = Error{.what = trouble.what(), .where = name};
    }
  }
  template <class Value>
  void into(const char* name, Value& value) {
    part(name, [&](const json& in) { value = in.get<Value>(); });
  }
  Result<Done> result() const {
    if (failed_) return *failed_;
    return Done{};
  }

 private:
  const json& state_;
  std::optional<Error> failed_;
};

// The stop, and where the rig was when it was kept.
void restore_stop(Restorer& restorer, Model& model, const World& world) {
  std::optional<Stop> stop;
  restorer.part("stop", [&](const json& in) { stop = in.get<Stop>(); });
  if (!stop) return;
  if (stop->practice) {
    // The invented place may be another in this version.
    stop->by_hand = world.practice_stop.by_hand;
  }
  model.stop = *stop;
  std::optional<Position> at;
  UtcTime saved{};
  restorer.into("at", at);
  restorer.into("saved", saved);
  if (at && !stop->practice) model.earlier = EarlierStop{.stop = *stop, .at = *at, .saved = saved};
}

}  // namespace

std::string working_state(const Model& model) {
  return state_of(model).dump();
}

std::string kept_working_state(const Model& model) {
  json state = state_of(model);
  state["at"] = model.findings.position;
  state["saved"] = moment_of(model);
  return state.dump();
}

Result<Done> restore(Model& model, const std::string& kept, const World& world) {
  const json state = read_json(kept);
  if (!state.is_object()) return Error{.what = "the kept state is not readable"};
  Restorer restorer(state);
  restore_stop(restorer, model, world);
  restorer.into("place", model.place);
  // Before the map was a place of its own.
  restorer.part("map_open", [&](const json& in) {
    if (in.get<bool>() && model.place == Place::Stations) model.place = Place::Map;
  });
  restorer.into("search", model.search);
  restorer.part("numbers", [&](const json& in) { from_fields(in, model.form.numbers); });
  restorer.part("places", [&](const json& in) { from_fields(in, model.form.places); });
  restorer.part("names", [&](const json& in) { from_fields(in, model.form.names); });
  // Before a list was chosen by name.
  restorer.part("by_network", [&](const json& in) {
    if (in.get<bool>()) model.list.list_of = ListOf::Networks;
  });
  restorer.into("list_of", model.list.list_of);
  restorer.into("dial_up", model.aim.dial_up);
  restorer.into("plan_for", model.plan.plan_for);
  restorer.part("plan_floor",
                [&](const json& in) { read_index(in, kPlanFloors.size(), model.plan.floor); });
  restorer.part("ticks", [&](const json& in) { model.plan.ticks = ticks_from(in); });
  restorer.into("ticked_at", model.plan.ticked_at);
  restorer.into("sweep", model.peak.sweep);
  restorer.into("noise_hunt", model.peak.hunt);
  restorer.into("sweep_by", model.peak.by);
  restorer.into("sweep_meter", model.peak.meter);
  if (model.peak.sweep) {
    const Band band = model.peak.sweep->band;
    fit(*model.peak.sweep, gear_of(model.settings.gear).antenna.in(band).pattern);
  }
  restorer.into("ahead", model.ahead.places);
  restorer.into("ahead_from_file", model.ahead.from_file);
  restorer.into("ahead_wants", model.ahead.wants);
  restorer.part("ahead_floor",
                [&](const json& in) { read_index(in, kPlanFloors.size(), model.ahead.floor); });
  restorer.into("neighbors", model.parking.neighbors);
  restorer.into("weather", model.logbook.weather);
  restorer.into("tried_by", model.logbook.tried_by);
  restorer.part("undo", [&](const json& in) { model.undo = undo_from(in); });
  return restorer.result();
}

}  // namespace mastwise
