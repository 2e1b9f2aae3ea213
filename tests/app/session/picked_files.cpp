#include "tests/app/session/picked_files.hpp"

#include "app/service/packs.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/made_raster.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

namespace mastwise::test {

std::string put_table(Stage& stage, int rows) {
  press(stage, act::OpenSheet{Sheet::Import});
  const std::string folder = stage.model().data.answer->places.front().path;
  const std::string path = folder + "/a table with a long name of its own, from the regulator.csv";
  std::ofstream table(path);
  table << "Callsign,Channel,Ch,Latitude,Longitude,Antenna above the average terrain,Power\n";
  for (int row = 0; row < rows; ++row) {
    table << "QA" << row << ",23,24," << 40.0 + 0.0002 * row << ",100.5," << row << ",10\n";
  }
  table << "QBAD,23,24,north,100.5,1,10\n";
  return path;
}

void pick_cover(Stage& stage) {
  press(stage, act::OpenSheet{Sheet::Import});
  const std::string path =
      stage.model().data.answer->places.front().path + "/ESA_WorldCover_10m_of_the_region.tif";
  test::write_codes(
      path, {.columns = 90, .rows = 90, .left = -71.9, .top = 44.6, .spacing = 1.0 / 1200.0},
      [](int column, int) { return column < 40 ? 30 : 80; });
  press(stage, act::PickTable{path});
}

void pick_pack(Stage& stage) {
  press(stage, act::OpenSheet{Sheet::Import});
  const std::string folder = stage.model().data.answer->places.front().path;
  fill_catalog(folder + "/others");
  const auto made = packs::make(
      {.name = "Lakes and high desert",
       .made = "2026-07-01",
       .ground = packs::around(*Position::at_deg(42.5, -118.5), 60'000.0),
       .folders = {service::practice_folder()},
       .catalog = folder + "/others",
       .origins = {{pack::PartKind::terrain, {"invented heights", "2026-07-01", "free for all"}}}},
      folder + "/lakes.mwpack");
  REQUIRE(made);
  press(stage, act::PickTable{folder + "/lakes.mwpack"});
}

void pick_table(Stage& stage) {
  press(stage, act::PickTable{put_table(stage, 12)});
}

}  // namespace mastwise::test
