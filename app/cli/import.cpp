#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "core/broadcast/catalog.hpp"
#include "core/broadcast/import_csv.hpp"
#include "core/broadcast/import_table.hpp"
#include "platform/files.hpp"

#include <filesystem>
#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct ImportOptions {
  std::string file, mapping, catalog, date;
  bool json = false;
};

// A mapping by its file, or by its name among those that come with the program.
Result<TableMapping> load_mapping(const std::string& name) {
  const std::string ready = platform::assets_folder() + "/mappings/" + name + ".json";
  const std::string& path = platform::exists(name) ? name : ready;
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  auto mapping = parse_table_mapping(*text);
  if (mapping) return mapping;
  Error error = mapping.error();
  error.where = error.where.empty() ? path : path + ", " + error.where;
  return error;
}

Result<StationTable> read_table(const ImportOptions& options) {
  const auto text = platform::read_file(options.file);
  if (!text) return text.error();
  const std::string name = std::filesystem::path(options.file).filename().string();
  if (options.mapping.empty()) {
    return read_station_csv(*text, {.name = name, .date = options.date});
  }
  auto mapping = load_mapping(options.mapping);
  if (!mapping) return mapping.error();
  if (!options.date.empty()) mapping->source.date = options.date;
  return read_station_table(*text, *mapping);
}

nlohmann::json report_json(const ImportReport& report) {
  nlohmann::json rejected = nlohmann::json::array();
  for (const RejectedRow& row : report.rejected) {
    rejected.push_back({{"line", row.line}, {"reason", row.reason}});
  }
  return {{"source", report.source.name},
          {"source_date", report.source.date},
          {"rows_read", report.rows_read},
          {"stations_added", report.stations_added},
          {"stations_changed", report.stations_changed},
          {"stations_unchanged", report.stations_unchanged},
          {"stations_gone", report.stations_gone},
          {"rows_rejected", report.rejected.size()},
          {"rejected", rejected},
          {"remarks", report.remarks}};
}

std::string report_text(const ImportReport& report) {
  std::string text = fmt::format(
      "{}: {} rows read, {} stations added, {} changed, {} as before, {} gone, {} rows rejected\n",
      report.source.name, report.rows_read, report.stations_added, report.stations_changed,
      report.stations_unchanged, report.stations_gone, report.rejected.size());
  for (const RejectedRow& row : report.rejected) {
    text += fmt::format("  line {}: {}\n", row.line, row.reason);
  }
  for (const std::string& remark : report.remarks) text += "  " + remark + "\n";
  return text;
}

Result<Done> import_stations(const ImportOptions& options) {
  const auto table = read_table(options);
  if (!table) {
    Error error = table.error();
    if (error.where.find(options.file) == std::string::npos && options.mapping.empty()) {
      error.where = error.where.empty() ? options.file : options.file + ", " + error.where;
    }
    return error;
  }
  const auto path = catalog_path(options.catalog);
  if (!path) return path.error();
  auto catalog = Catalog::open(*path);
  if (!catalog) return catalog.error();
  const auto report = catalog->replace_source(*table);
  if (!report) return report.error();
  if (options.json) {
    print(report_json(*report));
  } else {
    std::cout << report_text(*report);
  }
  return Done{};
}

}  // namespace

void add_import(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ImportOptions>();
  CLI::App* verb = program.add_subcommand("import", "Takes in stations or terrain");
  verb->require_subcommand(1);
  add_import_terrain(*verb, chosen);
  CLI::App* stations = verb->add_subcommand(
      "stations", "A station table: the project's own CSV, or a regulator's by a mapping");
  stations->add_option("file", options->file, "the table")->required();
  stations->add_option("--mapping", options->mapping,
                       "which column is what: a file, or a ready one (us_post_auction)");
  stations->add_option("--date", options->date, "the date of the table");
  stations->add_option("--catalog", options->catalog,
                       "the catalog's file in place of the user's own");
  stations->add_flag("--json", options->json, "print one JSON object");
  stations->callback(
      [&chosen, options] { chosen = [options] { return import_stations(*options); }; });
}

}  // namespace mastwise::cli
