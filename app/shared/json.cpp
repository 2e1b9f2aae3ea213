#include "app/shared/json.hpp"

#include <utility>

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::Station>::to_json(json& out, const mastwise::Station& s) {
  out = {{"id", s.id},
         {"call_sign", s.call_sign},
         {"facility_id", s.facility_id},
         {"name", s.name},
         {"network", s.network},
         {"multiplex", s.multiplex},
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
         {"peak_deg", s.peak_deg}, {"sigma_deg", s.sigma_deg},
         {"standing", s.standing}, {"at", s.at}};
}

mastwise::PeakedStation adl_serializer<mastwise::PeakedStation>::from_json(const json& in) {
  return {.key = in.at("key").get<mastwise::StationKey>(),
          .by = in.at("by").get<mastwise::SweepBy>(),
          .position = in.at("position").get<mastwise::Position>(),
          .taken_at = in.at("taken_at").get<mastwise::Position>(),
          .peak_deg = in.at("peak_deg").get<double>(),
          .sigma_deg = in.at("sigma_deg").get<double>(),
          .standing = in.value("standing", std::optional<mastwise::Standing>()),
          .at = in.value("at", std::optional<mastwise::UtcTime>())};
}

void adl_serializer<mastwise::CompassSight>::to_json(json& out, const mastwise::CompassSight& s) {
  out = {{"by", s.by},     {"bearing", s.bearing},   {"bearing_sigma_deg", s.bearing_sigma_deg},
         {"read", s.read}, {"taken_at", s.taken_at}, {"standing", s.standing},
         {"at", s.at}};
}

mastwise::CompassSight adl_serializer<mastwise::CompassSight>::from_json(const json& in) {
  return {.by = in.at("by").get<mastwise::CompassCheckBy>(),
          .bearing = in.at("bearing").get<mastwise::Bearing<mastwise::True>>(),
          .bearing_sigma_deg = in.at("bearing_sigma_deg").get<double>(),
          .read = in.at("read").get<mastwise::Bearing<mastwise::Magnetic>>(),
          .taken_at = in.at("taken_at").get<mastwise::Position>(),
          .standing = in.at("standing").get<std::optional<mastwise::Standing>>(),
          .at = in.at("at").get<mastwise::UtcTime>()};
}

void adl_serializer<mastwise::DrivenStretch>::to_json(json& out, const mastwise::DrivenStretch& s) {
  out = {{"read", s.read},
         {"deviation_deg", s.deviation_deg},
         {"sigma_deg", s.sigma_deg},
         {"horizontal_nt", s.horizontal_nt},
         {"at", s.at}};
}

mastwise::DrivenStretch adl_serializer<mastwise::DrivenStretch>::from_json(const json& in) {
  const mastwise::DrivenStretch stretch{
      .read = in.at("read").get<mastwise::Bearing<mastwise::Magnetic>>(),
      .deviation_deg = in.at("deviation_deg").get<double>(),
      .sigma_deg = in.at("sigma_deg").get<double>(),
      .horizontal_nt = in.at("horizontal_nt").get<double>(),
      .at = in.at("at").get<mastwise::UtcTime>()};
  const auto within = [](double value, double least, double most) {
    return value >= least && value <= most;
  };
  if (!within(stretch.deviation_deg, -180.0, 180.0) || !within(stretch.sigma_deg, 0.01, 180.0) ||
      !within(stretch.horizontal_nt, 1.0, 100'000.0)) {
    throw std::invalid_argument("impossible stretch of driving");
  }
  return stretch;
}

void adl_serializer<mastwise::KeptReciprocal>::to_json(json& out,
                                                       const mastwise::KeptReciprocal& r) {
  out = {{"disagreement_deg", r.disagreement_deg},
         {"taken_at", r.taken_at},
         {"standing", r.standing},
         {"at", r.at}};
}

mastwise::KeptReciprocal adl_serializer<mastwise::KeptReciprocal>::from_json(const json& in) {
  return {.disagreement_deg = in.at("disagreement_deg").get<double>(),
          .taken_at = in.at("taken_at").get<mastwise::Position>(),
          .standing = in.at("standing").get<std::optional<mastwise::Standing>>(),
          .at = in.at("at").get<mastwise::UtcTime>()};
}

mastwise::Station adl_serializer<mastwise::Station>::from_json(const json& in) {
  mastwise::Station s{.position = in.at("position").get<mastwise::Position>()};
  in.at("id").get_to(s.id);
  in.at("call_sign").get_to(s.call_sign);
  in.at("facility_id").get_to(s.facility_id);
  in.at("name").get_to(s.name);
  in.at("network").get_to(s.network);
  s.multiplex = in.value("multiplex", std::string());
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
