#include "app/service/packs.hpp"

#include "core/geo/geodesic.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/write_csv.hpp"
#include "core/terrain/squares.hpp"
#include "platform/atomic_save.hpp"
#include "platform/sha256.hpp"
#include "platform/tile_index.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <span>

#include <fmt/format.h>

namespace mastwise::packs {
namespace {

namespace fs = std::filesystem;
using pack::Part;
using pack::PartKind;

struct TileKind {
  PartKind kind;
  const platform::TileNaming& naming;
};
const std::array kTileKinds{TileKind{PartKind::terrain, platform::kTerrainTiles},
                            TileKind{PartKind::landcover, platform::kCoverTiles}};

// East of the west side, [0, 360).
double east_of(double west_deg, double longitude_deg) {
  const double east = std::fmod(longitude_deg - west_deg, 360.0);
  return east < 0.0 ? east + 360.0 : east;
}

double width_deg(const pack::Area& area) {
  const double width = east_of(area.west_deg, area.east_deg);
  return width == 0.0 && area.east_deg != area.west_deg ? 360.0 : width;
}

bool contains(const Ground& ground, Position position) {
  if (ground.circle) {
    return path_between(ground.circle->middle, position).distance_m <= ground.circle->radius_m;
  }
  const pack::Area& box = ground.box;
  return position.latitude_deg() >= box.south_deg && position.latitude_deg() <= box.north_deg &&
         east_of(box.west_deg, position.longitude_deg()) <= width_deg(box);
}

std::vector<platform::PackInput> tiles_in(const Wish& wish,
                                          const std::vector<terrain::TileCell>& cells) {
  std::vector<platform::PackInput> inputs;
  for (const TileKind& kind : kTileKinds) {
    std::map<terrain::TileCell, fs::path> found;
    for (const fs::path& folder : wish.folders) {
      for (const auto& [cell, file] : platform::index_tiles(folder, kind.naming).files) {
        if (!file.zipped) found.emplace(cell, file.path);
      }
    }
    const auto origin = wish.origins.find(kind.kind);
    for (const terrain::TileCell cell : cells) {
      const auto tile = found.find(cell);
      if (tile == found.end()) continue;
      inputs.push_back({.kind = kind.kind,
                        .name = pack::tile_file(kind.kind, cell),
                        .origin = origin == wish.origins.end() ? pack::Origin() : origin->second,
                        .file = tile->second});
    }
  }
  return inputs;
}

// The middle of a box and the distance to its farthest corner.
Ground::Circle circle_about(const pack::Area& box) {
  const double east = box.west_deg + width_deg(box) / 2.0;
  const auto place = [](double latitude_deg, double longitude_deg) {
    return *Position::at_deg(latitude_deg, std::remainder(longitude_deg, 360.0));
  };
  const Position middle = place((box.south_deg + box.north_deg) / 2.0, east);
  double radius_m = 0.0;
  for (const double latitude : {box.south_deg, box.north_deg}) {
    for (const double longitude : {box.west_deg, box.east_deg}) {
      radius_m = std::max(radius_m, path_between(middle, place(latitude, longitude)).distance_m);
    }
  }
  // A parallel bulges away from the chord between its corners.
  return {middle, 1.1 * radius_m + 1000.0};
}

Result<std::vector<platform::PackInput>> stations_in(const Wish& wish) {
  std::vector<platform::PackInput> inputs;
  if (wish.catalog.empty() || !fs::exists(wish.catalog)) return inputs;
  auto catalog = Catalog::open(wish.catalog);
  if (!catalog) return catalog.error();
  const Ground::Circle reach = wish.ground.circle.value_or(circle_about(wish.ground.box));
  const auto near =
      catalog->nearest(reach.middle, reach.radius_m, std::numeric_limits<std::int32_t>::max());
  if (!near) return near.error();
  std::map<std::string, std::vector<Station>> by_source;
  std::map<std::string, Source> sources;
  for (const NearStation& one : *near) {
    if (!contains(wish.ground, one.station.position)) continue;
    const Source& source = one.station.provenance.source;
    sources.emplace(source.name, source);
    by_source[source.name].push_back(one.station);
  }
  const auto license = wish.origins.find(PartKind::stations);
  for (auto& [name, stations] : by_source) {
    std::sort(stations.begin(), stations.end(),
              [](const Station& a, const Station& b) { return a.id < b.id; });
    inputs.push_back(
        {.kind = PartKind::stations,
         .name = pack::station_file(inputs.size() + 1),
         .origin = {.source = name,
                    .date = sources[name].date,
                    .license =
                        license == wish.origins.end() ? std::string() : license->second.license},
         .text = write_station_csv(stations)});
  }
  return inputs;
}

const fs::path& folder_of(const Home& home, PartKind kind) {
  return kind == PartKind::terrain ? home.terrain : home.cover;
}

// What is on board of a part's cell.
enum class OnBoard { nothing, same, finer };
class Board {
 public:
  explicit Board(const Home& home) {
    for (const TileKind& kind : kTileKinds) {
      index_[kind.kind] = platform::index_tiles(folder_of(home, kind.kind), kind.naming).files;
    }
  }
  OnBoard has(const Part& part) const {
    const auto& files = index_.at(part.kind);
    const auto found = files.find(*pack::cell_of(part));
    if (found == files.end() || found->second.zipped) return OnBoard::nothing;
    if (found->second.size_bytes > part.bytes) return OnBoard::finer;
    if (found->second.size_bytes < part.bytes) return OnBoard::nothing;
    const auto sum = platform::sha256_of(found->second.path);
    return sum && *sum == part.sha256 ? OnBoard::same : OnBoard::nothing;
  }

 private:
  std::map<PartKind, std::map<terrain::TileCell, platform::TileFile>> index_;
};

// The same pack finds its folder again.
fs::path workbench(const Home& home, PartKind kind, const pack::Manifest& manifest) {
  platform::Sha256 sum;
  for (const Part& part : manifest.parts) sum.add(std::as_bytes(std::span(part.sha256)));
  return folder_of(home, kind) / (".pack-" + sum.take_hex().substr(0, 16));
}

fs::path unpacked(const Home& home, const pack::Manifest& manifest, const Part& part) {
  return workbench(home, part.kind, manifest) / fs::path(part.file).filename();
}

bool is_unpacked(const fs::path& file, const Part& part) {
  std::error_code missing;
  if (fs::file_size(file, missing) != part.bytes || missing) return false;
  const auto sum = platform::sha256_of(file);
  return sum && *sum == part.sha256;
}

// What taking a part in has to do.
struct Need {
  OnBoard there = OnBoard::nothing;  // of a tile
  bool unpacked = false;             // by an earlier attempt
};

// One for each part. Reads the tiles on board that are as large as the pack's.
std::vector<Need> needs_of(const pack::Manifest& manifest, const Home& home) {
  const Board board(home);
  std::vector<Need> needs;
  for (const Part& part : manifest.parts) {
    Need need;
    if (part.kind != PartKind::stations) {
      need.there = board.has(part);
      need.unpacked =
          need.there == OnBoard::nothing && is_unpacked(unpacked(home, manifest, part), part);
    }
    needs.push_back(need);
  }
  return needs;
}

std::uint64_t bytes_for(const pack::Manifest& manifest, const std::vector<Need>& needs) {
  std::uint64_t bytes = 0;
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const Part& part = manifest.parts[i];
    // A catalog takes about twice its table.
    if (part.kind == PartKind::stations) {
      bytes += 2 * part.bytes;
    } else if (needs[i].there == OnBoard::nothing && !needs[i].unpacked) {
      bytes += part.bytes;
    }
  }
  return bytes;
}

// The free bytes where a folder is or will be.
std::uint64_t free_bytes(fs::path folder) {
  std::error_code error;
  while (!fs::exists(folder, error) && folder.has_relative_path()) folder = folder.parent_path();
  const auto space = fs::space(folder, error);
  return error ? std::numeric_limits<std::uint64_t>::max() : space.available;
}

// Tiles to place, and stations to put in.
struct Load {
  std::vector<Part> tiles = {};
  std::vector<StationTable> stations = {};
  Taken taken = {};
};

Result<StationTable> stations_of(platform::PackFile& file, const Part& part) {
  const auto bytes = file.bytes(part);
  if (!bytes) return bytes.error();
  const Source source{.name = fmt::format("{} ({})", part.origin.source, file.manifest().name),
                      .date = part.origin.date};
  auto table =
      read_station_csv({reinterpret_cast<const char*>(bytes->data()), bytes->size()}, source);
  if (!table) {
    Error error = table.error();
    error.where = file.path().string() + ", " + part.file;
    return error;
  }
  return table;
}

Result<Load> unpack_all(platform::PackFile& file, const Home& home, const std::vector<Need>& needs,
                        const platform::PackProgress& progress) {
  const pack::Manifest& manifest = file.manifest();
  const std::uint64_t all = pack::total_bytes(manifest);
  Load load;
  std::uint64_t done = 0;
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const Part& part = manifest.parts[i];
    if (progress && !progress(done, all)) {
      return Error{.what = "stopped: nothing on board has changed",
                   .where = file.path().string(),
                   .remedy = "import the pack again: it goes on from where it stopped"};
    }
    done += part.bytes;
    if (part.kind == PartKind::stations) {
      auto table = stations_of(file, part);
      if (!table) return table.error();
      load.stations.push_back(std::move(table).value());
      continue;
    }
    const OnBoard there = needs[i].there;
    if (there == OnBoard::same) ++load.taken.tiles_same;
    if (there == OnBoard::finer) ++load.taken.tiles_kept_finer;
    if (there != OnBoard::nothing) continue;
    ++load.taken.tiles_new;
    load.tiles.push_back(part);
    if (needs[i].unpacked) continue;
    const fs::path to = unpacked(home, manifest, part);
    const auto bytes = file.bytes(part);
    if (!bytes) return bytes.error();
    std::error_code failed;
    fs::create_directories(to.parent_path(), failed);
    if (const auto written = platform::write_durably(to, *bytes); !written) return written.error();
  }
  return load;
}

}  // namespace

Ground around(Position middle, double radius_m) {
  constexpr double kMeters_per_degree = 110'574.0;  // of latitude, at the equator: the least
  const double high = radius_m / kMeters_per_degree;
  const double north = std::min(90.0, middle.latitude_deg() + high);
  const double south = std::max(-90.0, middle.latitude_deg() - high);
  const double narrow =
      std::cos(std::max(std::fabs(north), std::fabs(south)) * std::numbers::pi / 180.0);
  const double wide = narrow * 180.0 > high ? high / narrow : 180.0;
  const auto folded = [](double degrees) { return std::remainder(degrees, 360.0); };
  Ground ground{.circle = Ground::Circle{middle, radius_m}};
  ground.box = {south, folded(middle.longitude_deg() - wide), north,
                folded(middle.longitude_deg() + wide)};
  return ground;
}

Result<Ground> box(double south_deg, double west_deg, double north_deg, double east_deg) {
  const auto wrong = [](const char* what) {
    return Error{.what = what,
                 .where = "--bbox",
                 .remedy = "give south,west,north,east in degrees, such as 41,-76,46,-69"};
  };
  for (const double latitude : {south_deg, north_deg}) {
    if (!(std::fabs(latitude) <= 90.0)) return wrong("a latitude is not on the globe");
  }
  for (const double longitude : {west_deg, east_deg}) {
    if (!(std::fabs(longitude) <= 180.0)) return wrong("a longitude is not on the globe");
  }
  if (south_deg >= north_deg) return wrong("the south side is not south of the north side");
  if (west_deg == east_deg) return wrong("the west side is the east side");
  return Ground{.box = {south_deg, west_deg, north_deg, east_deg}};
}

std::vector<terrain::TileCell> cells_of(const Ground& ground) {
  std::vector<terrain::TileCell> cells;
  if (ground.circle) {
    // squares_near() asks at places up to 8 km from a square's corner.
    constexpr double kBetween_m = 8'000.0, kMost_m = 1'000'000.0;
    const std::array way{ground.circle->middle};
    const double reach_m = std::min(ground.circle->radius_m + kBetween_m, kMost_m);
    for (const auto& square : terrain::squares_near(way, reach_m)) {
      cells.push_back(square.cell);
    }
    return cells;
  }
  const pack::Area& box = ground.box;
  const int south = static_cast<int>(std::floor(box.south_deg));
  const int north = static_cast<int>(std::ceil(box.north_deg));
  const int west = static_cast<int>(std::floor(box.west_deg));
  const int count =
      std::min(360, static_cast<int>(std::ceil(box.west_deg + width_deg(box))) - west);
  for (int latitude = std::max(south, -90); latitude < std::min(north, 90); ++latitude) {
    for (int i = 0; i < count; ++i) {
      cells.push_back({latitude, (west + i + 180) % 360 - 180});
    }
  }
  std::sort(cells.begin(), cells.end());
  return cells;
}

Result<pack::Manifest> make(const Wish& wish, const fs::path& to,
                            const platform::PackProgress& progress) {
  auto inputs = tiles_in(wish, cells_of(wish.ground));
  auto stations = stations_in(wish);
  if (!stations) return stations.error();
  for (platform::PackInput& one : *stations) inputs.push_back(std::move(one));
  if (inputs.empty()) {
    return Error{.what = "nothing that is on board lies there, so there is nothing to pack",
                 .where = to.string(),
                 .remedy = "import stations or ground first, or name other folders by --from"};
  }
  return platform::write_pack(to, {.name = wish.name, .made = wish.made, .area = wish.ground.box},
                              inputs, progress);
}

std::uint64_t bytes_to_write(const platform::PackFile& file, const Home& home) {
  return bytes_for(file.manifest(), needs_of(file.manifest(), home));
}

Result<Taken> take(platform::PackFile& file, const Home& home,
                   const platform::PackProgress& progress, const ImportFocus& focus) {
  if (home.terrain.empty() || home.cover.empty()) {
    return Error{.what = "Mastwise has no folder to put the pack's ground in",
                 .where = file.path().string(),
                 .remedy = "start Mastwise with a data folder"};
  }
  constexpr std::uint64_t kSpare = std::uint64_t{32} << 20;
  const std::vector<Need> needs = needs_of(file.manifest(), home);
  const std::uint64_t needed = bytes_for(file.manifest(), needs) + kSpare;
  if (const std::uint64_t free = free_bytes(home.terrain); free < needed) {
    return Error{
        .what = fmt::format("the pack needs {} MB, and {} MB are free", needed >> 20, free >> 20),
        .where = file.path().string(),
        .remedy = "free some space, or take a smaller pack"};
  }
  auto load = unpack_all(file, home, needs, progress);
  if (!load) return load.error();
  for (const Part& part : load->tiles) {
    const fs::path from = unpacked(home, file.manifest(), part);
    const fs::path to = folder_of(home, part.kind) / from.filename();
    if (const auto placed = platform::put_in_place(from, to); !placed) return placed.error();
  }
  for (const TileKind& kind : kTileKinds) {
    std::error_code ignored;
    fs::remove_all(workbench(home, kind.kind, file.manifest()), ignored);
  }
  if (load->stations.empty()) return std::move(load->taken);
  auto catalog = Catalog::open(home.catalog);
  if (!catalog) return catalog.error();
  for (const StationTable& table : load->stations) {
    auto report = catalog->replace_source(table, {}, focus);
    if (!report) return report.error();
    load->taken.stations.push_back(std::move(report).value());
  }
  return std::move(load->taken);
}

}  // namespace mastwise::packs
