#include "app/service/startup.hpp"
#include "app/service/stop_survey.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/temporary_folder.hpp"

#include <filesystem>

#include <catch2/catch.hpp>
#include <fmt/format.h>

namespace mastwise {

namespace {

constexpr terrain::TileCell kCell{45, 7};

// Stations of one tower in the south of the tile, more than are measured between two looks.
std::vector<Station> many_stations() {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  std::vector<Station> stations(100, practice->stations.front());
  for (std::size_t i = 0; i < stations.size(); ++i) {
    stations[i].call_sign = fmt::format("Q{:03}", i);
    stations[i].id = stations[i].call_sign;
    stations[i].position = *Position::at_deg(45.05, 7.3);
  }
  return stations;
}

}  // namespace

TEST_CASE("a tile cut short during a survey gives the same ground to every station", "[linux]") {
  const test::TemporaryFolder folder;
  const std::filesystem::path tile = folder / (terrain::cell_name(kCell) + ".hgt");
  test::write_bytes(tile, test::made_tile_bytes(kCell, 1201, [](double, double) { return 100.0; }));
  StopSurveyor surveyor(
      {.practice_stations = many_stations(), .practice_terrain_folder = folder.path().string()}, 1);
  const reception::Receiver receiver{.position = *Position::at_deg(45.3, 7.3), .gear = gear_of({})};
  // Between the stop and the tower, and not at the end of a page.
  constexpr std::uintmax_t kLeft_bytes = 2 * 1201 * 1000 + 100;

  std::size_t looks = 0;
  bool changed = false;
  using Surveyed = Result<std::optional<reception::Survey>>;
  const auto cut = surveyor.countries().of_whole_land(true, [&]() -> Surveyed {
    const auto visited = surveyor.countries().visit(true);
    REQUIRE(visited);
    changed = visited->changed;
    return surveyor.survey(
        *visited->country, receiver,
        {.look = [&](reception::Survey& so_far, std::size_t measured) -> Result<Done> {
          if (looks++ > 0) return Done{};
          CHECK(so_far.outlook(measured - 1)->terrain_coverage == 1.0);
          std::filesystem::resize_file(tile, kLeft_bytes);
          return Done{};
        }});
  });
  REQUIRE(cut);
  REQUIRE(*cut);
  CHECK(looks == 2);
  for (std::size_t i = 0; i < (*cut)->size(); ++i) {
    INFO(i);
    CHECK((*cut)->outlook(i)->terrain_coverage < 0.9);
    CHECK(*(*cut)->outlook(i) == *(*cut)->outlook(0));
  }

  // Whoever kept what was computed before learns that the land has changed.
  CHECK(changed);
  const auto again = surveyor.countries().visit(true);
  REQUIRE(again);
  CHECK_FALSE(again->country->tiles.problems().empty());
}

}  // namespace mastwise
