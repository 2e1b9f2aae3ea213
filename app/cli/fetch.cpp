#include "app/service/fetch.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/import_report.hpp"
#include "app/cli/pack_options.hpp"
#include "app/cli/verbs.hpp"
#include "platform/files.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct FetchOptions {
  GroundOptions ground = {};
  HomeOptions home = {};
  std::string set, base;
  bool dry_run = false, yes = false, keep = false, json = false;
};

std::string megabytes(std::uint64_t bytes) {
  return fmt::format("{:.1f} MB", static_cast<double>(bytes) / 1e6);
}

// All that somebody needs to know before saying yes.
std::string offer_text(const fetch::Wish& wish, const fetch::Plan& plan) {
  const publishers::DataSet& set = wish.set;
  std::string text = fmt::format("{}, from: {}\nLicense: {}\nNotice: {}\n", set.name, set.publisher,
                                 set.license, set.notice);
  text += fmt::format("Date of the data: {}\n", set.date.empty() ? "today's" : set.date);
  if (plan.cells_on_board > 0) {
    text += fmt::format("On board already: {} of {} squares of one degree\n", plan.cells_on_board,
                        wish.cells.size());
  }
  if (plan.cells_empty > 0) {
    text += fmt::format(
        "No data there, as an earlier fetch found: {} squares (to ask again, delete {})\n",
        plan.cells_empty, (wish.downloads / fetch::kOutcomes).string());
  }
  if (plan.files.empty()) return text + "Nothing to fetch.\n";
  text += fmt::format("To fetch: {} {}, {}\n", plan.files.size(),
                      plan.files.size() == 1 ? "file" : "files",
                      plan.usual_bytes == 0 ? "size not known before"
                                            : "usually about " + megabytes(plan.usual_bytes));
  text += fmt::format("First address: {}\n",
                      publishers::at_base(plan.files.front().address, wish.base));
  if (set.refuses_scripts) {
    text += fmt::format(
        "This publisher often refuses apps. The sure way: {}, then run mastwise import {} FILE "
        "--mapping {}\n",
        set.by_hand, pack::to_text(set.kind), set.mapping);
  }
  return text;
}

bool agrees() {
  std::cout << "Fetch this now? It uses your connection. [y/N] " << std::flush;
  std::string answer;
  std::getline(std::cin, answer);
  return answer == "y" || answer == "Y" || answer == "yes";
}

fetch::Watch shown_on_screen() {
  return [last = std::string()](const fetch::Progress& now) mutable {
    const std::string line =
        now.importing
            ? fmt::format("importing, {:3.0f} %",
                          now.all_bytes == 0 ? 0.0
                                             : 100.0 * static_cast<double>(now.done_bytes) /
                                                   static_cast<double>(now.all_bytes))
            : fmt::format("{} of {}, {:.0f} kB/s", megabytes(now.done_bytes),
                          now.all_bytes == 0 ? "?" : megabytes(now.all_bytes),
                          now.bytes_per_s / 1e3);
    const std::string whole =
        fmt::format("\r{}/{} {}: {}   ", now.file + 1, now.files, now.name, line);
    if (whole != last) std::cerr << whole;
    last = whole;
    return true;
  };
}

std::string done_text(const fetch::Fetched& done) {
  std::string text = fmt::format("{} {} fetched and imported, {} over the line\n", done.files,
                                 done.files == 1 ? "file" : "files", megabytes(done.fetched_bytes));
  if (!done.tiles.empty()) text += fmt::format("{} tiles made or completed\n", done.tiles.size());
  for (const ImportReport& report : done.stations) text += report_text(report);
  for (const std::string& name : done.no_file) {
    text +=
        fmt::format("No file there: {}. The publisher has none for squares all at sea.\n", name);
  }
  for (const auto& file : done.kept) text += fmt::format("Kept: {}\n", file.string());
  return text;
}

nlohmann::json offer_json(const fetch::Wish& wish, const fetch::Plan& plan) {
  const publishers::DataSet& set = wish.set;
  nlohmann::json files = nlohmann::json::array();
  for (const publishers::RemoteFile& file : plan.files) {
    nlohmann::json squares = nlohmann::json::array();
    for (const terrain::TileCell cell : file.cells) squares.push_back(terrain::cell_name(cell));
    files.push_back(
        {{"address", publishers::at_base(file.address, wish.base)}, {"squares", squares}});
  }
  return {
      {"set", set.id},
      {"name", set.name},
      {"publisher", set.publisher},
      {"license", set.license},
      {"notice", set.notice},
      {"date", set.date},
      {"files", files},
      {"usual_bytes", plan.usual_bytes == 0 ? nlohmann::json() : nlohmann::json(plan.usual_bytes)},
      {"squares_on_board", plan.cells_on_board},
      {"squares_without_data", plan.cells_empty}};
}

nlohmann::json done_json(const fetch::Fetched& done) {
  nlohmann::json tiles = nlohmann::json::array(), stations = nlohmann::json::array(),
                 kept = nlohmann::json::array();
  for (const terrain::TileCell cell : done.tiles) tiles.push_back(terrain::cell_name(cell));
  for (const ImportReport& report : done.stations) stations.push_back(report_json(report));
  for (const auto& file : done.kept) kept.push_back(file.string());
  return {{"files", done.files}, {"bytes", done.fetched_bytes}, {"without_file", done.no_file},
          {"tiles", tiles},      {"stations", stations},        {"kept", kept}};
}

Result<fetch::Wish> wish_of(const FetchOptions& options, pack::PartKind kind) {
  const auto sets = fetch::load_publishers();
  if (!sets) return sets.error();
  auto set = publishers::choose_set(*sets, kind, options.set);
  if (!set) return set.error();
  const auto home = home_of(options.home);
  if (!home) return home.error();
  const auto data = platform::data_folder();
  if (!data) return data.error();
  fetch::Wish wish{.set = std::move(set).value(),
                   .home = *home,
                   .downloads = *data + "/downloads",
                   .base = options.base,
                   .keep = options.keep};
  if (wish.set.square_deg > 0) {
    const auto ground = ground_of(options.ground);
    if (!ground) return ground.error();
    wish.cells = packs::cells_of(*ground);
  }
  return wish;
}

Result<Done> fetch_data(const FetchOptions& options, pack::PartKind kind) {
  const auto wish = wish_of(options, kind);
  if (!wish) return wish.error();
  const fetch::Plan plan = fetch::plan(*wish);
  if (options.json) {
    nlohmann::json told = {{"offer", offer_json(*wish, plan)}, {"fetched", nullptr}};
    if (options.yes && !options.dry_run && !plan.files.empty()) {
      const auto done = fetch::run(*wish, plan);
      if (!done) return done.error();
      told["fetched"] = done_json(*done);
    }
    print(told);
    return Done{};
  }
  std::cout << offer_text(*wish, plan);
  if (options.dry_run || plan.files.empty()) return Done{};
  if (!options.yes && !agrees()) {
    std::cout << "Nothing was fetched.\n";
    return Done{};
  }
  const auto done = fetch::run(*wish, plan, shown_on_screen());
  std::cerr << '\n';
  if (!done) return done.error();
  std::cout << done_text(*done);
  return Done{};
}

CLI::App* add_kind(CLI::App& verb, Job& chosen, const std::shared_ptr<FetchOptions>& options,
                   pack::PartKind kind, const char* about) {
  CLI::App* part = verb.add_subcommand(std::string(pack::to_text(kind)), about);
  part->add_option("--set", options->set, "another data set than the first of its kind");
  part->add_option("--base", options->base,
                   "a server to ask instead of the publisher's; plain http only on this machine");
  part->add_flag("--dry-run", options->dry_run, "print what would be fetched; connect to nobody");
  part->add_flag("--yes", options->yes, "do not ask before fetching");
  part->add_flag("--keep", options->keep, "keep the downloaded files after their import");
  part->add_flag("--json", options->json,
                 "print one JSON object; without --yes only what would be fetched");
  part->callback([&chosen, options, kind] {
    if (kind != pack::PartKind::stations && options->ground.around.empty() &&
        options->ground.box.empty()) {
      wrong_usage({.what = "no region is given",
                   .where = "fetch",
                   .remedy = "add --around PLACE --radius-km 250, or --bbox S,W,N,E"});
    }
    chosen = [options, kind] { return fetch_data(*options, kind); };
  });
  return part;
}

}  // namespace

void add_fetch(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<FetchOptions>();
  CLI::App* verb = program.add_subcommand(
      "fetch", "Get stations, terrain or land cover from their publishers, over the network");
  verb->require_subcommand(1);
  CLI::App* stations = add_kind(*verb, chosen, options, pack::PartKind::stations,
                                "The regulator's dump of licenses (US)");
  add_catalog_option(*stations, options->home);
  CLI::App* terrain = add_kind(*verb, chosen, options, pack::PartKind::terrain,
                               "Elevation: glo_90 (default) or glo_30");
  add_ground_options(*terrain, options->ground);
  add_terrain_option(*terrain, options->home);
  CLI::App* cover = add_kind(*verb, chosen, options, pack::PartKind::landcover, "Land cover");
  add_ground_options(*cover, options->ground);
  add_cover_option(*cover, options->home);
}

}  // namespace mastwise::cli
