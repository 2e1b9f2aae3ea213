#include "app/session/questions.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/notation.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

#include <catch2/catch.hpp>

// The map of the stations by finger, in the practice area.
using namespace mastwise;
using test::Stage;

namespace {

void open_map(Stage& stage) {
  stage.tap("place Map");
  REQUIRE(stage.model().place == Place::Map);
}

// A station whose mark has no near neighbor.
const StationRow& lonely_row(const Stage& stage) {
  const Model& model = stage.model();
  const auto place = [&](const StationRow& row) {
    return offset_of(model.map.view, plane_point(row.outlook->distance_m, row.outlook->bearing));
  };
  for (const StationRow& row : model.stations->rows) {
    const MapOffset here = place(row);
    bool alone = std::fabs(here.right) < 250.0 && std::fabs(here.down) < 150.0;
    for (const StationRow& other : model.stations->rows) {
      const MapOffset there = place(other);
      alone = alone && (&other == &row ||
                        std::hypot(here.right - there.right, here.down - there.down) > 60.0);
    }
    if (alone) return row;
  }
  FAIL("no mark stands alone");
  return model.stations->rows.front();
}

void touch_screen(Stage& stage, touch::Point place_px) {
  stage.finger(SDL_FINGERDOWN, place_px);
  stage.round();
  stage.finger(SDL_FINGERUP, place_px);
  stage.settle();
}

// A place on the screen within the map, beside everything on it.
touch::Point within_map_px(Stage& stage) {
  const touch::Target* larger = stage.targets().find("map larger");
  REQUIRE(larger != nullptr);
  return {0.6f * larger->rect_px.left, larger->rect_px.bottom + 220.0f};
}

// The screen position of a map place, from the places that two touches on empty ground hit.
touch::Point screen_px(Stage& stage, MapOffset wanted) {
  std::vector<MapOffset> touched;
  stage.session().record_to([&](const Action& action) {
    if (const auto* touch = action.get_if<act::TouchMap>()) touched.push_back(touch->at);
  });
  stage.set(act::MoveMap{{.drag = {30'000.0, 0.0}}});
  const touch::Point one = within_map_px(stage), other = one + touch::Point{70.0f, 50.0f};
  touch_screen(stage, one);
  touch_screen(stage, other);
  stage.session().record_to({});
  stage.tap("map center");
  REQUIRE(touched.size() == 2);
  const auto along = [](float from_px, float to_px, double from, double to, double place) {
    return from_px + static_cast<float>((place - from) / (to - from)) * (to_px - from_px);
  };
  return {along(one.x, other.x, touched[0].right, touched[1].right, wanted.right),
          along(one.y, other.y, touched[0].down, touched[1].down, wanted.down)};
}

}  // namespace

TEST_CASE("the map shows the ground and every station of the catalog") {
  Stage stage;
  open_map(stage);
  const auto& sheet = stage.model().map.sheet;
  REQUIRE(sheet);
  CHECK(sheet->trouble == "");
  CHECK(sheet->stations.size() == stage.model().stations->rows.size());
  REQUIRE(sheet->relief);
  // The practice hills cover the ground around the stop but not the whole sheet.
  const auto& shade = sheet->relief->shade;
  const auto unknown = std::count(shade.begin(), shade.end(), map::Relief::kUnknown);
  CHECK(unknown < static_cast<std::ptrdiff_t>(shade.size()));
  CHECK(shade[shade.size() / 2 + static_cast<std::size_t>(sheet->relief->grid.columns) / 2] !=
        map::Relief::kUnknown);
}

TEST_CASE("a finger drags the land with it") {
  Stage stage;
  open_map(stage);
  const touch::Point somewhere = within_map_px(stage);
  const MapView before = stage.model().map.view;
  stage.drag(somewhere, somewhere + touch::Point{120.0f, 0.0f}, milliseconds(200));
  stage.settle();
  const MapView after = stage.model().map.view;
  CHECK(after.middle.east_m < before.middle.east_m);  // the land went to the right
  stage.tap("map center");
  CHECK(stage.model().map.view.middle == map::PlanePoint{});
}

TEST_CASE("a touch on a mark names the station, and Aim aims at it") {
  Stage stage;
  open_map(stage);
  const StationRow row = lonely_row(stage);
  touch_screen(
      stage,
      screen_px(stage, offset_of(stage.model().map.view,
                                 plane_point(row.outlook->distance_m, row.outlook->bearing))));
  REQUIRE(stage.model().map.selected);
  CHECK(*stage.model().map.selected == key_of(row.station));
  CHECK(stage.shows_within(row.station.call_sign));
  stage.tap("pin on map");
  CHECK(is_pinned(stage.model().stop, key_of(row.station)));
  stage.tap("aim on map");
  CHECK(stage.model().place == Place::Aim);
  CHECK(key_of(*stage.model().stop.target) == key_of(row.station));
}

TEST_CASE("a touch beside all marks names none, and a touch on a button does not reach the map") {
  Stage stage;
  open_map(stage);
  stage.set(act::MoveMap{{.drag = {30'000.0, 0.0}}});  // far from all stations
  touch_screen(stage, within_map_px(stage));
  CHECK_FALSE(stage.model().map.selected);
  const MapView before = stage.model().map.view;
  stage.tap("map larger");
  CHECK(stage.model().map.view.meters_per_unit < before.meters_per_unit);
  CHECK_FALSE(stage.model().map.selected);
}

TEST_CASE("the map turns with the nose, and with fingers") {
  Stage stage;
  open_map(stage);
  CHECK(stage.model().map.view.up == Bearing<True>());
  stage.tap("map up nose");
  REQUIRE(stage.model().findings.nose);
  CHECK(stage.model().map.view.up == stage.model().findings.nose->nose());
  stage.set(act::MoveMap{{.turn_deg = 25.0}});
  CHECK(stage.model().map.up == MapUp::Turned);
  stage.tap("map up north");
  CHECK(stage.model().map.view.up == Bearing<True>());
}

TEST_CASE("without a rig heading the map says why the nose cannot be up") {
  Stage stage;
  open_map(stage);
  CHECK_FALSE(stage.shows_within("Nose not"));
  stage.tap("map up nose");
  stage.set(act::ForgetNose{});
  CHECK(stage.model().map.view.up == Bearing<True>());
  CHECK_FALSE(stage.targets().find("map up nose")->enabled);
  CHECK(stage.shows_within("Nose not"));
  stage.set(act::ChooseMapUp{MapUp::North});
  stage.set(act::ChooseMapUp{MapUp::Rig});
  CHECK(stage.model().map.up == MapUp::North);
}

TEST_CASE("a drag in the station list does not move the map") {
  Stage stage;
  stage.tap("place Stations");
  const MapView before = stage.model().map.view;
  const touch::Point row = stage.middle_of("search") + touch::Point{0.0f, 250.0f};
  stage.drag(row, row - touch::Point{0.0f, 130.0f}, milliseconds(300));
  stage.settle();
  CHECK(stage.model().map.view == before);
}

// area_scan_test.cpp checks the scan against single paths. The scan ignores interference, so the
// list's chance is not greater.
TEST_CASE("best spot shows the chance around, the best spots and their distances") {
  Stage stage;
  open_map(stage);
  stage.tap("where to stand");
  REQUIRE(stage.model().map.area_sheet);
  const AreaSheet& sheet = *stage.model().map.area_sheet;
  REQUIRE(sheet.trouble == "");
  CHECK(sheet.done == 1.0);
  CHECK(sheet.percent.size() == sheet.side * sheet.side);
  REQUIRE(sheet.here_percent);
  REQUIRE(stage.model().findings.outlook);
  CHECK(*sheet.here_percent + 1.0 >= *stage.model().findings.outlook->chance_percent);
  for (const AreaSpot& spot : sheet.spots) {
    CHECK(spot.gain_percent >= 5.0);
    CHECK(spot.chance_percent == Approx(*sheet.here_percent + spot.gain_percent));
    CHECK(spot.distance_m <= sheet.question.radius_m);
  }
  const double radius_m = sheet.question.radius_m;
  stage.tap("area radius");
  CHECK(stage.model().map.area_sheet->question.radius_m > radius_m);
  stage.tap("where to stand");
  CHECK_FALSE(stage.model().map.area);
}

TEST_CASE("the weakest of several pinned stations decides the best spot") {
  Stage stage;
  open_map(stage);
  const auto& rows = stage.model().stations->rows;
  const StationKey first = key_of(rows[0].station), second = key_of(rows[4].station);
  const auto here = [&] {
    REQUIRE(stage.model().map.area_sheet);
    REQUIRE(stage.model().map.area_sheet->here_percent);
    return *stage.model().map.area_sheet->here_percent;
  };
  stage.set(act::PinStation{first});
  stage.tap("where to stand");
  const double alone = here();
  stage.set(act::PinStation{second});
  CHECK(stage.model().map.area_sheet->question.stations.size() == 2);
  CHECK(here() <= alone);
}

TEST_CASE("a best spot that cannot be computed says why and leaves no square") {
  Stage stage;
  Stop stop = stage.model().stop;
  stop.target.reset();
  stop.pinned.clear();
  stage.set(act::SetStop{stop});
  open_map(stage);
  stage.tap("where to stand");
  REQUIRE(stage.model().map.area_sheet);
  CHECK(stage.model().map.area_sheet->trouble != "");
  CHECK(stage.shows("No best spot yet"));
  CHECK_FALSE(stage.shows("100 %"));  // the scale of the colors
}

TEST_CASE("a long press says what is there, and the place becomes the stop") {
  Stage stage;
  open_map(stage);
  const Position before = *stage.model().findings.position;
  const touch::Point place = within_map_px(stage);
  stage.finger(SDL_FINGERDOWN, place);
  stage.wait(milliseconds(700));
  stage.finger(SDL_FINGERUP, place);
  stage.settle();
  REQUIRE(stage.model().map.spot);
  const MapSpot spot = *stage.model().map.spot;
  const PathBetween way = path_between(before, spot.position);
  CHECK(spot.distance_m == Approx(way.distance_m));
  CHECK(spot.bearing.degrees() == Approx(way.bearing.degrees()));
  CHECK(stage.shows_within(format_position(spot.position, stage.model().settings.notation)));
  CHECK(stage.shows_within(words::whole_degrees(*on_compass_here(stage.model(), spot.bearing)) +
                           " magnetic"));
  REQUIRE(near_place_of(stage.model(), spot.position) != nullptr);
  CHECK(stage.shows_within(near_place_of(stage.model(), spot.position)->place.name));
  stage.tap("use spot");
  CHECK(path_between(*stage.model().findings.position, spot.position).distance_m < 1.0);
  CHECK_FALSE(stage.model().map.spot);
  stage.tap("take back");
  CHECK(*stage.model().findings.position == before);
}

TEST_CASE("a held place goes to the places ahead") {
  Stage stage;
  open_map(stage);
  stage.set(act::HoldMap{{60.0, 40.0}});
  const Position place = stage.model().map.spot->position;
  stage.tap("compare spot");
  CHECK(stage.model().place == Place::Ahead);
  REQUIRE(stage.model().ahead.places.size() == 1);
  CHECK(stage.model().ahead.places.front() == place);
}

TEST_CASE("the map has towns, states and the ground behind ridges, also of another target") {
  Stage stage;
  open_map(stage);
  const MapSheet first = *stage.model().map.sheet;
  CHECK(first.trouble == "");
  CHECK(first.towns.size() > 20);
  CHECK(std::is_sorted(first.towns.begin(), first.towns.end(),
                       [](const MapTown& a, const MapTown& b) { return a.people > b.people; }));
  CHECK(first.regions.size() >= 2);
  REQUIRE(first.shadow);
  CHECK(stage.shows_within("ridge in the way of " + stage.model().stop.target->call_sign));
  const auto& rows = stage.model().stations->rows;
  const auto other = std::find_if(rows.begin(), rows.end(), [&](const StationRow& row) {
    return row.station.call_sign != stage.model().stop.target->call_sign && row.outlook &&
           std::fabs(
               (row.outlook->bearing - stage.model().findings.outlook->bearing).clockwise_deg()) >
               40.0;
  });
  REQUIRE(other != rows.end());
  stage.set(act::SelectStation{key_of(other->station)});
  open_map(stage);
  const MapSheet& second = *stage.model().map.sheet;
  REQUIRE(second.shadow);
  CHECK(second.shadow->cells != first.shadow->cells);
  CHECK(stage.shows_within("ridge in the way of " + stage.model().stop.target->call_sign));
}

TEST_CASE("without a position the map is empty and asks no worker") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  open_map(stage);
  CHECK_FALSE(map_question(stage.model()));
  CHECK(stage.shows_within("Where is the rig?"));
  stage.tap("set position");
  CHECK(stage.model().place == Place::Here);
}
