#include "app/service/fetch.hpp"

#include "app/service/startup.hpp"
#include "app/service/station_source.hpp"
#include "core/text/iso_time.hpp"
#include "platform/clock.hpp"
#include "platform/cover_folder.hpp"
#include "platform/cover_import.hpp"
#include "platform/download.hpp"
#include "platform/files.hpp"
#include "platform/raster_import.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::fetch {
namespace {

namespace fs = std::filesystem;
using pack::PartKind;
using publishers::DataSet;
using publishers::RemoteFile;

constexpr int kSamples = 24;  // on a side of a cell, clear of its edges

// Counts the known samples of a cell.
template <class Known>
bool knows_half(const Known& is_known) {
  int known = 0;
  for (int row = 0; row < kSamples; ++row) {
    for (int column = 0; column < kSamples; ++column) {
      known += is_known((row + 0.5) / kSamples, (column + 0.5) / kSamples) ? 1 : 0;
    }
  }
  return 2 * known >= kSamples * kSamples;
}

int index_at(double share, int count) {
  return static_cast<int>(share * count);
}

enum class OnDisk { little, half };

// How much of each cell is on the disk: heights or land cover, whichever is wanted.
std::map<terrain::TileCell, OnDisk> on_disk(const Wish& wish) {
  std::map<terrain::TileCell, OnDisk> found;
  const auto note = [&](terrain::TileCell cell, bool half) {
    found[cell] = half ? OnDisk::half : OnDisk::little;
  };
  if (wish.set.kind == PartKind::terrain) {
    const platform::TileFolder folder(wish.home.terrain);
    for (const terrain::TileCell cell : wish.cells) {
      const auto tile = folder.tile(cell);
      if (!tile) continue;
      note(cell, knows_half([&](double south, double east) {
             return tile->sample(index_at(south, tile->side()), index_at(east, tile->side())) !=
                    terrain::kVoidSample;
           }));
    }
    return found;
  }
  constexpr int kSide = landcover::CoverTile::kSide;
  const platform::CoverFolder folder(wish.home.cover);
  for (const terrain::TileCell cell : wish.cells) {
    const auto tile = folder.tile(cell);
    if (!tile) continue;
    note(cell, knows_half([&](double north, double east) {
           return tile->at(index_at(north, kSide), index_at(east, kSide)) !=
                  landcover::CoverClass::unknown;
         }));
  }
  return found;
}

std::string outcome_line(const Wish& wish, terrain::TileCell cell, bool has_tile) {
  return fmt::format("{} {} {}", wish.set.id, terrain::cell_name(cell), has_tile ? "tile" : "none");
}

std::set<std::string> read_outcomes(const Wish& wish) {
  std::set<std::string> outcomes;
  std::ifstream file(wish.downloads / kOutcomes);
  for (std::string line; std::getline(file, line);) outcomes.insert(line);
  return outcomes;
}

// Remembers what a file had for the wanted cells. A line that cannot be written costs only another
// download.
void note_outcomes(const Wish& wish, const RemoteFile& remote, bool exists) {
  if (remote.cells.empty()) return;
  const auto outcomes = read_outcomes(wish);
  const auto tiles = on_disk(wish);
  std::ofstream file(wish.downloads / kOutcomes, std::ios::app);
  for (const terrain::TileCell cell : remote.cells) {
    const std::string line = outcome_line(wish, cell, exists && tiles.count(cell) != 0);
    if (outcomes.count(line) == 0) file << line << '\n';
  }
}

// What to do where the publisher's server does not help.
std::string by_hand(const DataSet& set, const RemoteFile& file) {
  const std::string mapping = set.mapping.empty() ? "" : " --mapping " + set.mapping;
  return fmt::format("{}: {} ; then: mastwise import {} FILE{}", set.by_hand, file.address,
                     pack::to_text(set.kind), mapping);
}

// Networks with a sign-in page answer every request with that page.
bool is_web_page(const fs::path& file) {
  std::string head(64, '\0');
  std::ifstream(file, std::ios::binary)
      .read(head.data(), static_cast<std::streamsize>(head.size()));
  const std::size_t first = head.find_first_not_of(" \r\n\t\xef\xbb\xbf");
  return first != std::string::npos && head[first] == '<';
}

Result<Done> import_file(const Wish& wish, const fs::path& file,
                         const std::function<bool(double)>& progress, Fetched& fetched) {
  if (wish.set.kind == PartKind::terrain) {
    const auto imported = platform::import_raster(file, wish.home.terrain, progress);
    if (!imported) return imported.error();
    fetched.tiles.insert(fetched.tiles.end(), imported->written.begin(), imported->written.end());
    fetched.stopped = imported->stopped;
    return Done{};
  }
  if (wish.set.kind == PartKind::landcover) {
    const auto tables = platform::load_class_tables(service::class_table_folder());
    if (!tables) return tables.error();
    const auto imported =
        platform::import_cover(file, wish.home.cover, *tables, std::string(), progress);
    if (!imported) return imported.error();
    fetched.tiles.insert(fetched.tiles.end(), imported->written.begin(), imported->written.end());
    fetched.stopped = imported->stopped;
    return Done{};
  }
  const std::string date = wish.set.date.empty() ? iso_day(platform::utc_now()) : wish.set.date;
  const auto way = sources::load_mapping(wish.set.mapping, date);
  if (!way) return way.error();
  auto catalog = Catalog::open(wish.home.catalog);
  if (!catalog) return catalog.error();
  auto report = sources::import_stations(
      file.string(), *way, *catalog,
      [&](const std::string&, std::uint64_t done, std::uint64_t all) {
        const double share = static_cast<double>(done) / static_cast<double>(std::max(all, done));
        fetched.stopped = !progress(done == 0 ? 0.0 : share);
        return !fetched.stopped;
      },
      wish.focus);
  if (fetched.stopped) return Done{};
  if (!report) return report.error();
  fetched.stations.push_back(std::move(report).value());
  return Done{};
}

// One file, from the server to its import.
Result<Done> fetch_one(const Wish& wish, const RemoteFile& file, Progress state, const Watch& watch,
                       Fetched& fetched) {
  const auto told = [&](const Progress& now) { return !watch || watch(now); };
  const fs::path to = wish.downloads / file.name;
  const auto got = platform::download({.address = publishers::at_base(file.address, wish.base),
                                       .to = to,
                                       .sha256 = wish.set.sha256,
                                       .allow_local_http = !wish.base.empty()},
                                      [&](const platform::DownloadProgress& now) {
                                        state.done_bytes = now.done_bytes;
                                        state.all_bytes = now.all_bytes;
                                        state.bytes_per_s = now.bytes_per_s;
                                        return told(state);
                                      });
  if (!got) return got.error();
  fetched.fetched_bytes += got->fetched_bytes;
  const bool tiled = wish.set.square_deg > 0;
  if (got->end == platform::DownloadEnd::stopped) {
    fetched.stopped = true;
    return Done{};
  }
  if (got->end == platform::DownloadEnd::missing && tiled) {
    fetched.no_file.push_back(file.name);
    note_outcomes(wish, file, false);
    return Done{};
  }
  if (got->end != platform::DownloadEnd::whole) {
    const bool refused = got->end == platform::DownloadEnd::refused;
    return Error{.what = refused ? "the publisher's server refuses this app (403)"
                                 : "the publisher's server has no such file (404)",
                 .where = publishers::at_base(file.address, wish.base),
                 .remedy = by_hand(wish.set, file)};
  }
  if (is_web_page(to)) {
    std::error_code ignored;
    fs::remove(to, ignored);
    return Error{.what = "a web page came instead of the file",
                 .where = publishers::at_base(file.address, wish.base),
                 .remedy = "this network may want you to sign in: open any page in a browser"};
  }
  state.importing = true;
  state.all_bytes = got->bytes;
  const auto imported = import_file(
      wish, to,
      [&](double share) {
        state.done_bytes = static_cast<std::uint64_t>(share * static_cast<double>(got->bytes));
        return told(state);
      },
      fetched);
  if (!imported) {
    Error error = imported.error();
    if (error.where.find(to.string()) == std::string::npos) {
      error.where = to.string() + (error.where.empty() ? "" : ", " + error.where);
    }
    error.remedy += error.remedy.empty() ? "" : "; ";
    error.remedy += "the file is kept there, and the next fetch gets it again";
    return error;
  }
  if (!fetched.stopped) note_outcomes(wish, file, true);
  if (wish.keep || fetched.stopped) {
    fetched.kept.push_back(to);
  } else {
    std::error_code ignored;
    fs::remove(to, ignored);
  }
  fetched.files += fetched.stopped ? 0 : 1;
  return Done{};
}

}  // namespace

Result<std::vector<DataSet>> load_publishers() {
  const std::string path = platform::assets_folder() + "/publishers/publishers.json";
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  return publishers::read_publishers(*text);
}

Plan plan(const Wish& wish) {
  Plan plan;
  std::vector<terrain::TileCell> missing;
  if (wish.set.square_deg > 0) {
    const auto tiles = on_disk(wish);
    const auto outcomes = read_outcomes(wish);
    for (const terrain::TileCell cell : wish.cells) {
      const auto tile = tiles.find(cell);
      const bool has_tile = tile != tiles.end();
      const bool fetched_before = outcomes.count(outcome_line(wish, cell, true)) != 0;
      const bool empty = outcomes.count(outcome_line(wish, cell, false)) != 0;
      if (has_tile && (tile->second == OnDisk::half || fetched_before)) {
        ++plan.cells_on_board;
      } else if (empty) {
        ++plan.cells_empty;
      } else {
        missing.push_back(cell);
      }
    }
  }
  plan.files = publishers::files_for(wish.set, missing);
  plan.usual_bytes = plan.files.size() * wish.set.usual_bytes;
  return plan;
}

Result<Fetched> run(const Wish& wish, const Plan& plan, const Watch& watch) {
  std::error_code failed;
  fs::create_directories(wish.downloads, failed);
  if (failed) {
    return Error{.what = "cannot make the folder for downloads: " + failed.message(),
                 .where = wish.downloads.string(),
                 .remedy = "check that you may write there"};
  }
  Fetched fetched;
  for (std::size_t i = 0; i < plan.files.size() && !fetched.stopped; ++i) {
    const Progress state{.file = i, .files = plan.files.size(), .name = plan.files[i].name};
    if (const auto done = fetch_one(wish, plan.files[i], state, watch, fetched); !done) {
      Error error = done.error();
      if (fetched.files > 0) {
        error.remedy +=
            fmt::format("; {} of {} files are imported already", fetched.files, plan.files.size());
      }
      return error;
    }
  }
  // A tile may have been completed by the squares beside it.
  std::sort(fetched.tiles.begin(), fetched.tiles.end());
  fetched.tiles.erase(std::unique(fetched.tiles.begin(), fetched.tiles.end()), fetched.tiles.end());
  return fetched;
}

}  // namespace mastwise::fetch
