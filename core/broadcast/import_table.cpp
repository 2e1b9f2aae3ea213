#include "core/broadcast/import_table.hpp"

#include "core/broadcast/delimited.hpp"
#include "core/broadcast/station_fields.hpp"
#include "core/broadcast/table_angle.hpp"
#include "core/broadcast/words.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace mastwise {
namespace {

using Cells = std::vector<std::string>;

// The header's columns, by name without notice of case.
class Header {
 public:
  static Result<Header> read(const DelimitedRow& row) {
    if (!row.fault.empty()) return Error{.what = row.fault, .where = "the header line"};
    Header header;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string name(words::trimmed(row.cells[i]));
      header.names_.push_back(name);
      if (!name.empty() && !header.places_.emplace(words::upper(name), i).second) {
        return Error{.what = fmt::format("the column \"{}\" is there twice", name),
                     .where = "the header line",
                     .remedy = "give each column its own name"};
      }
    }
    return header;
  }

  std::optional<std::size_t> place(std::string_view column) const {
    const auto found = places_.find(words::upper(words::trimmed(column)));
    if (found == places_.end()) return std::nullopt;
    return found->second;
  }
  const std::vector<std::string>& names() const { return names_; }
  Error lacks(std::string_view column) const {
    return Error{.what = fmt::format("there is no column \"{}\"", column),
                 .where = "the header line",
                 .remedy = fmt::format("the columns there are: {}", fmt::join(names_, ", "))};
  }

 private:
  std::vector<std::string> names_;
  std::map<std::string, std::size_t> places_;
};

struct BoundField {
  std::string name;
  const FieldRule* rule;
  std::size_t place;
};

struct BoundAngle {
  Axis axis;
  const AngleRule* rule;
  std::optional<std::size_t> whole, minutes, seconds, letter;
};

std::string_view cell_at(const Cells& cells, std::optional<std::size_t> place) {
  return place ? std::string_view(cells[*place]) : std::string_view();
}

// Turns rows into stations: the mapping, bound to a table's own columns.
class RowReader {
 public:
  static Result<RowReader> bind(const TableMapping& mapping, Header header, bool decimal_comma) {
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

  Result<Station> read(const DelimitedRow& row) {
    if (!row.fault.empty()) return Error{.what = row.fault};
    if (row.cells.size() != header_.names().size()) {
      return Error{.what = fmt::format("the row has {} cells where the header has {}",
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

  // Columns without a field, whose cells became notes.
  std::vector<std::string> noted_columns() const {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < header_.names().size(); ++i) {
      if (used_.count(i) == 0) names.push_back(header_.names()[i]);
    }
    return names;
  }
  std::size_t carried_angles() const { return carried_angles_; }

 private:
  RowReader(const TableMapping& mapping, Header header, DatumShift shift, bool decimal_comma)
      : mapping_(&mapping),
        header_(std::move(header)),
        shift_(std::move(shift)),
        decimal_comma_(decimal_comma),
        latitude_{Axis::latitude, &mapping.latitude, {}, {}, {}, {}},
        longitude_{Axis::longitude, &mapping.longitude, {}, {}, {}, {}} {}

  Result<Done> bind_angle(BoundAngle& angle) {
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

  static Error in_column(const std::string& column, const Error& error) {
    return Error{.what = fmt::format("{}: {}", column, error.message())};
  }

  Result<double> read_degrees(const BoundAngle& angle, const Cells& cells) {
    const auto read = read_angle(angle.axis, *angle.rule,
                                 {cell_at(cells, angle.whole), cell_at(cells, angle.minutes),
                                  cell_at(cells, angle.seconds), cell_at(cells, angle.letter)},
                                 decimal_comma_);
    if (!read) return in_column(angle.rule->column, read.error());
    if (read->carried) ++carried_angles_;
    return read->degrees;
  }

  Result<Position> read_position(const Cells& cells) {
    const auto latitude = read_degrees(latitude_, cells);
    if (!latitude) return latitude.error();
    const auto longitude = read_degrees(longitude_, cells);
    if (!longitude) return longitude.error();
    return shift_.shift(*latitude, *longitude);
  }

  std::string set_field(Station& station, const BoundField& field, std::string_view cell) const {
    cell = words::trimmed(cell);
    const auto& unknown = field.rule->unknown;
    if (cell.empty() || std::find(unknown.begin(), unknown.end(), cell) != unknown.end()) return {};
    if (!field.rule->values.empty()) {
      const auto value = field.rule->values.find(std::string(cell));
      if (value == field.rule->values.end()) {
        return fmt::format("the mapping's \"values\" do not say what \"{}\" means", cell);
      }
      cell = value->second;
    }
    return fields::set(station, field.name, {cell, field.rule->factor, decimal_comma_});
  }

  Result<Station> checked(Station station, const DelimitedRow& row) const {
    if (station.call_sign.empty()) return Error{.what = "the call sign is empty"};
    if (station.rf_channel.number == 0) return Error{.what = "the RF channel is empty"};
    if (!mapping_->raster && raster_is_empty(row.cells)) {
      return Error{.what = "the raster is empty"};
    }
    if (!channel_slot(station.raster, station.rf_channel)) {
      return Error{.what = fmt::format("the {} raster has no RF channel {}",
                                       to_text(station.raster), to_text(station.rf_channel))};
    }
    station.id = fields::identity(station, cell_of("site", row.cells));
    return station;
  }

  std::string_view cell_of(std::string_view name, const Cells& cells) const {
    for (const BoundField& field : fields_) {
      if (field.name == name) return words::trimmed(cells[field.place]);
    }
    return {};
  }
  bool raster_is_empty(const Cells& cells) const { return cell_of("raster", cells).empty(); }

  const TableMapping* mapping_;
  Header header_;
  DatumShift shift_;
  bool decimal_comma_;
  std::vector<BoundField> fields_;
  BoundAngle latitude_;
  BoundAngle longitude_;
  std::set<std::size_t> used_;
  std::size_t carried_angles_ = 0;
};

std::vector<std::string> remarks_on(const RowReader& reader, const TableMapping& mapping) {
  std::vector<std::string> remarks;
  if (mapping.datum == Datum::nad83) {
    remarks.push_back(
        "NAD83 coordinates were taken to WGS84 by PROJ without grids: unchanged on the mainland, "
        "right within about 4 m");
  } else if (mapping.datum == Datum::nad27) {
    remarks.push_back(
        "NAD27 coordinates were shifted to WGS84 by PROJ: right within about 10 m without grids");
  }
  if (reader.carried_angles() > 0) {
    remarks.push_back(fmt::format("{} angles have 60 seconds and were taken as the next minute",
                                  reader.carried_angles()));
  }
  if (const auto noted = reader.noted_columns(); !noted.empty()) {
    remarks.push_back(fmt::format("columns kept as notes: {}", fmt::join(noted, ", ")));
  }
  return remarks;
}

std::optional<Error> unreadable_text(std::string_view text) {
  const std::string_view start = text.substr(0, 2);
  if (start == "\xFF\xFE" || start == "\xFE\xFF" || text.find('\0') != std::string_view::npos) {
    return Error{.what = "this is not a text in UTF-8 or ISO 8859-1",
                 .remedy = "save the table as CSV in UTF-8"};
  }
  return std::nullopt;
}

}  // namespace

Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping) {
  if (const auto error = unreadable_text(text)) return *error;
  DelimitedReader rows(text, mapping.separator, mapping.comment);
  const auto first = rows.next();
  if (!first) return Error{.what = "the table is empty", .remedy = "it must begin with a header"};
  auto header = Header::read(*first);
  if (!header) return header.error();
  auto reader = RowReader::bind(mapping, std::move(header).value(), rows.separator() != ',');
  if (!reader) return reader.error();

  StationTable table{.source = mapping.source};
  std::map<std::string, std::size_t> lines;
  while (const auto row = rows.next()) {
    ++table.rows_read;
    auto station = reader->read(*row);
    if (!station) {
      table.rejected.push_back({row->line, station.error().message()});
      continue;
    }
    const auto known = lines.emplace(station->id, row->line);
    if (!known.second) {
      table.rejected.push_back({row->line, fmt::format("the station {} is already on line {}",
                                                       station->id, known.first->second)});
      continue;
    }
    table.stations.push_back(std::move(station).value());
  }
  table.remarks = remarks_on(*reader, mapping);
  return table;
}

}  // namespace mastwise
