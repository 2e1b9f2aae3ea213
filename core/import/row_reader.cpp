#include "core/import/row_reader.hpp"

#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

std::string_view cell_at(const std::vector<std::string>& cells, std::optional<std::size_t> place) {
  return place ? std::string_view(cells[*place]) : std::string_view();
}

Error in_column(const std::string& column, const Error& error) {
  return Error{.what = fmt::format("{}: {}", column, error.message())};
}

// The cell's word translated by the mapping; an empty word is unknown, std::nullopt a word that the
// mapping lacks.
std::optional<std::string_view> translated(const FieldRule& rule, std::string_view cell) {
  if (rule.values.empty()) return cell;
  auto value = rule.values.find(std::string(cell));
  if (value == rule.values.end()) value = rule.values.find("*");
  if (value == rule.values.end()) return std::nullopt;
  return std::string_view(value->second);
}

}  // namespace

Result<RowReader> RowReader::bind(const TableMapping& mapping, TableHeader header,
                                  bool decimal_comma) {
  auto shift = DatumShift::to_wgs84(mapping.datum);
  if (!shift) return shift.error();
  RowReader reader(mapping, std::move(header), std::move(shift).value(), decimal_comma);
  for (const auto& [name, rule] : mapping.fields) {
    const auto place = reader.header_.place(rule.column);
    if (place) {
      reader.fields_.push_back({name, &rule, *place});
      reader.used_.insert(*place);
    } else if (!mapping.optional_columns || (name == "raster" && !mapping.raster) ||
               name == "call_sign" || name == "rf_channel") {
      return reader.header_.lacks(rule.column);
    }
  }
  for (BoundAngle* angle : {&reader.latitude_, &reader.longitude_}) {
    if (const auto bound = reader.bind_angle(*angle); !bound) return bound.error();
  }
  return reader;
}

Result<Station> RowReader::read(const DelimitedRow& row) {
  if (!row.fault.empty()) return Error{.what = row.fault};
  if (row.cells.size() != header_.names().size()) {
    return Error{.what = fmt::format("the row has {} cells, but the header has {}",
                                     row.cells.size(), header_.names().size())};
  }
  const auto position = read_position(row.cells);
  if (!position) return position.error();
  Station station{.raster = mapping_->raster.value_or(Raster::atsc),
                  .standard = mapping_->standard,
                  .position = *position};
  for (const BoundField& field : fields_) {
    const std::string fault = set_field(station, field, row.cells[field.place]);
    if (!fault.empty()) return in_column(field.rule->column, Error{.what = fault});
  }
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const std::string_view text = words::trimmed(row.cells[i]);
    if (used_.count(i) == 0 && !text.empty()) {
      station.notes.push_back({header_.names()[i], std::string(text)});
    }
  }
  station.provenance = {mapping_->source, row.line};
  return checked(std::move(station), row);
}

Result<Done> RowReader::bind_angle(BoundAngle& angle) {
  const std::pair<const std::string&, std::optional<std::size_t>&> columns[] = {
      {angle.rule->column, angle.whole},
      {angle.rule->minutes_column, angle.minutes},
      {angle.rule->seconds_column, angle.seconds},
      {angle.rule->letter_column, angle.letter}};
  for (const auto& column : columns) {
    if (column.first.empty()) continue;
    column.second = header_.place(column.first);
    if (!column.second) return header_.lacks(column.first);
    used_.insert(*column.second);
  }
  return Done{};
}

Result<double> RowReader::read_degrees(const BoundAngle& angle, const Cells& cells) {
  const auto read = read_angle(angle.axis, *angle.rule,
                               {cell_at(cells, angle.whole), cell_at(cells, angle.minutes),
                                cell_at(cells, angle.seconds), cell_at(cells, angle.letter)},
                               decimal_comma_);
  if (!read) return in_column(angle.rule->column, read.error());
  if (read->carried) ++carried_angles_;
  return read->degrees;
}

Result<Position> RowReader::read_position(const Cells& cells) {
  const auto latitude = read_degrees(latitude_, cells);
  if (!latitude) return latitude.error();
  const auto longitude = read_degrees(longitude_, cells);
  if (!longitude) return longitude.error();
  return shift_.shift(*latitude, *longitude);
}

std::string RowReader::set_field(Station& station, const BoundField& field,
                                 std::string_view cell) const {
  cell = words::trimmed(cell);
  const auto& unknown = field.rule->unknown;
  if (cell.empty() || std::find(unknown.begin(), unknown.end(), cell) != unknown.end()) return {};
  const auto word = translated(*field.rule, cell);
  if (!word) return fmt::format("the mapping's \"values\" do not define \"{}\"", cell);
  if (word->empty()) return {};
  return fields::set(station, field.name, {*word, field.rule->factor, decimal_comma_});
}

Result<Station> RowReader::checked(Station station, const DelimitedRow& row) const {
  if (station.call_sign.empty()) return Error{.what = "the call sign is empty"};
  if (station.rf_channel.number == 0) return Error{.what = "the RF channel is empty"};
  if (!mapping_->raster && cell_of("raster", row.cells).empty()) {
    return Error{.what = "the channel plan is empty"};
  }
  if (!channel_slot(station.raster, station.rf_channel)) {
    return Error{.what = fmt::format("the {} channel plan has no RF channel {}",
                                     to_text(station.raster), to_text(station.rf_channel))};
  }
  station.id = fields::identity(station, cell_of("site", row.cells));
  return station;
}

std::string_view RowReader::cell_of(std::string_view name, const Cells& cells) const {
  for (const BoundField& field : fields_) {
    if (field.name == name) return words::trimmed(cells[field.place]);
  }
  return {};
}

std::vector<std::string> RowReader::noted_columns() const {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < header_.names().size(); ++i) {
    if (used_.count(i) == 0) names.push_back(header_.names()[i]);
  }
  return names;
}

std::vector<std::string> RowReader::remarks() const {
  std::vector<std::string> remarks;
  if (mapping_->datum == Datum::nad83) {
    remarks.push_back(
        "NAD83 coordinates were converted to WGS84 by PROJ without grids: unchanged on the "
        "mainland, accurate to about 4 m");
  } else if (mapping_->datum == Datum::nad27) {
    remarks.push_back(
        "NAD27 coordinates were converted to WGS84 by PROJ: accurate to about 10 m without grids");
  }
  if (carried_angles_ > 0) {
    remarks.push_back(
        fmt::format("{} angles have 60 seconds and were read as the next minute", carried_angles_));
  }
  if (const auto noted = noted_columns(); !noted.empty()) {
    remarks.push_back(fmt::format("columns kept as notes: {}", fmt::join(noted, ", ")));
  }
  return remarks;
}

}  // namespace mastwise
