#include "core/import/file_scan.hpp"

#include "core/import/table_header.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace mastwise::joined {
namespace {

struct Filter {
  std::size_t place;
  const std::vector<std::string>* cells;
  bool wanted;  // false: the cell must be none of these

  bool passes(const Record& record) const { return one_of(*cells, record.cells[place]) == wanted; }
};

Error in_file(const TableFile& file, Error error) {
  error.where = error.where.empty() ? file.file : file.file + ", " + error.where;
  return error;
}

DelimitedRow as_row(const Record& record) {
  DelimitedRow row{.line = record.line};
  for (const std::string_view cell : record.cells) row.cells.emplace_back(cell);
  return row;
}

Result<std::size_t> place_of(const TableHeader& header, const std::string& column) {
  const auto place = header.place(column);
  if (!place) return header.lacks(column);
  return *place;
}

// The file's columns, bound: which cells are wanted and which filter.
struct Columns {
  std::size_t count = 0;
  std::vector<std::optional<std::size_t>> wanted = {};  // empty: the file lacks it
  std::vector<Filter> filters = {};
  std::vector<std::string> missing = {};
};

Result<Columns> bind(const TableFile& file, const DelimitedRow& names,
                     const std::vector<Wanted>& wanted) {
  const auto header = TableHeader::read(names);
  if (!header) return header.error();
  Columns columns{.count = names.cells.size()};
  for (const Wanted& one : wanted) {
    const auto place = header->place(one.column);
    if (!place && !one.optional) return header->lacks(one.column);
    if (!place) columns.missing.push_back(one.column);
    columns.wanted.push_back(place);
  }
  for (const bool is_wanted : {true, false}) {
    for (const auto& [column, cells] : is_wanted ? file.where : file.where_not) {
      const auto place = place_of(*header, column);
      if (!place) return place.error();
      columns.filters.push_back({*place, &cells, is_wanted});
    }
  }
  return columns;
}

// Header names given by the mapping, or the file's first record.
Result<DelimitedRow> header_of(const TableFile& file, RecordReader& reader, Record& record) {
  if (!file.columns.empty()) return DelimitedRow{.cells = file.columns};
  const auto more = reader.next(record);
  if (!more) return more.error();
  if (!*more) return Error{.what = "the file is empty", .remedy = "add a header line"};
  return as_row(record);
}

}  // namespace

Result<ScanCounts> scan(TableFiles& files, const TableFile& file, const RecordFormat& format,
                        const std::vector<Wanted>& wanted, const JoinProgress& progress,
                        const std::function<Result<Done>(const Row&)>& each) {
  const auto stream = files.open(file.file);
  if (!stream) return stream.error();
  RecordFormat own = format;
  own.end_as_in_first_line = file.columns.empty();
  RecordReader reader(**stream, own);
  Record record;
  const auto names = header_of(file, reader, record);
  if (!names) return in_file(file, names.error());
  const auto columns = bind(file, *names, wanted);
  if (!columns) return in_file(file, columns.error());

  ScanCounts counts{.missing = columns->missing};
  Row row;
  while (true) {
    constexpr std::size_t kEvery = 8192;
    if (counts.records % kEvery == 0 && progress &&
        !progress(file.file, reader.bytes_read(), (*stream)->size())) {
      return Error{.what = "the import was stopped", .remedy = "the catalog is unchanged"};
    }
    const auto more = reader.next(record);
    if (!more) return in_file(file, more.error());
    if (!*more) break;
    ++counts.records;
    // A separator before the record's end adds one empty cell.
    if (record.cells.size() == columns->count + 1 && record.cells.back().empty()) {
      record.cells.pop_back();
    }
    if (record.cells.size() != columns->count) {
      ++counts.malformed;
      continue;
    }
    const auto& filters = columns->filters;
    if (!std::all_of(filters.begin(), filters.end(),
                     [&](const Filter& filter) { return filter.passes(record); })) {
      continue;
    }
    ++counts.passed;
    row.line = record.line;
    row.cells.clear();
    for (const auto& place : columns->wanted) {
      row.cells.push_back(place ? record.cells[*place] : std::string_view());
    }
    if (const auto done = each(row); !done) return in_file(file, done.error());
  }
  counts.malformed += reader.too_long();
  return counts;
}

}  // namespace mastwise::joined
