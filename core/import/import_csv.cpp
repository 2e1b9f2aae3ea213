#include "core/import/import_csv.hpp"

#include "core/import/import_table.hpp"
#include "core/import/station_fields.hpp"

#include <string>

namespace mastwise {

TableMapping own_mapping(const Source& source) {
  TableMapping mapping;
  mapping.source = source;
  mapping.comment = '#';
  mapping.latitude.column = "latitude_deg";
  mapping.longitude.column = "longitude_deg";
  mapping.optional_columns = true;
  for (const std::string_view name : fields::names()) {
    mapping.fields[std::string(name)].column = name;
  }
  return mapping;
}

Result<StationTable> read_station_csv(std::string_view text, const Source& source) {
  return read_station_table(text, own_mapping(source));
}

}  // namespace mastwise
