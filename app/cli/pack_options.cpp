#include "app/cli/pack_options.hpp"

#include "app/cli/arguments.hpp"
#include "app/service/startup.hpp"
#include "core/text/words.hpp"

#include <array>
#include <charconv>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == separator) {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  for (std::string& part : parts) part = words::trimmed(part);
  return parts;
}

Result<packs::Ground> box_of(const std::string& text) {
  const auto parts = split(text, ',');
  std::array<double, 4> sides{};
  bool whole = parts.size() == sides.size();
  for (std::size_t i = 0; whole && i < sides.size(); ++i) {
    const char* end = parts[i].data() + parts[i].size();
    const auto [rest, fault] = std::from_chars(parts[i].data(), end, sides[i]);
    whole = fault == std::errc() && rest == end;
  }
  if (!whole) {
    return Error{.what = fmt::format("\"{}\" is not four numbers", text),
                 .where = "--bbox",
                 .remedy = "give south,west,north,east in degrees, such as 41,-76,46,-69"};
  }
  return packs::box(sides[0], sides[1], sides[2], sides[3]);
}

}  // namespace

void add_ground_options(CLI::App& verb, GroundOptions& options) {
  CLI::Option* around = verb.add_option("--around", options.around, "the middle, in any notation");
  verb.add_option("--radius-km", options.radius_km, "how far around it (default: 250)")
      ->check(CLI::Range(1.0, 1000.0))
      ->needs(around);
  verb.add_option("--bbox", options.box, "instead: south,west,north,east in degrees")
      ->excludes(around);
}

Result<packs::Ground> ground_of(const GroundOptions& options) {
  if (!options.box.empty()) return box_of(options.box);
  if (options.around.empty()) {
    return Error{.what = "no region is given",
                 .where = "--around",
                 .remedy = "add --around PLACE --radius-km 250, or --bbox S,W,N,E"};
  }
  const auto middle = position_argument("--around", options.around);
  if (!middle) return middle.error();
  return packs::around(*middle, 1000.0 * options.radius_km);
}

void add_catalog_option(CLI::App& verb, HomeOptions& options) {
  verb.add_option("--catalog", options.catalog, "catalog file to use instead of yours");
}

void add_terrain_option(CLI::App& verb, HomeOptions& options) {
  verb.add_option("--terrain", options.terrain,
                  "folder of elevation tiles to use instead of yours");
}

void add_cover_option(CLI::App& verb, HomeOptions& options) {
  verb.add_option("--landcover", options.cover,
                  "folder of land cover tiles to use instead of yours");
}

Result<packs::Home> home_of(const HomeOptions& options) {
  const auto terrain = options.terrain.empty() ? service::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();
  const auto cover = options.cover.empty() ? service::cover_folder() : options.cover;
  if (!cover) return cover.error();
  const auto catalog = catalog_path(options.catalog);
  if (!catalog) return catalog.error();
  return packs::Home{.terrain = *terrain, .cover = *cover, .catalog = *catalog};
}

Result<std::map<pack::PartKind, pack::Origin>> origins_of(const std::vector<std::string>& texts) {
  using pack::PartKind;
  std::map<PartKind, pack::Origin> origins;
  for (const std::string& text : texts) {
    const std::size_t equals = std::min(text.find('='), text.size());
    bool known = false;
    for (const PartKind kind : {PartKind::terrain, PartKind::landcover, PartKind::stations}) {
      if (text.substr(0, equals) != pack::to_text(kind) || equals == text.size()) continue;
      auto parts = split(text.substr(equals + 1), ';');
      parts.resize(3);
      origins[kind] = {.source = parts[0], .date = parts[1], .license = parts[2]};
      known = true;
    }
    if (!known) {
      return Error{.what = fmt::format("\"{}\" does not begin with a kind of data", text),
                   .where = "--origin",
                   .remedy = "write terrain=, landcover= or stations=, then SOURCE;DATE;LICENSE"};
    }
  }
  return origins;
}

}  // namespace mastwise::cli
