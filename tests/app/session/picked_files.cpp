#include "tests/app/session/picked_files.hpp"

#include "tests/app/session/views.hpp"
#include "tests/support/made_raster.hpp"

#include <filesystem>
#include <fstream>

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

void pick_table(Stage& stage) {
  press(stage, act::PickTable{put_table(stage, 12)});
}

}  // namespace mastwise::test
