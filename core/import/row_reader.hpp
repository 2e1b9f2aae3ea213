#pragma once

#include "core/import/table_angle.hpp"
#include "core/import/table_datum.hpp"
#include "core/import/table_header.hpp"
#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/text/delimited.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// Turns rows into stations: a mapping bound to a table's columns.
class RowReader {
 public:
  // `mapping` must outlive the reader. The error names a column that the table lacks.
  static Result<RowReader> bind(const TableMapping& mapping, TableHeader header,
                                bool decimal_comma);

  // The station of a row, or why the row is not one.
  Result<Station> read(const DelimitedRow& row);

  // Notes on the rows read so far that are worth showing to the user.
  std::vector<std::string> remarks() const;

 private:
  using Cells = std::vector<std::string>;
  struct BoundField {
    std::string name;
    const FieldRule* rule;
    std::size_t place;
  };
  struct BoundAngle {
    Axis axis;
    const AngleRule* rule;
    std::optional<std::size_t> whole = {}, minutes = {}, seconds = {}, letter = {};
  };

  RowReader(const TableMapping& mapping, TableHeader header, DatumShift shift, bool decimal_comma)
      : mapping_(&mapping),
        header_(std::move(header)),
        shift_(std::move(shift)),
        decimal_comma_(decimal_comma),
        latitude_{Axis::latitude, &mapping.latitude},
        longitude_{Axis::longitude, &mapping.longitude} {}

  Result<Done> bind_angle(BoundAngle& angle);
  Result<double> read_degrees(const BoundAngle& angle, const Cells& cells);
  Result<Position> read_position(const Cells& cells);
  std::string set_field(Station& station, const BoundField& field, std::string_view cell) const;
  Result<Station> checked(Station station, const DelimitedRow& row) const;
  std::string_view cell_of(std::string_view name, const Cells& cells) const;
  std::vector<std::string> noted_columns() const;

  const TableMapping* mapping_;
  TableHeader header_;
  DatumShift shift_;
  bool decimal_comma_;
  std::vector<BoundField> fields_ = {};
  BoundAngle latitude_;
  BoundAngle longitude_;
  std::set<std::size_t> used_ = {};
  std::size_t carried_angles_ = 0;
};

}  // namespace mastwise
