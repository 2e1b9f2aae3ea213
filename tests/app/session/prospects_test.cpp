#include "app/session/apply.hpp"
#include "app/shared/settings.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

// The practice area's stations and hills, surveyed by the worker.
TEST_CASE("the list ranks stations by chance with reasons, and a touch shows the path") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  REQUIRE(model.stations);
  REQUIRE(model.stations->rows.size() == 32);
  CHECK(model.stations->measured == model.stations->all);
  double before = 101.0;
  for (const StationRow& row : model.stations->rows) {
    REQUIRE(row.outlook);
    if (!row.outlook->chance_percent) continue;
    CHECK(*row.outlook->chance_percent <= before);
    before = *row.outlook->chance_percent;
    CHECK_FALSE(row.reasons.empty());
  }
  REQUIRE(model.stations->target_path);
  CHECK(model.stations->target_path->terrain_coverage == 1.0);

  stage.tap("place Aim");
  stage.tap("why");
  CHECK(model.sheet == Sheet::Path);
  stage.tap("close sheet");
  CHECK(model.sheet == Sheet::None);
}

TEST_CASE("a floor lists only likelier stations, and By network lists each network once") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  const std::size_t all = model.findings.listed.size();
  stage.tap("place Stations");
  stage.tap("chance floor");
  stage.tap("chance floor");
  REQUIRE(model.findings.listed.size() < all);
  for (const std::size_t row : model.findings.listed) {
    CHECK(*model.stations->rows[row].outlook->chance_percent >= 40.0);
  }
  stage.tap("by network");
  CHECK(model.findings.listed.size() == 6);  // the six invented networks
}

TEST_CASE("a lower antenna lowers the chance, and a custom pattern replaces the preset's") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  const double before_db = *model.findings.outlook->margin_db;
  stage.tap("place Here");
  stage.tap("gear");
  stage.tap("Antenna up less");
  stage.tap("Antenna up less");
  stage.tap("close sheet");
  stage.settle();
  CHECK(*model.findings.outlook->margin_db < before_db);

  const GearChoice own{.pattern_table =
                           "angle,db\n0,0\n30,-3\n60,-10\n90,-20\n120,-20\n150,-20\n"
                           "180,-20\n"};
  const gear::Gear gear = gear_of(own);
  for (const Band band : {Band::low_vhf, Band::high_vhf, Band::uhf}) {
    CHECK(gear.antenna.in(band).pattern.relative_db(Turn::clockwise_deg(30.0)) ==
          Approx(-3.0).margin(1e-9));
  }
}
