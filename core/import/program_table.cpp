#include "core/import/program_table.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/table_header.hpp"
#include "core/text/words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise {
namespace {

// A table with more is refused, so that reading any takes less than 200 MB: all the world's
// television stations have fewer programs [own estimate].
constexpr std::size_t kMostPrograms = 200'000;
constexpr std::size_t kMostRejectedPrograms = 50'000;

struct Columns {
  std::optional<std::size_t> call_sign, facility_id, rf_channel, virtual_channel, name, network,
      language;
};

// The first column whose name fits the field, of those not taken yet.
std::string named_column(const std::vector<guess::Column>& columns, std::string_view field,
                         std::vector<std::string>& taken) {
  for (const guess::Column* column : guess::named(columns, field)) {
    if (std::find(taken.begin(), taken.end(), column->name) != taken.end()) continue;
    taken.push_back(column->name);
    return column->name;
  }
  return {};
}

Result<Columns> columns_of(const TableHeader& header, const ProgramColumns& names) {
  const auto place = [&](const std::string& name) {
    return name.empty() ? std::nullopt : header.place(name);
  };
  const Columns columns{place(names.call_sign),  place(names.facility_id),
                        place(names.rf_channel), place(names.virtual_channel),
                        place(names.name),       place(names.network),
                        place(names.language)};
  if (!columns.virtual_channel) return header.lacks("virtual_channel");
  if (!columns.call_sign && !columns.facility_id) return header.lacks("call_sign");
  return columns;
}

Result<StationProgram> read_row(const DelimitedRow& row, const Columns& columns) {
  if (!row.fault.empty()) return Error{.what = row.fault};
  const auto cell = [&](std::optional<std::size_t> place) {
    const bool there = place && *place < row.cells.size();
    return there ? std::string(words::trimmed(row.cells[*place])) : std::string();
  };
  StationProgram read{.call_sign = cell(columns.call_sign),
                      .facility_id = cell(columns.facility_id),
                      .program = {cell(columns.virtual_channel), cell(columns.name),
                                  cell(columns.network), cell(columns.language)}};
  if (read.call_sign.empty() && read.facility_id.empty()) {
    return Error{.what = "both call sign and facility number are empty"};
  }
  if (const std::string text = cell(columns.rf_channel); !text.empty()) {
    const auto channel = parse_rf_channel(text);
    if (!channel) return Error{.what = "rf_channel: " + channel.error().message()};
    read.rf_channel = *channel;
  }
  return read;
}

void complete(Program& own, const Program& added) {
  for (const auto member : {&Program::name, &Program::network, &Program::language}) {
    if (!(added.*member).empty()) own.*member = added.*member;
  }
}

}  // namespace

ProgramColumns program_columns_named(std::string_view head) {
  char separator = '\0';
  const auto all = guess::columns_of(head, separator);
  std::vector<std::string> taken;
  ProgramColumns columns;
  columns.virtual_channel = named_column(all, "virtual_channel", taken);
  columns.call_sign = named_column(all, "call_sign", taken);
  columns.facility_id = named_column(all, "facility_id", taken);
  columns.rf_channel = named_column(all, "rf_channel", taken);
  columns.network = named_column(all, "network", taken);
  columns.name = named_column(all, "name", taken);
  columns.language = named_column(all, "language", taken);
  return columns;
}

std::optional<ProgramColumns> guess_program_columns(std::string_view head) {
  ProgramColumns columns = program_columns_named(head);
  const bool of_stations = columns.call_sign.empty() && columns.facility_id.empty();
  if (columns.virtual_channel.empty() || of_stations) return std::nullopt;
  return columns;
}

Result<ProgramTable> read_program_csv(std::string_view text, const Source& source,
                                      const std::optional<ProgramColumns>& given) {
  DelimitedReader rows(text, '\0', '#');
  const auto first = rows.next();
  if (!first) {
    return Error{.what = "the table is empty",
                 .remedy = "choose a file with a header line and rows"};
  }
  if (const auto error = unreadable_text(first->cells)) return *error;
  const auto header = TableHeader::read(*first);
  if (!header) return header.error();
  const auto columns = columns_of(*header, given ? *given : program_columns_named(text));
  if (!columns) return columns.error();

  ProgramTable table{.source = source};
  while (const auto row = rows.next()) {
    ++table.rows_read;
    auto read = read_row(*row, *columns);
    if (read && read->program == Program{.language = read->program.language}) {
      ++table.rows_without_program;
    } else if (read) {
      table.programs.push_back(std::move(read).value());
    } else {
      table.rejected.push_back({row->line, read.error().message()});
    }
    if (table.programs.size() > kMostPrograms) {
      return Error{.what = fmt::format("the table has more than {} programs", kMostPrograms),
                   .remedy = "split it and import the parts you need"};
    }
    if (table.rejected.size() > kMostRejectedPrograms) {
      return Error{.what = fmt::format("more than {} rows cannot be read", kMostRejectedPrograms),
                   .where = fmt::format("line {}", table.rejected.front().line),
                   .remedy = "the first one: " + table.rejected.front().reason};
    }
  }
  return table;
}

std::vector<Program> merged_programs(std::vector<Program> own, const std::vector<Program>& added) {
  for (const Program& program : added) {
    const auto same = std::find_if(own.begin(), own.end(), [&](const Program& one) {
      return program.virtual_channel.empty() ? one == program
                                             : one.virtual_channel == program.virtual_channel;
    });
    if (same == own.end()) {
      own.push_back(program);
    } else {
      complete(*same, program);
    }
  }
  return own;
}

}  // namespace mastwise
