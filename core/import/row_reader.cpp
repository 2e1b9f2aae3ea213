#include "core/import/row_reader.hpp"

#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

std::string_view cell_at(const std::vector<std::string>& cells, std::optional<std::size_t> place) {
  return place ? words::trimmed(cells[*place]) : std::string_view();
}

Error in_column(const std::string& column, const Error& error) {
  return Error{.what = fmt::format("{}: {}", column, error.message())};
}

bool is_known(const FieldRule& rule, std::string_view cell) {
  return !cell.empty() &&
         std::find(rule.unknown.begin(), rule.unknown.end(), cell) == rule.unknown.end();
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
  if (mapping.latitude.notation == AngleNotation::os_grid) {
    auto grid = OsGrid::open();
    if (!grid) return grid.error();
    reader.grid_ = std::move(grid).value();
  }
  for (const auto& [name, rule] : mapping.fields) {
    BoundField field{name, &rule, reader.header_.place(rule.column)};
    const bool needed = (name == "raster" && !mapping.raster) || name == "call_sign" ||
                        name == "rf_channel" || !(mapping.optional_columns || rule.optional);
    if (!field.place && needed) return reader.header_.lacks(rule.column);
    if (field.place) reader.used_.insert(*field.place);
    reader.bind_fallbacks(field);
    if (field.place || !field.otherwise.empty()) reader.fields_.push_back(std::move(field));
  }
  for (BoundAngle* angle : {&reader.latitude_, &reader.longitude_}) {
    if (const auto bound = reader.bind_angle(*angle); !bound) return bound.error();
  }
  if (const auto bound = reader.bind_filters(); !bound) return bound.error();
  return reader;
}

Result<Done> RowReader::bind_filters() {
  for (const bool wanted : {true, false}) {
    for (const auto& [column, cells] : wanted ? mapping_->where : mapping_->where_not) {
      const auto place = header_.place(column);
      if (!place) return header_.lacks(column);
      filters_.push_back({*place, &cells, wanted});
    }
  }
  return Done{};
}

bool RowReader::wants(const DelimitedRow& row) const {
  return std::all_of(filters_.begin(), filters_.end(), [&](const BoundFilter& filter) {
    if (filter.place >= row.cells.size()) return true;
    const std::string_view cell = words::trimmed(row.cells[filter.place]);
    return one_of(*filter.cells, cell) == filter.wanted;
  });
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
    const std::string fault = set_field(station, field, given(field, row.cells));
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
  if (grid_) {
    const auto square = parse_os_grid(cell_at(cells, latitude_.whole));
    if (!square) return in_column(latitude_.rule->column, square.error());
    return grid_->position(*square);
  }
  const auto latitude = read_degrees(latitude_, cells);
  if (!latitude) return latitude.error();
  const auto longitude = read_degrees(longitude_, cells);
  if (!longitude) return longitude.error();
  return shift_.shift(*latitude, *longitude);
}

// Columns that the table lacks are no fallback.
void RowReader::bind_fallbacks(BoundField& field) {
  for (const Fallback& fallback : field.rule->otherwise) {
    BoundFallback bound{fallback.how, {}};
    for (const std::string& column : fallback.columns) {
      if (const auto place = header_.place(column)) bound.places.push_back(*place);
    }
    const bool whole = bound.places.size() == fallback.columns.size();
    if (!whole && (fallback.how != Fallback::How::largest || bound.places.empty())) continue;
    used_.insert(bound.places.begin(), bound.places.end());
    field.otherwise.push_back(std::move(bound));
  }
}

std::optional<std::string> RowReader::fallen_back(const BoundField& field,
                                                  const BoundFallback& fallback,
                                                  const Cells& cells) const {
  const auto number = [&](std::size_t i) {
    return fields::parse_number(cells[fallback.places[i]], decimal_comma_);
  };
  const auto known = [&](std::size_t i) {
    return is_known(*field.rule, words::trimmed(cells[fallback.places[i]]));
  };
  if (fallback.how == Fallback::How::value) {
    if (!known(0)) return std::nullopt;
    return std::string(words::trimmed(cells[fallback.places[0]]));
  }
  std::optional<double> value;
  if (fallback.how == Fallback::How::sum) {
    const auto first = number(0), second = number(1);
    if (first && second && known(1)) value = *first + *second;
  } else {
    for (std::size_t i = 0; i < fallback.places.size(); ++i) {
      const auto one = number(i);
      if (one && known(i)) value = std::max(value.value_or(*one), *one);
    }
  }
  if (!value) return std::nullopt;
  return fmt::format("{}", *value);
}

// The cell, or that of the first fallback that has one; empty if unknown.
std::string RowReader::given(const BoundField& field, const Cells& cells) const {
  if (field.place) {
    const std::string_view cell = words::trimmed(cells[*field.place]);
    if (is_known(*field.rule, cell)) return std::string(cell);
  }
  for (const BoundFallback& fallback : field.otherwise) {
    if (auto cell = fallen_back(field, fallback, cells)) return *std::move(cell);
  }
  return {};
}

std::string RowReader::set_field(Station& station, const BoundField& field,
                                 std::string_view cell) const {
  if (cell.empty() && field.rule->values.count(std::string()) == 0) return {};
  const auto word = translated(*field.rule, cell);
  if (!word) return fmt::format("the mapping's \"values\" do not define \"{}\"", cell);
  if (word->empty()) return {};
  return fields::set(station, field.name,
                     {*word, field.rule->factor, field.rule->scale, decimal_comma_});
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
  if (!station.programs.empty() && mapping_->fields.count("virtual_channel") > 0 &&
      station.programs.front().network.empty()) {
    station.programs.front().network = station.network;
  }
  station.id = fields::identity(station, cell_of("site", row.cells));
  return station;
}

std::string_view RowReader::cell_of(std::string_view name, const Cells& cells) const {
  for (const BoundField& field : fields_) {
    if (field.name == name) return cell_at(cells, field.place);
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
