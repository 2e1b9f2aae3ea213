#include "core/import/program_table.hpp"

#include "core/import/table_header.hpp"
#include "core/text/words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise {
namespace {

struct Columns {
  std::optional<std::size_t> call_sign, facility_id, rf_channel, virtual_channel, name, network,
      language;
};

Result<Columns> columns_of(const TableHeader& header) {
  const Columns columns{header.place("call_sign"),  header.place("facility_id"),
                        header.place("rf_channel"), header.place("virtual_channel"),
                        header.place("name"),       header.place("network"),
                        header.place("language")};
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
  if (read.program.virtual_channel.empty()) return Error{.what = "the virtual channel is empty"};
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

Result<ProgramTable> read_program_csv(std::string_view text, const Source& source) {
  if (const auto error = unreadable_text(text)) return *error;
  DelimitedReader rows(text, '\0', '#');
  const auto first = rows.next();
  if (!first) return Error{.what = "the table is empty", .remedy = "add a header line"};
  const auto header = TableHeader::read(*first);
  if (!header) return header.error();
  const auto columns = columns_of(*header);
  if (!columns) return columns.error();

  ProgramTable table{.source = source};
  while (const auto row = rows.next()) {
    ++table.rows_read;
    auto read = read_row(*row, *columns);
    if (read) {
      table.programs.push_back(std::move(read).value());
    } else {
      table.rejected.push_back({row->line, read.error().message()});
    }
  }
  return table;
}

std::vector<Program> merged_programs(std::vector<Program> own, const std::vector<Program>& added) {
  for (const Program& program : added) {
    const auto same = std::find_if(own.begin(), own.end(), [&](const Program& one) {
      return one.virtual_channel == program.virtual_channel;
    });
    if (same == own.end() || program.virtual_channel.empty()) {
      own.push_back(program);
    } else {
      complete(*same, program);
    }
  }
  return own;
}

}  // namespace mastwise
