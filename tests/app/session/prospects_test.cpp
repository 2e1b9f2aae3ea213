#include "app/session/apply.hpp"
#include "app/shared/settings.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>

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
  stage.tap("list of likely");
  REQUIRE(model.findings.listed.size() < all);
  for (const std::size_t row : model.findings.listed) {
    CHECK(*model.stations->rows[row].outlook->chance_percent >= 70.0);
  }
  stage.tap("list of networks");
  CHECK(model.findings.listed.size() == 6);  // the six invented networks
}

// QHWA and QLSC of the practice area send ATSC 3.0.
TEST_CASE(
    "a station that the TV cannot decode is last, and a touch on the TV's sheet brings it in") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  const auto row = [&](const char* call_sign) {
    const auto& rows = model.stations->rows;
    return std::find_if(rows.begin(), rows.end(),
                        [&](const StationRow& one) { return one.station.call_sign == call_sign; });
  };
  CHECK_FALSE(row("QHWA")->outlook->chance_percent);
  CHECK(row("QHWA")->reasons.at(0).kind() == reception::ReasonKind::decoding);
  CHECK(model.stations->rows.end() - row("QHWA") <= 2);
  CHECK(model.stations->rows.end() - row("QLSC") <= 2);
  stage.tap("place Stations");
  stage.tap("list of networks");
  for (const std::size_t listed : model.findings.listed) {
    CHECK(model.stations->rows[listed].outlook->decoding != gear::Decoding::impossible);
  }
  stage.set(act::Show{Place::Here});
  stage.tap("gear");
  stage.tap("television");
  stage.tap("decodes ATSC 3.0 encrypted on");
  CHECK(model.settings.gear.decoders ==
        gear::DecoderSet{gear::Decoder::atsc1, gear::Decoder::atsc3_encrypted});
  stage.tap("close sheet");
  stage.settle();
  REQUIRE(row("QHWA")->outlook->chance_percent);
  CHECK(*row("QHWA")->outlook->chance_percent > 90.0);
  stage.tap("television");
  stage.tap("decoders usual");
  CHECK_FALSE(model.settings.gear.decoders);
}

TEST_CASE("an outcome of a station that the TV may be unable to decode teaches nothing") {
  Stage stage(test::kTablet);
  stage.settle();
  // Last come the two stations with ATSC 3.0.
  const StationKey key = key_of(stage.model().stations->rows.back().station);
  const auto logged = [&](const gear::DecoderSet& decoders) {
    stage.set(act::ChooseGear{{.decoders = decoders}});
    stage.settle();
    stage.set(act::LogOutcome{key, Outcome::nothing});
    return stage.model().logbook.log.outcomes.front();
  };
  CHECK_FALSE(logged({gear::Decoder::atsc1}).margin_db);
  CHECK_FALSE(logged({gear::Decoder::atsc1, gear::Decoder::atsc3}).margin_db);
  CHECK(logged({gear::Decoder::atsc1, gear::Decoder::atsc3_encrypted}).margin_db);
}

TEST_CASE("the noise at the stop and the amplifier's power are set by touch, and noise undone") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  const double before_db = *model.findings.outlook->margin_db;
  stage.set(act::Show{Place::Here});
  stage.tap("gear");
  stage.tap("noise");
  stage.tap("noise city");
  stage.tap("inverter on");
  CHECK(model.stop.noise == gear::NoiseEnvironment::city);
  CHECK(model.stop.inverter_on);
  stage.tap("close sheet");
  stage.settle();
  CHECK(*model.findings.outlook->margin_db < before_db);
  stage.tap("noise");
  stage.tap("noise as around");
  CHECK_FALSE(model.stop.noise);
  CHECK(model.stop.inverter_on);
  stage.tap("inverter off");
  stage.tap("close sheet");
  stage.settle();
  CHECK(*model.findings.outlook->margin_db == before_db);
  stage.tap("amplifier off");
  stage.tap("close sheet");
  stage.settle();
  // Most of the target's noise is interference, which falls with it.
  CHECK(*model.findings.outlook->margin_db < before_db - 3.0);
}

TEST_CASE("a lower antenna lowers the chance, and a custom pattern replaces the preset's") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  const double before_db = *model.findings.outlook->margin_db;
  stage.set(act::Show{Place::Here});
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
