#pragma once

#include "app/peak/hunt.hpp"
#include "app/peak/state.hpp"
#include "app/shared/json.hpp"

// A sweep as it was measured; its fit is found again.
namespace mastwise {

inline void to_json(nlohmann::json& out, const MeterChoice& choice) {
  out = {{"name", choice.name}, {"label", choice.label}};
}
inline void from_json(const nlohmann::json& in, MeterChoice& choice) {
  in.at("name").get_to(choice.name);
  in.at("label").get_to(choice.label);
}

inline void to_json(nlohmann::json& out, const Sweep& sweep) {
  out = {{"station", sweep.station},
         {"title", sweep.title},
         {"band", sweep.band},
         {"by", sweep.by},
         {"scale", aim::to_text(sweep.scale)},
         {"heading", sweep.heading},
         {"value", sweep.value},
         {"no_meter", sweep.no_meter},
         {"readings", sweep.readings},
         {"left_edge", sweep.left_edge},
         {"right_edge", sweep.right_edge}};
}
inline void from_json(const nlohmann::json& in, Sweep& sweep) {
  in.at("station").get_to(sweep.station);
  in.at("title").get_to(sweep.title);
  in.at("band").get_to(sweep.band);
  in.at("by").get_to(sweep.by);
  const std::string scale = in.at("scale").get<std::string>();
  const auto known = std::find_if(aim::kScales.begin(), aim::kScales.end(),
                                  [&](aim::Scale one) { return aim::to_text(one) == scale; });
  if (known == aim::kScales.end()) throw std::invalid_argument("unknown scale " + scale);
  sweep.scale = *known;
  in.at("heading").get_to(sweep.heading);
  in.at("value").get_to(sweep.value);
  sweep.no_meter = in.value("no_meter", false);
  in.at("readings").get_to(sweep.readings);
  in.at("left_edge").get_to(sweep.left_edge);
  in.at("right_edge").get_to(sweep.right_edge);
}

inline void to_json(nlohmann::json& out, const NoiseHunt& hunt) {
  out = {{"title", hunt.title},
         {"band", hunt.band},
         {"value_db", hunt.value_db},
         {"steps", hunt.steps}};
}
inline void from_json(const nlohmann::json& in, NoiseHunt& hunt) {
  in.at("title").get_to(hunt.title);
  in.at("band").get_to(hunt.band);
  in.at("value_db").get_to(hunt.value_db);
  in.at("steps").get_to(hunt.steps);
  if (hunt.steps.empty()) throw std::invalid_argument("a hunt without a step");
  const auto check = [](double db) {
    if (!(db >= kLeastHunt_db && db <= kMostHunt_db))
      throw std::invalid_argument("no such reading");
  };
  check(hunt.value_db);
  for (const gear::NoiseStep& step : hunt.steps) {
    for (const double reading : step.readings_db) check(reading);
  }
}

}  // namespace mastwise
