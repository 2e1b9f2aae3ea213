#include "app/cli/verbs.hpp"
#include "app/service/startup.hpp"
#include "platform/raster_import.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace mastwise::cli {
namespace {

struct TerrainOptions {
  std::vector<std::string> files;
  std::string folder;
  bool json = false;
};

Result<Done> import_terrain(const TerrainOptions& options) {
  std::string folder = options.folder;
  if (folder.empty()) {
    const auto own = service::terrain_folder();
    if (!own) return own.error();
    folder = *own;
  }
  nlohmann::json report = nlohmann::json::array();
  for (const std::string& file : options.files) {
    const auto progress = [&](double done) {
      if (!options.json) std::cerr << fmt::format("\r{}: {:3.0f} %", file, 100.0 * done);
      return true;
    };
    const auto imported = platform::import_raster(file, folder, progress);
    if (!options.json) std::cerr << '\n';
    if (!imported) return imported.error();
    nlohmann::json cells = nlohmann::json::array();
    for (const terrain::TileCell cell : imported->written) {
      cells.push_back(terrain::cell_name(cell));
    }
    report.push_back({{"file", file}, {"tiles", cells}, {"new_heights", imported->new_heights}});
  }
  if (options.json) {
    std::cout << report.dump(2) << '\n';
    return Done{};
  }
  for (const auto& file : report) {
    std::cout << fmt::format("{}: {} tiles, {} new heights, in {}\n",
                             file["file"].get<std::string>(), file["tiles"].size(),
                             file["new_heights"].get<std::size_t>(), folder);
  }
  return Done{};
}

}  // namespace

void add_import_terrain(CLI::App& import, Job& chosen) {
  auto options = std::make_shared<TerrainOptions>();
  CLI::App* verb = import.add_subcommand(
      "terrain", "Import elevation rasters (GeoTIFF, DTED and others) as tiles");
  verb->add_option("files", options->files, "the rasters")->required();
  verb->add_option("--terrain", options->folder, "folder of tiles to use instead of yours");
  verb->add_flag("--json", options->json, "print JSON");
  verb->callback([&chosen, options] { chosen = [options] { return import_terrain(*options); }; });
}

}  // namespace mastwise::cli
