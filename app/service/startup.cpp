#include "app/service/startup.hpp"

#include "app/shared/settings_json.hpp"
#include "core/import/import_csv.hpp"
#include "platform/files.hpp"
#include "platform/zipped_file.hpp"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <optional>
#include <span>

#include <nlohmann/json.hpp>

namespace mastwise::service {
namespace {

using nlohmann::json;

Error damaged(const std::string& path, const std::string& what) {
  return Error{.what = what, .where = path, .remedy = "build the assets again"};
}

Result<StationTable> practice_table(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  auto table = read_station_csv(*text, kPracticeSource);
  if (!table) return table.error();
  if (!table->rejected.empty()) return damaged(path, table->rejected.front().reason);
  if (table->stations.empty()) return damaged(path, "it has no stations");
  return table;
}

// The number at a place of the text; NaN if missing.
double number_at(const json& read, const char* place) {
  const json found = read.is_object() ? read.value(json::json_pointer(place), json()) : json();
  return found.is_number() ? found.get<double>() : std::nan("");
}

}  // namespace

Result<MagneticModel> load_magnetic_model() {
  return MagneticModel::load(platform::assets_folder() + "/magnetic");
}

Result<places::Gazetteer> load_places() {
  const std::string path = platform::assets_folder() + "/places/places.zip";
  constexpr std::uintmax_t kMostBytes = 64 << 20;
  const auto bytes = platform::unpack_one(
      path, [](std::string_view name) { return name == "places.bin"; },
      [](std::uintmax_t size) { return size <= kMostBytes; });
  if (!bytes) return bytes.error();
  auto places = places::Gazetteer::load(*bytes);
  if (!places) return damaged(path, places.error().what);
  return places;
}

Result<map::Borders> load_borders() {
  static std::mutex guard;
  static std::optional<map::Borders> read_before;
  const std::lock_guard lock(guard);
  if (read_before) return *read_before;
  const std::string path = platform::assets_folder() + "/borders/borders.bin";
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  auto borders = map::Borders::load(std::as_bytes(std::span(*text)));
  if (!borders) return damaged(path, borders.error().what);
  read_before = *borders;
  return borders;
}

std::string fonts_folder() {
  return platform::assets_folder() + "/fonts";
}

Result<std::string> terrain_folder() {
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  return *folder + "/terrain";
}

Result<std::string> cover_folder() {
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  return *folder + "/landcover";
}

std::string class_table_folder() {
  return platform::assets_folder() + "/landcover";
}

std::string practice_folder() {
  return platform::assets_folder() + "/practice";
}

Result<Practice> load_practice() {
  const std::string folder = practice_folder();
  const std::string path = folder + "/practice.json";
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  auto table = practice_table(folder + "/stations.csv");
  if (!table) return table.error();
  const json read = json::parse(*text, nullptr, false);
  const auto position = Position::at_deg(number_at(read, "/stop/latitude_deg"),
                                         number_at(read, "/stop/longitude_deg"));
  if (!position) return damaged(path, position.error().what);
  const double nose_deg = number_at(read, "/stop/nose_true_deg");
  if (!std::isfinite(nose_deg)) return damaged(path, "stop.nose_true_deg is missing");
  Station target = table->stations.front();
  return Practice{*position, RigHeading::nose_at(Bearing<True>::degrees(nose_deg)),
                  std::move(table->stations), std::move(target)};
}

Stop practice_stop(const Practice& practice) {
  return {.practice = true,
          .source = PositionSource::ByHand,
          .by_hand = practice.position,
          .nose = Nose{.heading = practice.nose.nose(), .read_at = Standing::well_clear},
          .target = practice.target,
          .standing = Standing::well_clear};
}

std::chrono::sys_days build_date() {
  constexpr std::chrono::sys_days kBuilt{std::chrono::days(MASTWISE_BUILD_DAY)};
  return kBuilt;
}

Result<Kept> read_kept(Logbook& logbook) {
  Kept kept;
  const auto antenna = logbook.antenna();
  if (!antenna) return antenna.error();
  kept.antenna = *antenna;
  const auto date = logbook.trusted_date();
  // It is only a floor: without it that of the build counts.
  if (!date && date.error().damaged) return date.error();
  if (!date) kept.dropped.push_back("trusted date");
  if (date) kept.trusted_date = *date;
  if (date && *date) kept.date_floor = std::max(kept.date_floor, **date);
  const auto settings = logbook.settings();
  if (!settings) return settings.error();
  if (*settings) {
    SettingsRead read = read_settings(**settings);
    kept.settings = std::move(read.settings);
    kept.dropped = std::move(read.dropped);
  }
  auto state = logbook.working_state();
  if (!state) return state.error();
  kept.working_state = *std::move(state);
  return kept;
}

}  // namespace mastwise::service
