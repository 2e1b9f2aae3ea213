#include "app/cli/arguments.hpp"
#include "app/cli/import_report.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/station_source.hpp"
#include "core/catalog/catalog.hpp"
#include "core/import/program_table.hpp"

#include <iostream>
#include <memory>

namespace mastwise::cli {
namespace {

struct Options {
  std::string file, catalog, date;
  bool json = false;
};

Result<Done> import_programs(const Options& options) {
  const auto text = sources::read_whole(options.file);
  if (!text) return text.error();
  const auto table = read_program_csv(*text, sources::source_of(options.file, options.date));
  if (!table) {
    Error error = table.error();
    error.where = error.where.empty() ? options.file : options.file + ", " + error.where;
    return error;
  }
  const auto path = catalog_path(options.catalog);
  if (!path) return path.error();
  auto catalog = Catalog::open(*path);
  if (!catalog) return catalog.error();
  const auto report = catalog->replace_programs(*table);
  if (!report) return report.error();
  if (options.json) {
    print(report_json(*report));
  } else {
    std::cout << report_text(*report);
  }
  return Done{};
}

}  // namespace

void add_import_programs(CLI::App& import, Job& chosen) {
  auto options = std::make_shared<Options>();
  CLI::App* verb = import.add_subcommand(
      "programs",
      "Import a table of programs (call_sign or facility_id, virtual_channel, name, network, "
      "language); they stay when you import the stations again");
  verb->add_option("file", options->file, "the table")->required();
  verb->add_option("--date", options->date, "date of the table");
  verb->add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return import_programs(*options); }; });
}

}  // namespace mastwise::cli
