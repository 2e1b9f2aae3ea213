#include "tests/app/session/views.hpp"
#include "tests/support/tablet_in_hand.hpp"

#include <cmath>
#include <vector>

namespace mastwise::test {

std::vector<View> compass_views() {
  return {
      {"needle", [](Stage& s) { press(s, act::OpenSheet{Sheet::Needle}); }},
      {"needle made for elsewhere",
       [](Stage& s) {
         press(s, act::ChooseSetting{"needle", "southern"});
         press(s, act::OpenSheet{Sheet::Needle});
       }},
      {"needle without a position",
       [](Stage& s) {
         press(s, act::SetStop{Stop{}});
         press(s, act::OpenSheet{Sheet::Needle});
       }},
      {"deviation card before any drive",
       [](Stage& s) { press(s, act::OpenSheet{Sheet::Sensor}); }},
      {"deviation card that holds",
       [](Stage& s) {
         std::vector<DrivenStretch> round;
         for (int i = 0; i < 16; ++i) {
           round.push_back({.read = Bearing<Magnetic>::degrees(22.5 * i),
                            .deviation_deg = 9.0 * std::sin(i * std::acos(-1.0) / 8.0),
                            .horizontal_nt = 20'900.0,
                            .at = s.model().findings.date});
         }
         press(s, act::StretchesBack{round});
         press(s, act::ChooseSetting{"sensor_mount", "rig"});
         press(s, act::OpenSheet{Sheet::Sensor});
       }},
      {"tablet without sensors",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Tablet});
         press(s, act::TabletLinkChanged{Link{Link::State::Lost, "no accelerometer"}});
       }},
      {"tablet that learns",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Tablet});
         hold_tablet(s, 0.1, {});
       }},
      {"tablet that points",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Tablet});
         hold_tablet(s, 1.0, {});
         press(s, act::ChoosePointing{PointingMethod::tablet_magnetometer});
       }},
      {"tablet beside steel",
       [](Stage& s) {
         press(s, act::StandAt{Standing::beside_rig});
         press(s, act::OpenSheet{Sheet::Tablet});
         hold_tablet(s, 1.0, {0.0, 9.0, -20.0});
       }},
      {"aim after a short move",
       [](Stage& s) {
         // Where the practice area's hills make the tolerance jump.
         for (const char* at : {"42.57095,-118.85602", "42.57008,-118.85256"}) {
           press(s, act::OpenKeypad{KeypadPurpose::Position});
           press(s, act::KeypadType{at});
           press(s, act::KeypadAccept{});
         }
         press(s, act::Show{Place::Aim});
       }},
      {"compass checks", [](Stage& s) { press(s, act::OpenSheet{Sheet::Checks}); }},
      {"compass checks used",
       [](Stage& s) {
         type_number(s, Field::ThereBearing_deg, "40");
         type_number(s, Field::BackBearing_deg, "221");
         press(s, act::KeepReciprocal{});
         press(s, act::OpenSheet{Sheet::Checks});
         type_number(s, Field::CompassRead_deg, "200");
         press(s, act::CheckCompass{CompassCheckBy::star});
         press(s, act::CheckCompass{CompassCheckBy::sun});
       }},
  };
}

}  // namespace mastwise::test
