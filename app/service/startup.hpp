#pragma once

#include "app/model/model.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/logbook/logbook.hpp"
#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/result.hpp"

#include <chrono>
#include <string>
#include <vector>

namespace mastwise::service {

// The World Magnetic Model of the program's assets.
Result<MagneticModel> load_magnetic_model();

// The places and the borders of the program's assets. Slow enough for a worker.
Result<places::Gazetteer> load_places();
Result<map::Borders> load_borders();

// The practice area of the program's assets: an invented place with invented stations.
struct Practice {
  Position position;
  RigHeading nose;
  std::vector<Station> stations;
  Station target;  // the first of the table: the one that its aim card shows
};
inline const Source kPracticeSource{.name = "PRACTICE stations"};
Result<Practice> load_practice();
Stop practice_stop(const Practice& practice);

// The day on which the program was built: no date before it can be today's.
std::chrono::sys_days build_date();

// What the logbook kept of the last session.
struct Kept {
  Settings settings = {};
  safety::Antenna antenna = safety::Antenna::Down;
  std::chrono::sys_days date_floor = build_date();
};
Result<Kept> read_kept(Logbook& logbook);

std::string fonts_folder();
// Where the user's elevation tiles are kept, and those of the practice area.
Result<std::string> terrain_folder();
std::string practice_folder();

std::string settings_json(const Settings& settings);

}  // namespace mastwise::service
