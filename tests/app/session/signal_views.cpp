#include "tests/app/session/views.hpp"

namespace mastwise::test {
namespace {

// A position without a target.
void stand_in_the_desert(Stage& stage) {
  press(stage, act::SetStop{Stop{.source = PositionSource::ByHand,
                                 .by_hand = *Position::at_deg(42.5, -118.5)}});
}

}  // namespace

std::vector<View> signal_views() {
  return {
      {"path of a station far too weak",
       [](Stage& s) {
         for (const StationRow& row : s.model().stations->rows) {
           if (row.station.call_sign != "QLSE") continue;
           press(s, act::SelectStation{key_of(row.station)});
           break;
         }
         press(s, act::OpenSheet{Sheet::Path});
       }},
      {"path without a target",
       [](Stage& s) {
         stand_in_the_desert(s);
         press(s, act::OpenSheet{Sheet::Path});
       }},
      {"plan without a target",
       [](Stage& s) {
         stand_in_the_desert(s);
         press(s, act::OpenSheet{Sheet::Plan});
       }},
      {"plan with nothing pinned", [](Stage& s) { press(s, act::OpenSheet{Sheet::Plan}); }},
      {"plan of several turns",
       [](Stage& s) {
         press(s, act::ChooseGear{{.preset = "Long Yagi on a pole with amplifier"}});
         press(s, act::ChoosePlan{PlanFor::All});
         press(s, act::OpenSheet{Sheet::Plan});
       }},
      {"Peak without a target",
       [](Stage& s) {
         stand_in_the_desert(s);
         press(s, act::Show{Place::Peak});
       }},
      {"Peak with the heading being set, by handle",
       [](Stage& s) {
         press(s, act::Show{Place::Peak});
         press(s, act::BeginSweep{SweepBy::Handle});
         press(s, act::ReadMeter{.nothing = false});
         press(s, act::SwitchTurning{});
       }},
  };
}

}  // namespace mastwise::test
