#include "app/shared/actions.hpp"
#include "app/shared/settings_json.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

// For which zone the needle of the compass was made, asked once and then told where it matters.
using namespace mastwise;
using test::Stage;

namespace {

void go_to(Stage& stage, double latitude_deg, double longitude_deg) {
  Stop stop = stage.model().stop;
  stop.source = PositionSource::ByHand;
  stop.by_hand = *Position::at_deg(latitude_deg, longitude_deg);
  stage.set(act::SetStop{stop});
}

}  // namespace

TEST_CASE("a northern needle is believed in the north and doubted in the south") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("ways");
  CHECK(stage.shows_within("north end down: the northern zone"));
  CHECK_FALSE(stage.shows_within("sticks"));
  go_to(stage, -33.0, -68.0);
  stage.settle();
  CHECK(stage.shows_within("sticks"));
  stage.set(act::OpenSheet{Sheet::None});
  stage.settle();
  CHECK(stage.shows_within("sticks"));
}

TEST_CASE("the zone of the needle is asked once and kept") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("ways");
  CHECK(stage.shows_within("Made for which"));
  stage.tap("needle");
  CHECK(stage.model().sheet == Sheet::Needle);
  CHECK(stage.shows("Dips 66° here, north end down"));
  stage.tap("made for southern");
  CHECK(stage.model().settings.needle == NeedleZone::southern);
  CHECK(stage.shows_within("sticks"));
  const SettingsRead again = read_settings(settings_text(stage.model().settings));
  CHECK(again.settings.needle == NeedleZone::southern);
  CHECK(again.dropped.empty());
  stage.set(act::OpenSheet{Sheet::Ways});
  stage.settle();
  CHECK_FALSE(stage.shows_within("Made for which"));
  stage.tap("needle");
  stage.tap("made for anywhere");
  CHECK(stage.shows("A needle made for any zone swings free here."));
}

TEST_CASE("a way without a needle is not doubted for it") {
  Stage stage;
  stage.set(act::ChooseSetting{"needle", "southern"});
  stage.tap("place Aim");
  CHECK(stage.shows_within("sticks"));
  stage.tap("by landmark");
  CHECK_FALSE(stage.shows_within("sticks"));
}

TEST_CASE("the globe of weak fields is computed once a month") {
  Stage stage;
  CHECK_FALSE(stage.model().aim.weak);
  stage.set(act::OpenSheet{Sheet::Needle});
  stage.settle();
  REQUIRE(stage.model().aim.weak);
  const auto month = stage.model().aim.weak->month;
  CHECK(month <= stage.model().findings.date);
  stage.set_clock(UtcTime(std::chrono::sys_days{std::chrono::year{2028} / 6 / 15}));
  stage.wait(milliseconds(1000));
  CHECK(stage.model().aim.weak->month > month);
}
