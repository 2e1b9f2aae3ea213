#include "core/import/import_table.hpp"

#include "core/import/row_reader.hpp"
#include "core/import/table_header.hpp"
#include "core/text/delimited_stream.hpp"

#include <map>
#include <string>

#include <fmt/format.h>

namespace mastwise {
namespace {

class TableSink : public StationSink {
 public:
  explicit TableSink(StationTable& table) : table_(table) {}
  Result<Done> take(Station station) override {
    const std::size_t line = station.provenance.line;
    const auto known = lines_.emplace(station.id, line);
    if (known.second) {
      table_.stations.push_back(std::move(station));
    } else {
      reject({line, already_listed(station.id, known.first->second)});
    }
    return Done{};
  }
  void reject(RejectedRow row) override { table_.rejected.push_back(std::move(row)); }

 private:
  StationTable& table_;
  std::map<std::string, std::size_t> lines_ = {};
};

}  // namespace

std::string already_listed(std::string_view id, std::size_t line) {
  return fmt::format("the station {} is already on line {}", id, line);
}

Result<TableSummary> stream_station_table(ByteStream& text, const TableMapping& mapping,
                                          StationSink& sink, const TableProgress& progress) {
  DelimitedStream rows(text, mapping.separator, mapping.comment);
  auto row = rows.next();
  if (!row) return row.error();
  if (!*row) {
    return Error{.what = "the table is empty",
                 .remedy = "choose a file with a header line and rows"};
  }
  if (const auto error = unreadable_text((*row)->cells)) return *error;
  const bool headed = mapping.columns.empty();
  auto header = TableHeader::read(headed ? **row : DelimitedRow{.cells = mapping.columns});
  if (!header) return header.error();
  auto reader = RowReader::bind(mapping, std::move(header).value(),
                                mapping.decimal_comma || rows.separator() != ',');
  if (!reader) return reader.error();

  TableSummary summary;
  std::size_t skipped = 0;
  while (true) {
    constexpr std::size_t kEvery = 256;
    if ((summary.rows_read + skipped) % kEvery == 0 && progress && !progress(rows.bytes_read())) {
      return Error{.what = "the import was stopped", .remedy = "the catalog is unchanged"};
    }
    if (headed || summary.rows_read + skipped > 0) row = rows.next();
    if (!row) return row.error();
    if (!*row) break;
    if (!reader->wants(**row)) {
      ++skipped;
      continue;
    }
    ++summary.rows_read;
    auto station = reader->read(**row);
    if (!station) {
      sink.reject({(*row)->line, station.error().message()});
    } else if (const auto taken = sink.take(std::move(station).value()); !taken) {
      return taken.error();
    }
  }
  summary.remarks = reader->remarks();
  if (skipped > 0) {
    summary.remarks.push_back(
        fmt::format("{} rows are not among those the mapping reads", skipped));
  }
  return summary;
}

Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping) {
  StationTable table{.source = mapping.source};
  TableSink sink(table);
  ViewStream stream(text);
  auto summary = stream_station_table(stream, mapping, sink);
  if (!summary) return summary.error();
  table.rows_read = summary->rows_read;
  table.remarks = std::move(summary->remarks);
  return table;
}

}  // namespace mastwise
