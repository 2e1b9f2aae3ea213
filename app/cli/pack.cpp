#include "app/cli/arguments.hpp"
#include "app/cli/import_report.hpp"
#include "app/cli/pack_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/packs.hpp"
#include "core/text/iso_time.hpp"
#include "platform/clock.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

// Packs on the command line: make one, show what is in it, check its sums, take it in.
namespace mastwise::cli {
namespace {

struct PackOptions {
  std::string file, name;
  HomeOptions home = {};
  GroundOptions ground = {};
  std::vector<std::string> from = {}, origins = {};
  bool no_stations = false, json = false;
};

platform::PackProgress told_on_screen(const std::string& doing, bool quiet) {
  return [doing, quiet, shown = -1](std::uint64_t done, std::uint64_t all) mutable {
    const int percent = all == 0 ? 100 : static_cast<int>(100 * done / all);
    if (!quiet && percent != shown) std::cerr << fmt::format("\r{}: {} %", doing, percent);
    shown = percent;
    return true;
  };
}

nlohmann::json manifest_json(const pack::Manifest& manifest) {
  nlohmann::json json = nlohmann::json::parse(pack::write_manifest(manifest));
  json["total_bytes"] = pack::total_bytes(manifest);
  return json;
}

std::string origin_text(const pack::Origin& origin) {
  std::string text = origin.source.empty() ? "source not told" : origin.source;
  if (!origin.date.empty()) text += ", " + origin.date;
  return text + (origin.license.empty() ? "; license not told" : "; " + origin.license);
}

std::string manifest_text(const pack::Manifest& manifest) {
  std::string text =
      fmt::format("{}, made {}\n{:.2f} to {:.2f} N, {:.2f} to {:.2f} E\n", manifest.name,
                  manifest.made, manifest.area.south_deg, manifest.area.north_deg,
                  manifest.area.west_deg, manifest.area.east_deg);
  // A line for each kind and origin.
  struct Line {
    std::size_t parts = 0;
    std::uint64_t bytes = 0;
  };
  std::map<std::pair<pack::PartKind, std::string>, Line> lines;
  for (const pack::Part& part : manifest.parts) {
    Line& line = lines[{part.kind, origin_text(part.origin)}];
    ++line.parts;
    line.bytes += part.bytes;
  }
  for (const auto& [what, line] : lines) {
    text += fmt::format("{}: {} files, {:.1f} MB; {}\n", pack::to_text(what.first), line.parts,
                        static_cast<double>(line.bytes) / 1e6, what.second);
  }
  return text;
}

Result<Done> make_pack(const PackOptions& options) {
  const auto home = home_of(options.home);
  if (!home) return home.error();
  const auto ground = ground_of(options.ground);
  if (!ground) return ground.error();
  const auto origins = origins_of(options.origins);
  if (!origins) return origins.error();
  packs::Wish wish{.name = options.name,
                   .made = iso_day(platform::utc_now()),
                   .ground = *ground,
                   .catalog = options.no_stations ? std::string() : home->catalog,
                   .origins = *origins};
  if (wish.name.empty()) wish.name = std::filesystem::path(options.file).stem().string();
  for (const std::string& folder : options.from) {
    if (!std::filesystem::is_directory(folder)) {
      return Error{.what = "this is not a folder",
                   .where = folder,
                   .remedy = "give a folder with elevation or land cover tiles"};
    }
    wish.folders.push_back(folder);
  }
  if (wish.folders.empty()) wish.folders = {home->terrain, home->cover};
  const auto made = packs::make(wish, options.file, told_on_screen(options.file, options.json));
  if (!options.json) std::cerr << '\n';
  if (!made) return made.error();
  if (options.json) {
    print(manifest_json(*made));
  } else {
    std::cout << manifest_text(*made)
              << fmt::format("{}: {:.1f} MB\n", options.file,
                             static_cast<double>(std::filesystem::file_size(options.file)) / 1e6);
  }
  return Done{};
}

Result<Done> show_pack(const PackOptions& options) {
  const auto file = platform::PackFile::open(options.file);
  if (!file) return file.error();
  if (options.json) {
    print(manifest_json(file->manifest()));
  } else {
    std::cout << manifest_text(file->manifest());
  }
  return Done{};
}

Result<Done> check_pack(const PackOptions& options) {
  auto file = platform::PackFile::open(options.file);
  if (!file) return file.error();
  for (const pack::Part& part : file->manifest().parts) {
    if (const auto bytes = file->bytes(part); !bytes) return bytes.error();
  }
  std::cout << fmt::format("{}: all {} parts are as they should be\n", options.file,
                           file->manifest().parts.size());
  return Done{};
}

Result<Done> take_pack(const PackOptions& options) {
  const auto home = home_of(options.home);
  if (!home) return home.error();
  auto file = platform::PackFile::open(options.file);
  if (!file) return file.error();
  const auto taken = packs::take(*file, *home, told_on_screen(options.file, options.json));
  if (!options.json) std::cerr << '\n';
  if (!taken) return taken.error();
  std::size_t added = 0, unchanged = 0;
  nlohmann::json stations = nlohmann::json::array();
  for (const ImportReport& report : taken->stations) {
    added += report.stations_added;
    unchanged += report.stations_unchanged;
    stations.push_back(report_json(report));
  }
  if (options.json) {
    print({{"tiles_new", taken->tiles_new},
           {"tiles_same", taken->tiles_same},
           {"tiles_kept_finer", taken->tiles_kept_finer},
           {"stations_added", added},
           {"stations_unchanged", unchanged},
           {"stations", stations}});
    return Done{};
  }
  std::cout << fmt::format(
      "{}: {} new tiles, {} already on board, {} kept because they are finer; {} new stations, {} "
      "unchanged\n",
      file->manifest().name, taken->tiles_new, taken->tiles_same, taken->tiles_kept_finer, added,
      unchanged);
  for (const ImportReport& report : taken->stations) {
    if (report.renews) std::cout << report_text(report);
  }
  return Done{};
}

void add_home(CLI::App& verb, HomeOptions& home) {
  add_catalog_option(verb, home);
  add_terrain_option(verb, home);
  add_cover_option(verb, home);
}

CLI::App* add_part(CLI::App& verb, Job& chosen, const std::shared_ptr<PackOptions>& options,
                   const char* name, const char* about, Result<Done> (*work)(const PackOptions&)) {
  CLI::App* part = verb.add_subcommand(name, about);
  part->add_option("file", options->file, "the pack, such as northeast.mwpack")->required();
  part->callback([&chosen, options, work] { chosen = [options, work] { return work(*options); }; });
  return part;
}

}  // namespace

void add_pack(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<PackOptions>();
  CLI::App* verb = program.add_subcommand(
      "pack", "All that a region needs in one file: make, show, check, take");
  verb->require_subcommand(1);
  CLI::App* make = add_part(*verb, chosen, options, "make",
                            "Pack the stations, elevation and land cover of a region", make_pack);
  add_ground_options(*make, options->ground);
  make->add_option("--from", options->from,
                   "folders of tiles to pack instead of yours; may be given several times");
  make->add_option("--name", options->name, "what people call it (default: the file's name)");
  make->add_option("--origin", options->origins,
                   "where a kind of data came from, as KIND=SOURCE;DATE;LICENSE, where KIND is "
                   "terrain, landcover or stations");
  make->add_flag("--no-stations", options->no_stations, "tiles only");
  add_home(*make, options->home);
  make->add_flag("--json", options->json, "print one JSON object");
  add_part(*verb, chosen, options, "show", "What is in a pack, and where it came from", show_pack)
      ->add_flag("--json", options->json, "print one JSON object");
  add_part(*verb, chosen, options, "check", "Read a whole pack and compare its sums", check_pack);
  CLI::App* take = add_part(*verb, chosen, options, "take",
                            "Take a pack in; what is already on board stays", take_pack);
  add_home(*take, options->home);
  take->add_flag("--json", options->json, "print one JSON object");
}

}  // namespace mastwise::cli
