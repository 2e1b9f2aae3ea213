#include "app/shared/settings_json.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

// Before parking: the rig's antennas side by side and the sectors to keep clear, by touch, in the
// practice area.
using namespace mastwise;
using test::Stage;

namespace {

constexpr const char* kDisc = "Omnidirectional roof disc with amplifier";
constexpr const char* kCrankUp = "Bidirectional crank-up with amplifier";
constexpr const char* kPole = "Long Yagi on a pole with amplifier";

void open_with_three(Stage& stage) {
  stage.set(act::ToggleGear{kPole});
  stage.set(act::ToggleGear{kDisc});
  stage.set(act::OpenSheet{Sheet::Parking});
}

const GearsAnswer& answer_of(const Stage& stage) {
  REQUIRE(stage.model().parking.answer);
  return *stage.model().parking.answer;
}

// The networks that the list of stations calls likely or better.
std::set<std::string> likely_networks(const Stage& stage) {
  std::set<std::string> networks;
  for (const StationRow& row : stage.model().stations->rows) {
    if (!row.outlook || row.outlook->chance_percent.value_or(0.0) < 69.5) continue;
    for (const std::string& network : networks_of(row.station)) networks.insert(network);
  }
  return networks;
}

}  // namespace

TEST_CASE("from Here the rig's antennas are put on a list and compared") {
  Stage stage;
  stage.tap("gear");
  stage.tap("parking");
  CHECK(answer_of(stage).rows.size() == 1);
  stage.set(act::OpenSheet{Sheet::Antennas});  // its row is below the fold
  CHECK_FALSE(stage.targets().find(std::string("antenna ") + kCrankUp)->enabled);
  stage.tap(std::string("antenna ") + kDisc);
  CHECK(stage.model().settings.other_gears == std::vector<GearChoice>{{.preset = kDisc}});
  stage.tap("close sheet");
  CHECK(stage.model().sheet == Sheet::Parking);
  REQUIRE(answer_of(stage).rows.size() == 2);
  CHECK(answer_of(stage).rows[0].name == kDisc);
  CHECK(answer_of(stage).rows[1].name == kCrankUp);
  CHECK(stage.shows_within("in use"));
  stage.set(act::OpenSheet{Sheet::Antennas});  // its row is below the fold
  stage.tap(std::string("antenna ") + kDisc);
  CHECK(stage.model().settings.other_gears.empty());
}

TEST_CASE("each antenna's count is that of the station list with it in use") {
  Stage stage;
  open_with_three(stage);
  const GearsAnswer answer = answer_of(stage);
  REQUIRE(answer.rows.size() == 3);
  std::set<std::string> all;
  for (const GearRow& row : answer.rows) {
    // The card may be below the fold.
    const touch::Target* card = stage.targets().find("use gear " + row.name);
    if (card == nullptr) stage.set(act::UseGear{row.name});
    if (card != nullptr && card->enabled) stage.tap("use gear " + row.name);
    INFO(row.name);
    CHECK(gear_of(stage.model().settings.gear).name == row.name);
    REQUIRE(stage.model().parking.row);
    CHECK(answer_of(stage).rows[*stage.model().parking.row].name == row.name);
    const auto networks = likely_networks(stage);
    all.insert(networks.begin(), networks.end());
    CHECK(row.networks == networks.size());
    // The order on the screen stays, and no antenna is lost.
    CHECK(answer_of(stage).rows.size() == 3);
    CHECK(answer_of(stage).rows[0].name == answer.rows[0].name);
  }
  CHECK(answer.networks.size() == all.size());
  CHECK(stage.model().settings.other_gears.size() == 2);
}

TEST_CASE("the sectors are those of the antenna in use, and pins decide them") {
  Stage stage;
  open_with_three(stage);
  const auto titles = [&] {
    std::set<std::string> titles;
    for (const KeptSector& sector :
         answer_of(stage).rows[stage.model().parking.row.value()].sectors) {
      for (const SectorStation& station : sector.stations) titles.insert(station.title);
    }
    return titles;
  };
  const auto without_pins = titles();
  CHECK(without_pins.size() > 1);
  const StationRow row = stage.model().stations->rows[1];
  stage.set(act::PinStation{key_of(row.station)});
  REQUIRE(titles().size() == 1);
  const KeptSector& kept = answer_of(stage).rows[stage.model().parking.row.value()].sectors.front();
  const double half_deg =
      clearance_deg(row.outlook->frequency_mhz) + stage.model().findings.heading_error_deg;
  CHECK(kept.arc.length_deg == Approx(2.0 * half_deg));
  CHECK((row.outlook->bearing - kept.arc.from).clockwise_deg() == Approx(half_deg));
  REQUIRE(stage.model().parking.free.size() == 1);
  CHECK(stage.model().parking.free.front().length_deg == Approx(360.0 - 2.0 * half_deg));
  CHECK(stage.shows_within("Free"));
}

TEST_CASE("the rig is drawn with its nose, and neighbors in a sector are told") {
  Stage stage;
  open_with_three(stage);
  stage.set(act::PinStation{key_of(stage.model().stations->rows[0].station)});
  const double bearing_deg = stage.model().stations->rows[0].outlook->bearing.degrees();
  const auto turn_to = [&](double nose_deg) {
    Stop stop = stage.model().stop;
    stop.nose = Nose{.heading = Bearing<True>::degrees(nose_deg)};
    stage.set(act::SetStop{stop});
  };
  const ParkingState& parking = stage.model().parking;
  // The station off the right side, where a neighbor stands.
  turn_to(bearing_deg - 90.0);
  CHECK(parking.right_blocks);
  CHECK_FALSE(parking.left_blocks);
  CHECK(stage.shows_within("neighbors"));
  stage.tap("neighbors left");
  CHECK(parking.neighbors == Neighbors::left);
  CHECK_FALSE(parking.right_blocks);
  CHECK(stage.shows_within("The nose is right"));
  // The station off the nose.
  stage.tap("neighbors both");
  turn_to(bearing_deg);
  CHECK(parking.neighbors == Neighbors::both);
  CHECK_FALSE(parking.right_blocks);
  CHECK_FALSE(parking.left_blocks);
  REQUIRE(parking.noses.size() == 2);
  CHECK(parking.drawn->nose().degrees() == Approx(bearing_deg));
  // Without a known nose the drawing takes the middle of the widest range.
  stage.set(act::ForgetNose{});
  CHECK((parking.drawn->nose() - parking.noses.front().from).clockwise_deg() ==
        Approx(parking.noses.front().length_deg / 2.0));
}

TEST_CASE("without a position nothing is compared") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  stage.set(act::OpenSheet{Sheet::Parking});
  CHECK_FALSE(stage.model().parking.answer);
  CHECK(stage.shows_within("Position unknown"));
}

TEST_CASE("a preset chosen under Gear changes places with the one in use if the rig has both") {
  Settings settings;
  settings.gear = {.preset = kDisc, .height_m = 3.0};
  settings.other_gears = {{.preset = kPole, .cable_m = 20.0}};
  use_gear(settings, {.preset = kPole});
  CHECK(settings.gear == GearChoice{.preset = kPole});
  CHECK(settings.other_gears == std::vector<GearChoice>{{.preset = kDisc, .height_m = 3.0}});
  // Other figures of the same preset, and a preset that the rig did not have, replace it.
  use_gear(settings, {.preset = kPole, .height_m = 7.0});
  CHECK(settings.gear.height_m == 7.0);
  use_gear(settings, {.preset = kCrankUp});
  CHECK(settings.other_gears.size() == 1);
  CHECK(rig_gears(settings).size() == 2);
}

TEST_CASE("settings without other antennas still open, and impossible ones are dropped") {
  const SettingsRead old = read_settings(R"({"gear":{"preset":""},"miles":false})");
  CHECK(old.dropped.empty());
  CHECK(old.settings.other_gears.empty());
  CHECK(rig_gears(old.settings).size() == 1);
  Settings settings;
  settings.other_gears = {{.preset = kDisc, .height_m = 3.0}, {.preset = kPole}};
  CHECK(read_settings(settings_text(settings)).settings == settings);
  const SettingsRead bad = read_settings(R"({"other_gears":[{"height_m":-3}],"miles":false})");
  CHECK(bad.dropped == std::vector<std::string>{"other_gears"});
  CHECK_FALSE(bad.settings.miles);
}
