#include "app/service/known_tables.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/import_table.hpp"
#include "core/import/program_table.hpp"
#include "core/import/table_header.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"
#include "platform/atomic_save.hpp"
#include "platform/files.hpp"
#include "platform/table_folder.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <span>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::sources {
namespace {

namespace fs = std::filesystem;

std::optional<TableHeader> header_of(std::string_view head) {
  DelimitedReader rows(head, '\0', '#');
  const auto first = rows.next();
  if (!first) return std::nullopt;
  auto header = TableHeader::read(*first);
  if (!header) return std::nullopt;
  return std::move(header).value();
}

std::vector<std::string> columns_of(const TableMapping& mapping) {
  std::vector<std::string> columns;
  for (const AngleRule* rule : {&mapping.latitude, &mapping.longitude}) {
    columns.insert(columns.end(),
                   {rule->column, rule->minutes_column, rule->seconds_column, rule->letter_column});
  }
  for (const auto& [name, rule] : mapping.fields) {
    if (!rule.optional) columns.push_back(rule.column);
  }
  columns.erase(std::remove(columns.begin(), columns.end(), std::string()), columns.end());
  return columns;
}

bool has_columns(const TableHeader& header, const TableMapping& mapping) {
  const auto columns = columns_of(mapping);
  return std::all_of(columns.begin(), columns.end(),
                     [&](const std::string& column) { return header.place(column).has_value(); });
}

// A table without a header line is known by the number of its columns and by rows that can be read.
bool fits_without_header(std::string_view head, const TableHeader& first_row,
                         const TableMapping& mapping) {
  if (first_row.names().size() != mapping.columns.size()) return false;
  const auto table = read_station_table(guess::whole_lines(head), mapping);
  return table && table->stations.size() > table->rejected.size();
}

// A table "x.dat" may also be zipped as "x.zip".
bool has_file(const std::vector<std::string>& names, const std::string& file) {
  const std::string zipped = fs::path(file).replace_extension(".zip").string();
  return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    const std::string bare = fs::path(name).filename().string();
    return words::same_word(bare, file) || words::same_word(bare, zipped);
  });
}

bool has_files(const std::vector<std::string>& names, const JoinedMapping& mapping) {
  return std::all_of(mapping.tables.begin(), mapping.tables.end(), [&](const JoinedTable& table) {
    return table.optional || has_file(names, table.file.file);
  });
}

std::vector<ReadyMapping> ready_mappings() {
  std::vector<std::string> names;
  std::error_code trouble;
  fs::directory_iterator at(platform::assets_folder() + "/mappings", trouble), end;
  for (; !trouble && at != end; at.increment(trouble)) {
    if (at->path().extension() == ".json") names.push_back(at->path().stem().string());
  }
  std::sort(names.begin(), names.end());
  std::vector<ReadyMapping> all;
  for (const std::string& name : names) {
    auto way = load_mapping(name);
    if (way) all.push_back({name, std::move(way).value()});
  }
  return all;
}

}  // namespace

std::vector<ColumnShown> columns_shown(std::string_view head) {
  char separator = '\0';
  std::vector<ColumnShown> shown;
  for (const guess::Column& column : guess::columns_of(head, separator)) {
    shown.push_back({column.name, column.cells.empty() ? std::string() : column.cells.front()});
  }
  return shown;
}

bool is_program_table(std::string_view head) {
  char separator = '\0';
  return guess_program_columns(head) &&
         guess::latitude_column(guess::columns_of(head, separator)).empty();
}

std::optional<ReadyMapping> ready_for_table(std::string_view head) {
  const auto header = header_of(head);
  if (!header) return std::nullopt;
  for (ReadyMapping& ready : ready_mappings()) {
    const auto* mapping = std::get_if<TableMapping>(&ready.way);
    if (mapping == nullptr) continue;
    const bool known = mapping->columns.empty() ? has_columns(*header, *mapping)
                                                : fits_without_header(head, *header, *mapping);
    if (known) return std::move(ready);
  }
  return std::nullopt;
}

std::optional<ReadyMapping> ready_for_set(const std::string& folder_or_zip) {
  const auto files = platform::TableFolder::at(folder_or_zip);
  if (!files) return std::nullopt;
  for (ReadyMapping& ready : ready_mappings()) {
    const auto* mapping = std::get_if<JoinedMapping>(&ready.way);
    if (mapping != nullptr && has_files(files->names(), *mapping)) return std::move(ready);
  }
  return std::nullopt;
}

CountriesNear countries_by(const places::Gazetteer& gazetteer) {
  return [gazetteer](const Position& position) {
    constexpr double kNear_m = 200e3;  // no station is heard farther away; our choice
    constexpr std::size_t kMost = 30;
    std::vector<std::string> countries;
    for (const places::PopulatedPlace& place : gazetteer.largest_within(position, kNear_m, kMost)) {
      if (std::find(countries.begin(), countries.end(), place.country) == countries.end()) {
        countries.push_back(place.country);
      }
    }
    return countries;
  };
}

// A hash of the column names for the file name: FNV-1a of 64 bits (Fowler, Noll, Vo).
std::string MappingMemory::file_for(std::string_view head) const {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  const auto take = [&](char c) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
  };
  if (const auto header = header_of(head)) {
    for (const std::string& name : header->names()) {
      for (const char c : name) take(words::upper(c));
      take('\n');
    }
  }
  return fmt::format("{}/{:016x}.json", folder_, hash);
}

std::optional<TableMapping> MappingMemory::recall(std::string_view head) const {
  const auto text = platform::read_file(file_for(head));
  if (!text) return std::nullopt;
  auto mapping = parse_table_mapping(*text);
  const auto header = header_of(head);
  if (!mapping || !header || !has_columns(*header, *mapping)) return std::nullopt;
  return std::move(mapping).value();
}

Result<Done> MappingMemory::remember(std::string_view head, const TableMapping& mapping) const {
  std::error_code ignored;  // saving reports it
  fs::create_directories(folder_, ignored);
  const std::string text = to_json(mapping);
  return platform::save_atomically(file_for(head), std::as_bytes(std::span(text)));
}

}  // namespace mastwise::sources
