#include "core/logbook/record_cells.hpp"

#include "core/text/iso_time.hpp"

#include <array>
#include <charconv>

#include <fmt/format.h>

namespace mastwise::record_cells {
namespace {

std::string to_cell(const std::string& text) {
  return text;
}
bool from_cell(std::string_view cell, std::string& text) {
  text = cell;
  return true;
}

std::string to_cell(double value) {
  return fmt::format("{}", value);
}
bool from_cell(std::string_view cell, double& value) {
  const auto [end, trouble] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  return trouble == std::errc{} && end == cell.data() + cell.size();
}

std::string to_cell(bool value) {
  return value ? "yes" : "no";
}
bool from_cell(std::string_view cell, bool& value) {
  value = cell == "yes";
  return value || cell == "no";
}

std::string to_cell(UtcTime time) {
  return iso_utc(time);
}
bool from_cell(std::string_view cell, UtcTime& time) {
  const auto read = parse_iso_utc(cell);
  if (read) time = *read;
  return read.has_value();
}

std::string to_cell(Bearing<True> bearing) {
  return to_cell(bearing.degrees());
}
bool from_cell(std::string_view cell, Bearing<True>& bearing) {
  double degrees = 0.0;
  const bool read = from_cell(cell, degrees) && degrees >= 0.0 && degrees < 360.0;
  if (read) bearing = Bearing<True>::degrees(degrees);
  return read;
}

std::string to_cell(RigHeading heading) {
  return to_cell(heading.nose());
}
bool from_cell(std::string_view cell, RigHeading& heading) {
  Bearing<True> nose;
  const bool read = from_cell(cell, nose);
  heading = RigHeading::nose_at(nose);
  return read;
}

// For types with a to_text() and a parser.
template <class Value>
bool take(const Result<Value>& read, Value& value) {
  if (read) value = *read;
  return static_cast<bool>(read);
}
std::string to_cell(Outcome outcome) {
  return std::string(to_text(outcome));
}
bool from_cell(std::string_view cell, Outcome& outcome) {
  return take(parse_outcome(cell), outcome);
}
std::string to_cell(Band band) {
  return std::string(to_text(band));
}
bool from_cell(std::string_view cell, Band& band) {
  return take(parse_band(cell), band);
}
std::string to_cell(reception::Surroundings surroundings) {
  return std::string(to_text(surroundings));
}
bool from_cell(std::string_view cell, reception::Surroundings& surroundings) {
  return take(reception::parse_surroundings(cell), surroundings);
}
std::string to_cell(RfChannel channel) {
  return to_text(channel);
}
bool from_cell(std::string_view cell, RfChannel& channel) {
  return take(parse_rf_channel(cell), channel);
}

// "208.5 71;211 80"
std::string to_cell(const std::vector<SweepReading>& readings) {
  std::string cell;
  for (const SweepReading& reading : readings) {
    cell +=
        fmt::format("{}{} {}", cell.empty() ? "" : ";", reading.heading.degrees(), reading.value);
  }
  return cell;
}
bool from_cell(std::string_view cell, std::vector<SweepReading>& readings) {
  while (!cell.empty()) {
    const std::string_view one = cell.substr(0, cell.find(';'));
    cell.remove_prefix(std::min(one.size() + 1, cell.size()));
    const std::size_t blank = one.find(' ');
    SweepReading reading;
    if (blank == std::string_view::npos || !from_cell(one.substr(0, blank), reading.heading) ||
        !from_cell(one.substr(blank + 1), reading.value)) {
      return false;
    }
    readings.push_back(reading);
  }
  return true;
}

template <class Value>
std::string to_cell(const std::optional<Value>& value) {
  return value ? to_cell(*value) : std::string();
}
template <class Value>
bool from_cell(std::string_view cell, std::optional<Value>& value) {
  value.reset();
  if (cell.empty()) return true;
  return from_cell(cell, value.emplace());
}

// The field that is a member of the record.
template <class Record, auto kMember>
constexpr Field<Record> member(std::string_view name) {
  return {name, [](const Record& record) { return to_cell(record.*kMember); },
          [](Record& record, std::string_view cell) { return from_cell(cell, record.*kMember); }};
}

// A member of the record's mark.
template <class Record, auto kMember>
constexpr Field<Record> mark(std::string_view name) {
  return {
      name, [](const Record& record) { return to_cell(record.mark.*kMember); },
      [](Record& record, std::string_view cell) { return from_cell(cell, record.mark.*kMember); }};
}

std::string get_latitude(const StopRecord& stop) {
  return to_cell(stop.position.latitude_deg());
}
std::string get_longitude(const StopRecord& stop) {
  return to_cell(stop.position.longitude_deg());
}
bool set_latitude(StopRecord& stop, std::string_view cell) {
  double degrees = 0.0;
  return from_cell(cell, degrees) &&
         take(Position::at_deg(degrees, stop.position.longitude_deg()), stop.position);
}
bool set_longitude(StopRecord& stop, std::string_view cell) {
  double degrees = 0.0;
  return from_cell(cell, degrees) &&
         take(Position::at_deg(stop.position.latitude_deg(), degrees), stop.position);
}

using Stop = StopRecord;
constexpr std::array kStopFields{
    member<Stop, &Stop::id>("id"),
    mark<Stop, &Mark::changed>("changed"),
    mark<Stop, &Mark::tablet>("tablet"),
    mark<Stop, &Mark::deleted>("deleted"),
    Field<Stop>{"latitude_deg", get_latitude, set_latitude},
    Field<Stop>{"longitude_deg", get_longitude, set_longitude},
    member<Stop, &Stop::arrived>("arrived"),
    member<Stop, &Stop::left>("left"),
    member<Stop, &Stop::name>("name"),
    member<Stop, &Stop::note>("note"),
    member<Stop, &Stop::surroundings>("surroundings"),
    member<Stop, &Stop::rig_heading>("rig_heading_true_deg"),
    member<Stop, &Stop::gear>("gear"),
    member<Stop, &Stop::weather>("weather"),
};

using Tried = OutcomeRecord;
constexpr std::array kOutcomeFields{
    member<Tried, &Tried::stop_id>("stop_id"),
    member<Tried, &Tried::source>("source"),
    member<Tried, &Tried::station_id>("station_id"),
    mark<Tried, &Mark::changed>("changed"),
    mark<Tried, &Mark::tablet>("tablet"),
    mark<Tried, &Mark::deleted>("deleted"),
    member<Tried, &Tried::call_sign>("call_sign"),
    member<Tried, &Tried::rf_channel>("rf_channel"),
    member<Tried, &Tried::virtual_channel>("virtual_channel"),
    member<Tried, &Tried::band>("band"),
    member<Tried, &Tried::heading>("heading_true_deg"),
    member<Tried, &Tried::outcome>("outcome"),
    member<Tried, &Tried::when>("tried"),
    member<Tried, &Tried::chance_percent>("chance_percent"),
    member<Tried, &Tried::margin_db>("margin_db"),
    member<Tried, &Tried::deviation_db>("deviation_db"),
    member<Tried, &Tried::gear>("gear"),
    member<Tried, &Tried::weather>("weather"),
    member<Tried, &Tried::temperature_c>("temperature_c"),
    member<Tried, &Tried::amplifier>("amplifier"),
};

using Sweep = SweepRecord;
constexpr std::array kSweepFields{
    member<Sweep, &Sweep::id>("id"),
    member<Sweep, &Sweep::stop_id>("stop_id"),
    member<Sweep, &Sweep::source>("source"),
    member<Sweep, &Sweep::station_id>("station_id"),
    mark<Sweep, &Mark::changed>("changed"),
    mark<Sweep, &Mark::tablet>("tablet"),
    mark<Sweep, &Mark::deleted>("deleted"),
    member<Sweep, &Sweep::band>("band"),
    member<Sweep, &Sweep::when>("taken"),
    member<Sweep, &Sweep::scale>("scale"),
    member<Sweep, &Sweep::readings>("readings"),
    member<Sweep, &Sweep::peak>("peak_true_deg"),
    member<Sweep, &Sweep::sigma_deg>("sigma_deg"),
};

}  // namespace

template <>
std::span<const Field<StopRecord>> fields() {
  return kStopFields;
}
template <>
std::span<const Field<OutcomeRecord>> fields() {
  return kOutcomeFields;
}
template <>
std::span<const Field<SweepRecord>> fields() {
  return kSweepFields;
}

}  // namespace mastwise::record_cells
