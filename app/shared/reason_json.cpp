#include "app/shared/reason_json.hpp"

#include "app/shared/json.hpp"
#include "core/gear/noise.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/reception/surroundings.hpp"

#include <array>
#include <initializer_list>
#include <stdexcept>
#include <string>
#include <utility>

namespace mastwise {
namespace {

using nlohmann::json;
namespace fact = reception::fact;

// The enumerator among the first `count` that has this name.
template <class Enum>
Enum named(const json& in, std::size_t count) {
  const std::string name = in.get<std::string>();
  for (std::size_t i = 0; i < count; ++i) {
    if (to_text(static_cast<Enum>(i)) == name) return static_cast<Enum>(i);
  }
  throw std::invalid_argument("unknown name \"" + name + "\"");
}

itm::Warning warning_named(const json& in) {
  const std::string name = in.get<std::string>();
  for (const itm::Warning warning : itm::listed(~itm::Warnings{0})) {
    if (to_text(warning) == name) return warning;
  }
  throw std::invalid_argument("unknown warning \"" + name + "\"");
}

constexpr std::size_t kSurroundings = 6, kEnvironments = 4, kBands = 3, kStandards = 5;

// The members of each fact, each under its name.
struct Write {
  json out = json::object();
  template <class T>
  void number(const char* name, const T& value) {
    out[name] = value;
  }
  template <class Enum>
  void name(const char* name, const Enum& value, std::size_t) {
    out[name] = to_text(value);
  }
  template <class Enum>
  void optional_name(const char* name, const std::optional<Enum>& value, std::size_t) {
    out[name] = value ? json(to_text(*value)) : json(nullptr);
  }
  void warning(const char* name, const itm::Warning& value) { out[name] = to_text(value); }
  void text(const char* name, const std::string& value) { out[name] = value; }
  void flag(const char* name, bool value) { out[name] = value; }
};
struct Read {
  const json& in;
  template <class T>
  void number(const char* name, T& value) {
    in.at(name).get_to(value);
  }
  template <class Enum>
  void name(const char* name, Enum& value, std::size_t count) {
    value = named<Enum>(in.at(name), count);
  }
  template <class Enum>
  void optional_name(const char* name, std::optional<Enum>& value, std::size_t count) {
    value = in.at(name).is_null() ? std::nullopt : std::optional(named<Enum>(in.at(name), count));
  }
  void warning(const char* name, itm::Warning& value) { value = warning_named(in.at(name)); }
  // Recordings of older versions may lack these.
  void text(const char* name, std::string& value) { value = in.value(name, std::string()); }
  void flag(const char* name, bool& value) { value = in.value(name, false); }
};

// `way` is Write with a const fact, or Read.
template <class Way, class Fact>
void visit(Way& way, Fact& it) {
  using T = std::remove_const_t<Fact>;
  if constexpr (std::is_same_v<T, fact::InTheWay>) {
    way.number("from_stop_m", it.obstacle.distance_m);
    way.number("ground_amsl_m", it.obstacle.ground_amsl_m);
    way.number("above_line_m", it.obstacle.above_line_m);
    way.number("loss_db", it.obstacle.loss_db);
    way.number("earth_curve", it.obstacle.earth_curve);
  } else if constexpr (std::is_same_v<T, fact::RoughGround>) {
    way.number("distance_m", it.distance_m);
    way.number("assumed", it.assumed);
    way.number("besides_obstacles", it.besides_obstacles);
  } else if constexpr (std::is_same_v<T, fact::AroundStop>) {
    way.name("around", it.around, kSurroundings);
    way.number("antenna_m", it.antenna_m);
    way.number("clutter_m", it.clutter_m);
  } else if constexpr (std::is_same_v<T, fact::Leaves>) {
    way.number("depth_m", it.depth_m);
    way.flag("bare", it.bare);
  } else if constexpr (std::is_same_v<T, fact::CrossedPolarization>) {
    way.number("antenna_horizontal", it.antenna_horizontal);
  } else if constexpr (std::is_base_of_v<fact::Interferer, T>) {
    way.number("call_sign", it.call_sign);
    way.number("distance_m", it.distance_m);
    way.number("over_db", it.over_db);
  } else if constexpr (std::is_same_v<T, fact::Noise>) {
    way.number("frequency_mhz", it.frequency_mhz);
    way.name("environment", it.environment, kEnvironments);
    way.flag("inverter_on", it.inverter_on);
    way.flag("measured", it.measured);
  } else if constexpr (std::is_same_v<T, fact::HeadingError>) {
    way.number("sigma_deg", it.sigma_deg);
  } else if constexpr (std::is_same_v<T, fact::ModelSpread>) {
    way.number("spread_db", it.spread_db);
    way.number("distance_m", it.distance_m);
  } else if constexpr (std::is_same_v<T, fact::TransmitterPattern>) {
    way.number("known", it.known);
  } else if constexpr (std::is_same_v<T, fact::Shortfall>) {
    way.number("beyond_amplifier", it.beyond_amplifier);
  } else if constexpr (std::is_same_v<T, fact::Overload>) {
    way.number("sum_dbm", it.sum_dbm);
    way.flag("by_towers", it.by_towers);
  } else if constexpr (std::is_same_v<T, fact::Lesson>) {
    way.name("band", it.band, kBands);
    way.number("bias_db", it.bias_db);
    way.number("stops", it.stops);
  } else if constexpr (std::is_same_v<T, fact::NoTerrain>) {
    way.number("missing_m", it.missing_m);
    way.number("distance_m", it.distance_m);
    way.text("tile", it.tile);
  } else if constexpr (std::is_same_v<T, fact::ModelLimit>) {
    way.warning("warning", it.warning);
  } else if constexpr (std::is_same_v<T, fact::Unknown>) {
    way.name("what", it.what, reception::kUnknownFacts);
    way.number("channel", it.channel);
    way.number("distance_m", it.distance_m);
    way.optional_name("assumed", it.assumed, kStandards);
  } else if constexpr (std::is_same_v<T, fact::Decoding>) {
    way.name("decoding", it.decoding, gear::kDecodings);
    way.name("standard", it.standard, kStandards);
  } else if constexpr (std::is_same_v<T, fact::AssumedMode>) {
    way.name("standard", it.standard, kStandards);
    way.text("mode", it.mode);
    way.number("needs_db", it.needs_db);
    way.number("least_db", it.least_db);
    way.number("most_db", it.most_db);
  } else if constexpr (std::is_same_v<T, fact::OnItsSide>) {
    way.number("side", it.side);
    way.flag("bare", it.bare);
  } else if constexpr (std::is_same_v<T, fact::AmplifierOff>) {
    return;
  } else {
    way.number("distance_m", it.distance_m);  // Fading, ClearLine
  }
}

template <std::size_t Index>
reception::Fact read_fact(const json& in) {
  std::variant_alternative_t<Index, reception::Fact> fact{};
  Read read{in};
  visit(read, fact);
  return fact;
}

template <std::size_t... Index>
reception::Fact read_fact(reception::ReasonKind kind, const json& in,
                          std::index_sequence<Index...>) {
  using Reader = reception::Fact (*)(const json&);
  constexpr std::array<Reader, sizeof...(Index)> kReaders{&read_fact<Index>...};
  return kReaders[static_cast<std::size_t>(kind)](in);
}

}  // namespace

json to_json(const reception::Reason& reason) {
  Write write;
  std::visit([&](const auto& it) { visit(write, it); }, reason.fact);
  write.out["kind"] = to_text(reason.kind());
  write.out["decibel"] = reason.decibel;
  write.out["gain_percent"] = reason.gain_percent;
  return std::move(write.out);
}

std::optional<reception::Reason> reason_from_json(const json& in) {
  if (in.contains("text")) return std::nullopt;
  const auto kind = named<reception::ReasonKind>(in.at("kind"), reception::kReasonKinds);
  return reception::Reason{
      .decibel = in.at("decibel").get<double>(),
      .fact = read_fact(kind, in, std::make_index_sequence<reception::kReasonKinds>()),
      .gain_percent = in.value("gain_percent", 0.0)};
}

json to_json(const std::vector<reception::Reason>& reasons) {
  json out = json::array();
  for (const reception::Reason& reason : reasons) out.push_back(to_json(reason));
  return out;
}

std::vector<reception::Reason> reasons_from_json(const json& in) {
  std::vector<reception::Reason> reasons;
  for (const json& one : in) {
    if (auto reason = reason_from_json(one)) reasons.push_back(*std::move(reason));
  }
  return reasons;
}

json to_json(const std::optional<RigHeadingCaution>& caution) {
  if (!caution) return nullptr;
  const auto east_deg = [](const std::optional<Declination>& declination) {
    return declination ? json(declination->east_deg()) : json(nullptr);
  };
  return {{"kind", to_text(caution->kind)},
          {"set_east_deg", east_deg(caution->set)},
          {"here_east_deg", east_deg(caution->here)}};
}

std::optional<RigHeadingCaution> caution_from_json(const json& in) {
  if (!in.is_object()) return std::nullopt;
  constexpr std::size_t kKinds = 3;
  const auto declination = [&](const char* name) {
    const json& east_deg = in.at(name);
    return east_deg.is_null() ? std::nullopt
                              : std::optional(Declination::east_deg(east_deg.get<double>()));
  };
  return RigHeadingCaution{.kind = named<RigHeadingCaution::Kind>(in.at("kind"), kKinds),
                           .set = declination("set_east_deg"),
                           .here = declination("here_east_deg")};
}

}  // namespace mastwise
