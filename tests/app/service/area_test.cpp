#include "app/service/map_maker.hpp"
#include "app/service/startup.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

TEST_CASE("a pinned station that cannot be scanned is left out and named") {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  Station powerless = practice->target;
  powerless.call_sign = "QNOP";
  powerless.erp_kw.reset();
  const auto answer = area_answerer({.practice_stations = practice->stations,
                                     .practice_terrain_folder = service::practice_folder()});
  const auto scanned = [&](const std::vector<Station>& stations) {
    return answer({.here = {.from = practice->position, .practice = true},
                   .stations = stations,
                   .radius_m = 500.0},
                  {.publish = [](const AreaSheet&) {}, .superseded = [] { return false; }});
  };
  const AreaSheet alone = scanned({practice->target});
  REQUIRE(alone.trouble.empty());
  CHECK(alone.left_out.empty());
  for (const auto& both :
       {std::vector{practice->target, powerless}, std::vector{powerless, practice->target}}) {
    const AreaSheet sheet = scanned(both);
    CHECK(sheet.trouble.empty());
    CHECK(sheet.left_out == std::vector<std::string>{"QNOP"});
    CHECK(sheet.percent == alone.percent);
    CHECK(sheet.here_percent == alone.here_percent);
  }
  CHECK(scanned({powerless}).trouble.find("power") != std::string::npos);
  CHECK_FALSE(scanned({powerless, powerless}).trouble.empty());
}

}  // namespace mastwise
