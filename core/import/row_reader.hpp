#pragma once

#include "core/geo/os_grid.hpp"
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

  // Whether the mapping reads the row: its "where" and "where_not".
  bool wants(const DelimitedRow& row) const;

  // The station of a row, or why the row is not one.
  Result<Station> read(const DelimitedRow& row);

  // Notes on the rows read so far that are worth showing to the user.
  std::vector<std::string> remarks() const;

 private:
  using Cells = std::vector<std::string>;
  struct BoundFallback {
    Fallback::How how;
    std::vector<std::size_t> places;
  };
  struct BoundField {
    std::string name;
    const FieldRule* rule;
    std::optional<std::size_t> place;  // empty: the table lacks the column
    std::vector<BoundFallback> otherwise = {};
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

  struct BoundFilter {
    std::size_t place;
    const std::vector<std::string>* cells;
    bool wanted;
  };

  Result<Done> bind_filters();
  Result<Done> bind_angle(BoundAngle& angle);
  Result<double> read_degrees(const BoundAngle& angle, const Cells& cells);
  Result<Position> read_position(const Cells& cells);
  void bind_fallbacks(BoundField& field);
  std::string given(const BoundField& field, const Cells& cells) const;
  std::optional<std::string> fallen_back(const BoundField& field, const BoundFallback& fallback,
                                         const Cells& cells) const;
  std::string set_field(Station& station, const BoundField& field, std::string_view cell) const;
  Result<Station> checked(Station station, const DelimitedRow& row) const;
  std::string_view cell_of(std::string_view name, const Cells& cells) const;
  std::vector<std::string> noted_columns() const;

  const TableMapping* mapping_;
  TableHeader header_;
  DatumShift shift_;
  std::optional<OsGrid> grid_ = {};  // if the positions are grid references
  bool decimal_comma_;
  std::vector<BoundField> fields_ = {};
  std::vector<BoundFilter> filters_ = {};
  BoundAngle latitude_;
  BoundAngle longitude_;
  std::set<std::size_t> used_ = {};
  std::size_t carried_angles_ = 0;
};

}  // namespace mastwise
