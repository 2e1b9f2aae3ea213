#include "tests/app/session/views.hpp"
#include "tests/support/receiver_log.hpp"

#include <fmt/format.h>

namespace mastwise::test {
namespace {

const Position kOnTheRoad = *Position::at_deg(42.5, -118.5);

void raise_antenna(Stage& stage) {
  press(stage, act::Ask{Asking::Raise});
  press(stage, act::ConfirmAsked{});
}

void drive(Stage& stage) {
  for (int second = 0; second < 3; ++second) {
    stage.receive(test::epoch(36'000 + second, kOnTheRoad, 20.0, 90.0));
    stage.wait(milliseconds(1000));
  }
}

void go_to_roof(Stage& stage) {
  press(stage, act::GoToRoof{});
  press(stage, act::ConfirmAsked{});
}

// On the roof with a sensor that points this far right of the target.
void point_on_roof(Stage& stage, double right_deg) {
  go_to_roof(stage);
  const double target_deg = stage.model().findings.card->bearing_true.degrees();
  const double points_deg = fold_circle_deg(target_deg + right_deg);
  stage.receive(test::sentence(fmt::format("HEHDT,{:.1f},T", points_deg)));
  stage.settle();
}

}  // namespace

std::vector<View> safety_views() {
  return {
      {"raise prompt",
       [](Stage& s) {
         press(s, act::Show{Place::Aim});
         press(s, act::Ask{Asking::Raise});
       }},
      {"raise prompt of a high mast",
       [](Stage& s) {
         press(s, act::ChooseGear{{.height_m = 10.0}});
         press(s, act::Ask{Asking::Raise});
       }},
      {"raise prompt of a low antenna, in meters",
       [](Stage& s) {
         press(s, act::NextSetting{"miles"});
         press(s, act::ChooseGear{{.height_m = 3.0}});
         press(s, act::Ask{Asking::Raise});
       }},
      {"roof prompt", [](Stage& s) { press(s, act::GoToRoof{}); }},
      {"weather prompt", [](Stage& s) { press(s, act::Ask{Asking::Weather}); }},
      {"driving prompt", [](Stage& s) { press(s, act::Ask{Asking::Drive}); }},
      {"prompt for an antenna left up",
       [](Stage& s) {
         raise_antenna(s);
         press(s, act::Unplugged{});
       }},
      {"prompt for a rig that seems to move",
       [](Stage& s) {
         raise_antenna(s);
         press(s, act::Ask{Asking::Moving});
       }},
      {"prompt before merging", [](Stage& s) { press(s, act::Ask{Asking::MergeLogbook}); }},
      {"roof without a sensor", go_to_roof},
      {"roof without a sensor, nose unknown",
       [](Stage& s) {
         press(s, act::ForgetNose{});
         go_to_roof(s);
       }},
      {"roof without a target",
       [](Stage& s) {
         press(s, act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = kOnTheRoad}});
         go_to_roof(s);
       }},
      {"roof, to turn right", [](Stage& s) { point_on_roof(s, -140.0); }},
      {"roof, to turn left, raised",
       [](Stage& s) {
         raise_antenna(s);
         point_on_roof(s, 172.0);
       }},
      {"roof, good", [](Stage& s) { point_on_roof(s, 3.0); }},
      {"roof, as exact as the sensor",
       [](Stage& s) {
         press(s, act::SelectStation{key_of(s.model().stations->rows.back().station)});
         point_on_roof(s, 0.0);
       }},
      {"under way", drive},
      {"under way to a next stop",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         press(s, act::OpenField{Field::AheadPlace});
         press(s, act::KeypadType{"43.586,-119.054"});
         press(s, act::KeypadAccept{});
         drive(s);
       }},
      {"under way, unlocked by a passenger",
       [](Stage& s) {
         drive(s);
         press(s, act::UnlockForPassenger{});
       }},
      {"alarm",
       [](Stage& s) {
         raise_antenna(s);
         drive(s);
       }},
      {"alarm, quieter",
       [](Stage& s) {
         raise_antenna(s);
         drive(s);
         press(s, act::QuietAlarm{});
       }},
      {"alarm, standing",
       [](Stage& s) {
         raise_antenna(s);
         drive(s);
         s.receive(test::epoch(36'004, kOnTheRoad, 0.0));
         s.settle();
       }},
      {"after the alarm",
       [](Stage& s) {
         raise_antenna(s);
         press(s, act::Ask{Asking::AfterAlarm});
       }},
  };
}

}  // namespace mastwise::test
