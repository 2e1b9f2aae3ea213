#include "core/import/import_table.hpp"

#include "core/import/row_reader.hpp"
#include "core/import/table_header.hpp"
#include "core/text/delimited.hpp"

#include <map>
#include <string>

#include <fmt/format.h>

namespace mastwise {

Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping) {
  if (const auto error = unreadable_text(text)) return *error;
  DelimitedReader rows(text, mapping.separator, mapping.comment);
  const auto first = rows.next();
  if (!first) return Error{.what = "the table is empty", .remedy = "add a header line"};
  auto header = TableHeader::read(*first);
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
  table.remarks = reader->remarks();
  return table;
}

}  // namespace mastwise
