#include "app/keypad/update.hpp"
#include "app/service/place_search.hpp"
#include "app/session/questions.hpp"
#include "core/geo/geodesic.hpp"
#include "tests/support/stage.hpp"

#include <cmath>

#include <catch2/catch.hpp>

// Places by name, and near towns of positions, through finger events.
using namespace mastwise;
using test::Stage;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// Puts the rig there, outside the practice area.
void stand_at(Stage& stage, const Position& position) {
  stage.set(act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = position}});
}

void type_name(Stage& stage, std::string_view name) {
  stage.tap("key ABC");
  stage.tap_keys(name);
}

double position_error_deg(const Stage& stage) {
  for (const ErrorLine& line : stage.model().findings.heading_errors) {
    if (line.kind == ErrorKind::position) return line.sigma_deg;
  }
  FAIL("the error of the position is not in the budget");
  return 0.0;
}

struct Published {
  const char* typed;
  const char* said;
  double latitude_deg, longitude_deg;
};
// The principal places of zones in the tz database's zone1970.tab (public domain), degrees and
// minutes, some with seconds. Sources differ in the point that represents a town.
const Published kPublished[]{
    {"BOISE", "Boise, ID", 43 + 36.0 / 60 + 49.0 / 3600, -(116 + 12.0 / 60 + 9.0 / 3600)},
    {"DENVER", "Denver, CO", 39 + 44.0 / 60 + 21.0 / 3600, -(104 + 59.0 / 60 + 3.0 / 3600)},
    {"WHITEHORSE", "Whitehorse, YT", 60 + 43.0 / 60, -(135 + 3.0 / 60)},
    {"WINIPEG", "Winnipeg, MB", 49 + 53.0 / 60, -(97 + 9.0 / 60)},  // a letter is missing
    {"HOBART", "Hobart, TAS", -(42 + 53.0 / 60), 147 + 19.0 / 60},
    {"DARWIN", "Darwin, NT", -(12 + 28.0 / 60), 130 + 50.0 / 60},
};

}  // namespace

TEST_CASE("a typed town has its published position, on a small screen too", "[places]") {
  for (const test::Screen& screen : {test::kHeadUnit, test::kTablet}) {
    for (const Published& town : kPublished) {
      INFO(town.typed << " on " << screen.name);
      Stage stage(screen);
      stage.set(act::SetStop{Stop{}});
      stage.tap("type position");
      type_name(stage, town.typed);
      CHECK(stage.shows(town.said));
      stage.tap("place 1");
      CHECK_FALSE(stage.model().keypad);
      CHECK(stage.model().stop.by_name == town.said);
      REQUIRE(stage.model().findings.position);
      const Position published = at(town.latitude_deg, town.longitude_deg);
      CHECK(path_between(*stage.model().findings.position, published).distance_m < 5e3);
      CHECK(stage.shows("Near"));
      CHECK(stage.shows(town.said));
    }
  }
}

TEST_CASE("Undo reverts a position by name, and a typed position has no town's error", "[places]") {
  Stage stage;
  const Position before = *stage.model().findings.position;
  const double error_before_deg = position_error_deg(stage);
  stage.tap("type position");
  type_name(stage, "BURNS OR");
  CHECK_FALSE(stage.targets().find("key Use it")->enabled);
  stage.tap("place 1");
  CHECK_FALSE(stage.model().stop.by_name.empty());
  // The rig may be anywhere in the town, so the heading error is larger.
  const double away_m = stage.model().findings.card->distance_m;
  CHECK(position_error_deg(stage) ==
        Approx(std::atan(kSomewhereInTown_m / away_m) * 57.29578).epsilon(0.01));
  CHECK(position_error_deg(stage) > error_before_deg);
  stage.tap("take back");
  CHECK(*stage.model().findings.position == before);
  CHECK(stage.model().stop.by_name.empty());
  CHECK(position_error_deg(stage) == error_before_deg);
  stand_at(stage, before);

  stage.tap("type position");
  type_name(stage, "BURNS OR");
  stage.tap("place 1");
  stage.tap("type position");
  stage.tap_keys("43.6,-119.1");
  stage.tap("key Use it");
  CHECK(stage.model().stop.by_name.empty());
  CHECK(stage.shows_within("By hand"));
}

TEST_CASE("an unknown name shows No match, and Erase removes one letter", "[places]") {
  Stage stage;
  stage.tap("type position");
  CHECK(stage.shows_within("type the name of a town"));
  type_name(stage, "QZQZQZ");
  CHECK(stage.shows_within("No match"));
  CHECK(stage.targets().find("place 1") == nullptr);
  stage.tap("key Clear");
  CHECK(stage.shows_within("type the name of a town"));
  stage.tap_keys("MOAB");
  CHECK(stage.shows("Moab, UT"));
  stage.tap("key Erase");
  REQUIRE(places_found(*stage.model().keypad, stage.model()) != nullptr);
  CHECK(stage.model().places->question.typed == "MOA");
  // A position has digits and starts no search.
  stage.tap("key Clear");
  stage.tap("key 123");
  stage.tap_keys("44.0582,-121.0750");
  CHECK(places_found(*stage.model().keypad, stage.model()) == nullptr);
  CHECK(stage.shows("12 mi E of Bend, OR"));
}

TEST_CASE("every screen names a town near the rig", "[places]") {
  Stage stage;
  stand_at(stage, at(44.0582, -121.0750));
  // The verb places prints the same.
  CHECK(stage.shows("12 mi E of"));
  CHECK(stage.shows("Bend, OR"));
  for (const char* place : {"Stations", "Aim", "Peak", "Logbook", "Ahead"}) {
    INFO(place);
    stage.tap(std::string("place ") + place);
    CHECK(stage.shows("12 mi E of Bend, OR"));
  }
  stage.tap("place Here");
  stage.tap("settings");
  stage.tap("miles off");
  stage.tap("close sheet");
  CHECK(stage.shows("19 km E of"));
}

TEST_CASE("a town's name appears only for its position", "[places]") {
  Stage stage;
  const Position here = at(44.0582, -121.0750);
  stand_at(stage, here);
  const Model& model = stage.model();
  REQUIRE(near_place_of(model, here) != nullptr);
  CHECK(near_place_of(model, here)->place.name == "Bend");
  const auto east = Bearing<True>::degrees(90.0);
  CHECK(near_place_of(model, destination(here, east, 45.0)) != nullptr);
  CHECK(near_place_of(model, destination(here, east, 55.0)) == nullptr);

  // The worker gets a new question before that.
  PlacesQuestion asked = *places_question(model);
  PlacesQuestion now = asked;
  now.shown = {destination(here, east, 20.0)};
  CHECK(same_places(asked, now));
  now.shown = {destination(here, east, 30.0)};
  CHECK_FALSE(same_places(asked, now));
  now.shown.clear();
  CHECK_FALSE(same_places(asked, now));
}

TEST_CASE("places ahead and on the paper map accept names and show names", "[places]") {
  Stage stage(test::kHeadUnit);
  stage.tap("place Ahead");
  stage.tap("add place");
  type_name(stage, "LAKEVIEW OR");
  stage.tap("place 1");
  REQUIRE(stage.model().ahead.places.size() == 1);
  REQUIRE(stage.model().stations->ahead->places.size() == 2);
  CHECK(stage.shows("Lakeview"));
  stage.tap("remove place");
  CHECK(stage.model().stations->ahead->places.size() == 1);
  CHECK_FALSE(stage.shows("Lakeview"));

  stage.set(act::OpenSheet{Sheet::Paper});
  stage.set(act::OpenField{Field::MapPlace});
  type_name(stage, "LAKEVIEW OR");
  stage.tap("place 1");
  REQUIRE(stage.model().form.place(Field::MapPlace));
  CHECK(stage.shows("Lakeview, OR"));
  // 42.19 N, 120.35 W (as maps print it, from memory).
  CHECK(path_between(*stage.model().form.place(Field::MapPlace), at(42.19, -120.35)).distance_m <
        3e3);
  // A position from a town's dot on the map is not more certain than the dot.
  stage.set(act::OpenField{Field::MapBar_mm});
  stage.tap_keys("20");
  stage.tap("key Use it");
  stage.set(act::OpenField{Field::MapBarLength});
  stage.tap_keys("30");
  stage.tap("key Use it");
  stage.set(act::OpenField{Field::MapDirection_deg});
  stage.tap_keys("90");
  stage.tap("key Use it");
  stage.set(act::OpenField{Field::MapLength_mm});
  stage.tap_keys("40");
  stage.tap("key Use it");
  stage.set(act::UseMapPlace{.by_net = false});
  // 40 mm of 1.5 miles.
  CHECK(path_between(*stage.model().findings.position, *stage.model().form.place(Field::MapPlace))
            .distance_m == Approx(60.0 * 1609.344).epsilon(0.001));
  CHECK(stage.model().stop.by_hand_error_m > kDotOfTown_m);
  CHECK(stage.model().stop.by_name.empty());
}

TEST_CASE("Ahead without a likely network explains itself", "[places]") {
  Stage stage;
  stand_at(stage, at(44.0582, -121.0750));  // no stations are known outside the practice area
  stage.tap("place Ahead");
  stage.tap("add place");
  stage.tap_keys("44.2,-121.2");
  stage.tap("key Use it");
  CHECK(stage.shows_within("No network in reach"));
}

TEST_CASE("the logbook lists stops by near towns", "[places]") {
  Stage stage(test::kLargeTablet);
  stage.tap("place Logbook");
  const StationRow& row = stage.model().stations->rows.front();
  stage.set(act::LogOutcome{key_of(row.station), Outcome::steady});
  stage.tap("stops");
  const auto* near = near_place_of(stage.model(), stage.model().logbook.log.stops.front().position);
  REQUIRE(near != nullptr);
  CHECK(stage.shows_within("of " + near->place.name));
}

TEST_CASE("screens with place names show their license credit", "[places]") {
  Stage stage;
  CHECK(stage.shows_within("GeoNames (geonames.org), CC BY"));
  stage.tap("type position");
  type_name(stage, "B");
  CHECK(stage.shows_within("GeoNames (geonames.org), CC BY 4.0"));
}

TEST_CASE("without the gazetteer the screen shows the reason instead of a town", "[places]") {
  PlacesWorker worker(
      places_answerer([]() -> Result<places::Gazetteer> { return Error{.what = "it is gone"}; }),
      [] {});
  Stage stage;
  Model model = stage.model();
  worker.ask(*places_question(model));
  worker.finish();
  model.places = worker.take();
  REQUIRE(model.places);
  CHECK(model.places->trouble.find("it is gone") != std::string::npos);
  CHECK(near_place_of(model, *model.findings.position) == nullptr);
  stage.set(act::PlacesFound{*model.places});
  CHECK(stage.shows_within("it is gone"));
}
