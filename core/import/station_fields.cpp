#include "core/import/station_fields.hpp"

#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::fields {
namespace {

struct TextField {
  std::string_view name;
  std::string Station::*member;
};
constexpr std::array kTexts{
    TextField{"id", &Station::id},
    TextField{"call_sign", &Station::call_sign},
    TextField{"facility_id", &Station::facility_id},
    TextField{"name", &Station::name},
    TextField{"network", &Station::network},
    TextField{"multiplex", &Station::multiplex},
    TextField{"city", &Station::city},
    TextField{"state", &Station::state},
};

enum class Quantity { height, power };
struct NumberField {
  std::string_view name;
  std::optional<double> Station::*member;
  double lowest;
  double highest;
  Quantity quantity;
};
constexpr std::array kNumbers{
    NumberField{"site_amsl_m", &Station::site_amsl_m, -500.0, 9000.0, Quantity::height},
    NumberField{"antenna_amsl_m", &Station::antenna_amsl_m, -500.0, 10000.0, Quantity::height},
    NumberField{"haat_m", &Station::haat_m, -9000.0, 10000.0, Quantity::height},
    // A power of 0 is not a power: the least accepted is 1 uW.
    NumberField{"erp_kw", &Station::erp_kw, 1e-9, 10000.0, Quantity::power},
};

struct Unit {
  std::string_view name;
  Quantity quantity;
  double factor;
};
constexpr std::array kUnits{
    Unit{"m", Quantity::height, 1.0},    Unit{"ft", Quantity::height, 0.3048},
    Unit{"kW", Quantity::power, 1.0},    Unit{"W", Quantity::power, 0.001},
    Unit{"MW", Quantity::power, 1000.0},
};

template <class Value, class Member>
std::string keep(const Result<Value>& value, Member& member) {
  if (!value) return value.error().message();
  member = *value;
  return {};
}

std::string set_yes_no(std::optional<bool>& member, std::string_view text) {
  const bool yes = words::same_word(text, "yes");
  if (!yes && !words::same_word(text, "no"))
    return fmt::format("\"{}\" is neither yes nor no", text);
  member = yes;
  return {};
}

Program parse_program(std::string_view text) {
  std::array<std::string, 4> parts;
  for (std::string& part : parts) {
    const std::size_t bar = std::min(text.find('|'), text.size());
    part = words::trimmed(text.substr(0, bar));
    text.remove_prefix(std::min(bar + 1, text.size()));
  }
  return {parts[0], parts[1], parts[2], parts[3]};
}

std::string set_programs(Station& station, std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(';'), text.size());
    const std::string_view one = words::trimmed(text.substr(0, end));
    if (std::count(one.begin(), one.end(), '|') > 3) {
      return fmt::format("program \"{}\" has more than four parts", one);
    }
    if (!one.empty()) station.programs.push_back(parse_program(one));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return {};
}

// The first program, as the receiver shows it: "6-1" is written "6.1".
std::string set_virtual_channel(Station& station, std::string_view text) {
  Program first{.virtual_channel = std::string(text)};
  std::replace(first.virtual_channel.begin(), first.virtual_channel.end(), '-', '.');
  const bool listed =
      std::any_of(station.programs.begin(), station.programs.end(),
                  [&](const Program& one) { return one.virtual_channel == first.virtual_channel; });
  if (!listed) station.programs.insert(station.programs.begin(), std::move(first));
  return {};
}

struct WordField {
  std::string_view name;
  std::string (*set)(Station&, std::string_view);
};
constexpr std::array kWords{
    WordField{"raster",
              [](Station& s, std::string_view t) { return keep(parse_raster(t), s.raster); }},
    WordField{
        "rf_channel",
        [](Station& s, std::string_view t) { return keep(parse_rf_channel(t), s.rf_channel); }},
    WordField{"programs", &set_programs},
    WordField{"virtual_channel", &set_virtual_channel},
    WordField{"standard",
              [](Station& s, std::string_view t) {
                return keep(parse_broadcast_standard(t), s.standard);
              }},
    WordField{
        "polarization",
        [](Station& s, std::string_view t) { return keep(parse_polarization(t), s.polarization); }},
    WordField{"directional",
              [](Station& s, std::string_view t) { return set_yes_no(s.directional, t); }},
    WordField{
        "pattern",
        [](Station& s, std::string_view t) { return keep(parse_transmit_pattern(t), s.pattern); }},
    WordField{"translator",
              [](Station& s, std::string_view t) { return set_yes_no(s.translator, t); }},
};

std::string set_number(Station& station, const NumberField& field, const Cell& cell) {
  const auto number = parse_number(cell.text, cell.decimal_comma);
  if (!number) return fmt::format("\"{}\" is not a number", cell.text);
  constexpr double kWattsInKilowatt = 1000.0;
  const double value = cell.scale == Scale::dbw ? std::pow(10.0, *number / 10.0) / kWattsInKilowatt
                                                : *number * cell.factor;
  if (value < field.lowest || value > field.highest) {
    return fmt::format("{} is not within {} to {}", value, field.lowest, field.highest);
  }
  station.*field.member = value;
  return {};
}

std::string set_channel_by_frequency(Station& station, const Cell& cell) {
  const auto mhz = parse_number(cell.text, cell.decimal_comma);
  if (!mhz) return fmt::format("\"{}\" is not a number", cell.text);
  double center_mhz = *mhz;
  if (cell.scale == Scale::low_mhz) {
    // The slot of these plans is 6 to 8 MHz wide: try the one that begins there.
    for (const double half_mhz : {3.0, 3.5, 4.0}) {
      const auto channel = channel_at(station.raster, *mhz + half_mhz);
      const auto slot = channel ? channel_slot(station.raster, *channel) : std::nullopt;
      if (slot && std::fabs(slot->low_mhz - *mhz) < 0.5) center_mhz = slot->center_mhz;
    }
  }
  const auto channel = channel_at(station.raster, center_mhz);
  if (!channel) {
    return fmt::format("the {} channel plan has no channel at {} MHz", to_text(station.raster),
                       *mhz);
  }
  station.rf_channel = *channel;
  return {};
}

struct NamedScale {
  std::string_view name;
  std::string_view field;
  Scale scale;
};
constexpr std::array kScales{NamedScale{"dBW", "erp_kw", Scale::dbw},
                             NamedScale{"center MHz", "rf_channel", Scale::center_mhz},
                             NamedScale{"low MHz", "rf_channel", Scale::low_mhz}};

template <class Fields>
auto find(const Fields& all, std::string_view name) {
  return std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name == name; });
}

}  // namespace

const std::vector<std::string_view>& names() {
  static const std::vector<std::string_view> kNames{
      "call_sign", "raster",     "rf_channel",      "id",          "facility_id", "site",
      "name",      "network",    "programs",        "standard",    "site_amsl_m", "antenna_amsl_m",
      "haat_m",    "erp_kw",     "polarization",    "directional", "pattern",     "city",
      "state",     "translator", "virtual_channel", "multiplex"};
  return kNames;
}

bool is_known(std::string_view name) {
  return std::find(names().begin(), names().end(), name) != names().end();
}

std::optional<double> unit_factor(std::string_view name, std::string_view unit) {
  const auto field = find(kNumbers, name);
  const auto known = find(kUnits, unit);
  if (field == kNumbers.end() || known == kUnits.end()) return std::nullopt;
  if (field->quantity != known->quantity) return std::nullopt;
  return known->factor;
}

std::optional<Scale> scale_of(std::string_view name, std::string_view unit) {
  const auto found = find(kScales, unit);
  if (found == kScales.end() || found->field != name) return std::nullopt;
  return found->scale;
}

std::string_view unit_of(Scale scale) {
  for (const NamedScale& one : kScales) {
    if (one.scale == scale) return one.name;
  }
  return {};
}

std::string_view unit_of(std::string_view name, double factor) {
  const auto field = find(kNumbers, name);
  if (field == kNumbers.end() || factor == 1.0) return {};
  const auto known = std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& unit) {
    return unit.quantity == field->quantity && unit.factor == factor;
  });
  return known == kUnits.end() ? std::string_view() : known->name;
}

std::optional<double> parse_number(std::string_view cell, bool decimal_comma) {
  std::string text(words::trimmed(cell));
  if (decimal_comma) std::replace(text.begin(), text.end(), ',', '.');
  if (!text.empty() && text.front() == '+') text.erase(0, 1);
  double number = 0.0;
  const char* end = text.data() + text.size();
  const auto [rest, fault] = std::from_chars(text.data(), end, number);
  if (fault != std::errc() || rest != end || !std::isfinite(number)) return std::nullopt;
  return number;
}

std::string set(Station& station, std::string_view name, const Cell& cell) {
  if (const auto text = find(kTexts, name); text != kTexts.end()) {
    station.*text->member = cell.text;
    return {};
  }
  if (const auto number = find(kNumbers, name); number != kNumbers.end()) {
    return set_number(station, *number, cell);
  }
  if (cell.scale == Scale::center_mhz || cell.scale == Scale::low_mhz) {
    return set_channel_by_frequency(station, cell);
  }
  if (const auto word = find(kWords, name); word != kWords.end()) {
    return word->set(station, cell.text);
  }
  return {};
}

std::string identity(const Station& station, std::string_view site) {
  if (!station.id.empty()) return station.id;
  std::string id = station.facility_id;
  if (id.empty()) id = fmt::format("{}-{}", station.call_sign, to_text(station.rf_channel));
  return site.empty() ? id : fmt::format("{}/{}", id, site);
}

}  // namespace mastwise::fields
