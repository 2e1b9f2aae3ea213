#include "app/cli/verbs.hpp"
#include "app/service/startup.hpp"
#include "platform/cover_import.hpp"
#include "platform/files.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace mastwise::cli {
namespace {

struct LandCoverOptions {
  std::vector<std::string> files;
  std::string folder, classes;
  bool json = false;
};

// The class tables to choose from: the built-in ones, or the one of a file. `chosen` is its name.
Result<std::vector<landcover::ClassTable>> tables_for(const std::string& classes,
                                                      std::string& chosen) {
  chosen = classes;
  if (classes.empty() || !platform::exists(classes)) {
    return platform::load_class_tables(service::class_table_folder());
  }
  const auto text = platform::read_file(classes);
  if (!text) return text.error();
  const auto table = landcover::read_class_table(*text);
  if (!table) {
    Error error = table.error();
    error.where = classes + ", " + error.where;
    return error;
  }
  chosen = table->name;
  return std::vector<landcover::ClassTable>{*table};
}

nlohmann::json report_of(const std::string& file, const platform::CoverImport& imported) {
  nlohmann::json cells = nlohmann::json::array();
  for (const terrain::TileCell cell : imported.written) cells.push_back(terrain::cell_name(cell));
  return {{"file", file},
          {"classes", imported.table},
          {"notice", imported.notice},
          {"tiles", cells},
          {"new_areas", imported.new_areas},
          {"unlisted_codes", imported.unlisted_codes}};
}

void print_report(const std::string& file, const platform::CoverImport& imported,
                  const std::string& folder) {
  std::cout << fmt::format("{}: {}, {} tiles, {} new areas, in {}\n{}\n", file, imported.table,
                           imported.written.size(), imported.new_areas, folder, imported.notice);
  if (imported.unlisted_codes.empty()) return;
  std::cout << fmt::format("Codes that {} does not list stay unknown: {}\n", imported.table,
                           fmt::join(imported.unlisted_codes, ", "));
}

Result<Done> import_landcover(const LandCoverOptions& options) {
  std::string folder = options.folder;
  if (folder.empty()) {
    const auto own = service::cover_folder();
    if (!own) return own.error();
    folder = *own;
  }
  std::string chosen;
  const auto tables = tables_for(options.classes, chosen);
  if (!tables) return tables.error();
  nlohmann::json report = nlohmann::json::array();
  for (const std::string& file : options.files) {
    const auto progress = [&](double done) {
      if (!options.json) std::cerr << fmt::format("\r{}: {:3.0f} %", file, 100.0 * done);
      return true;
    };
    const auto imported = platform::import_cover(file, folder, *tables, chosen, progress);
    if (!options.json) std::cerr << '\n';
    if (!imported) return imported.error();
    report.push_back(report_of(file, *imported));
    if (!options.json) print_report(file, *imported, folder);
  }
  if (options.json) std::cout << report.dump(2) << '\n';
  return Done{};
}

}  // namespace

void add_import_landcover(CLI::App& import, Job& chosen) {
  auto options = std::make_shared<LandCoverOptions>();
  CLI::App* verb =
      import.add_subcommand("landcover", "Import land cover rasters (GeoTIFF and others) as tiles");
  verb->add_option("files", options->files, "the rasters")->required();
  verb->add_option(
      "--classes", options->classes,
      "what the codes mean: ESA WorldCover, NLCD, Copernicus LC100, or a class table's "
      "file; without it, by the raster's name, colors and codes");
  verb->add_option("--landcover", options->folder, "folder of tiles to use instead of yours");
  verb->add_flag("--json", options->json, "print JSON");
  verb->callback([&chosen, options] { chosen = [options] { return import_landcover(*options); }; });
}

}  // namespace mastwise::cli
