#include "app/service/browsing.hpp"

#include "app/service/known_tables.hpp"
#include "core/text/iso_time.hpp"
#include "core/text/words.hpp"
#include "platform/table_folder.hpp"
#include "platform/time_zones.hpp"
#include "platform/written_at.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::sources {
namespace {

namespace fs = std::filesystem;

template <std::size_t N>
bool ends_in_one(const fs::path& path, const std::array<const char*, N>& ends) {
  const std::string end = path.extension().string();
  return std::any_of(ends.begin(), ends.end(),
                     [&](const char* one) { return words::same_word(end, one); });
}

bool is_table(const fs::path& path) {
  return ends_in_one(path, std::array{".csv", ".tsv", ".txt", ".dat", ".dbf"});
}

void by_name(std::vector<Offer>& offers) {
  std::sort(offers.begin(), offers.end(),
            [](const Offer& a, const Offer& b) { return a.name < b.name; });
}

void add(FolderShown& shown, const fs::directory_entry& entry) {
  std::error_code unreadable;
  Offer offer{.path = entry.path().string(), .name = entry.path().filename().string()};
  if (offer.name.starts_with('.')) return;
  if (entry.is_directory(unreadable)) {
    shown.folders.push_back(std::move(offer));
    return;
  }
  const bool archive = is_archive(offer.path);
  const bool raster = is_raster(offer.path), pack = is_pack(offer.path);
  const bool route = is_route(offer.path);
  if (!archive && !raster && !pack && !route && !is_table(entry.path())) return;
  const auto bytes = entry.file_size(unreadable);
  if (!unreadable) offer.bytes = bytes;
  if (archive) {
    const auto files = platform::TableFolder::at(entry.path());
    if (!files) return;
    offer.joined_set = files->names().size() > 1;
    if (offer.joined_set && !ready_for_set(offer.path)) {
      shown.folders.push_back(std::move(offer));
      return;
    }
  }
  (raster  ? shown.rasters
   : pack  ? shown.packs
   : route ? shown.routes
           : shown.tables)
      .push_back(std::move(offer));
}

// The tables of an archive that no built-in mapping knows, one of which is chosen.
Result<FolderShown> show_archive(const std::string& path) {
  const auto files = platform::TableFolder::at(path);
  if (!files) return files.error();
  FolderShown shown{.path = path, .parent = fs::path(path).parent_path().string()};
  for (const std::string& name : files->names()) {
    if (is_table(name)) shown.tables.push_back({.path = path + "/" + name, .name = name});
  }
  by_name(shown.tables);
  return shown;
}

}  // namespace

bool is_raster(const std::string& path) {
  return ends_in_one(path, std::array{".tif", ".tiff", ".img", ".dt0", ".dt1", ".dt2"});
}

bool is_pack(const std::string& path) {
  return ends_in_one(path, std::array{".mwpack"});
}

bool is_route(const std::string& path) {
  return ends_in_one(path, std::array{".gpx"});
}

std::string day_written(const std::string& path) {
  const auto written = platform::written_at(path);
  if (!written) return {};
  return iso_day(local_day(*written, platform::tablet_zone().value_or(utc_zone())));
}

Result<FolderShown> show_folder(const std::string& path) {
  FolderShown shown{.path = path};
  std::error_code trouble;
  if (is_archive(path) && fs::is_regular_file(path, trouble)) return show_archive(path);
  fs::directory_iterator at(path, trouble), end;
  for (; !trouble && at != end; at.increment(trouble)) add(shown, *at);
  if (trouble) {
    return Error{.what = trouble.message(),
                 .where = path,
                 .remedy = "go up, or plug the stick or card in again"};
  }
  by_name(shown.folders);
  by_name(shown.tables);
  by_name(shown.rasters);
  by_name(shown.packs);
  by_name(shown.routes);
  const fs::path here = fs::path(path).lexically_normal();
  if (here.has_relative_path()) shown.parent = here.parent_path().string();
  if (const auto ready = ready_for_set(path)) shown.set_known_as = ready->name;
  return shown;
}

}  // namespace mastwise::sources
