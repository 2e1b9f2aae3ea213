#pragma once

#include "app/shared/shared.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/logbook/logbook.hpp"
#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/result.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace mastwise::service {

// The World Magnetic Model from the assets.
Result<MagneticModel> load_magnetic_model();

// The places and the borders from the assets. Slow, so call them in a worker. The borders are read
// once and shared by all who ask; any thread may.
Result<places::Gazetteer> load_places();
Result<map::Borders> load_borders();

// The practice area from the assets: an invented place with invented stations.
struct Practice {
  Position position;
  RigHeading nose;
  std::vector<Station> stations;
  Station target;  // the first of the table, which the aim card shows
};
inline const Source kPracticeSource{.name = "PRACTICE stations"};
Result<Practice> load_practice();
Stop practice_stop(const Practice& practice);

// The build date: today is never before it.
std::chrono::sys_days build_date();

// The state of the last session from the logbook.
struct Kept {
  Settings settings = {};
  safety::Antenna antenna = safety::Antenna::Down;
  std::chrono::sys_days date_floor = build_date();
  std::optional<std::chrono::sys_days> trusted_date = {};
  std::vector<std::string> dropped = {};  // settings that could not be read
  std::optional<std::string> working_state = {};
};
Result<Kept> read_kept(Logbook& logbook);

std::string fonts_folder();
// Folders of the user's elevation tiles, and of the practice area's.
Result<std::string> terrain_folder();
// Folders of the user's land cover tiles, and of the built-in class tables.
Result<std::string> cover_folder();
std::string class_table_folder();
std::string practice_folder();

}  // namespace mastwise::service
