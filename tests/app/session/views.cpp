#include "tests/app/session/views.hpp"

#include "tests/app/session/picked_files.hpp"
#include "tests/app/session/stop_steps.hpp"
#include "tests/support/receiver_log.hpp"

#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::test {
namespace {

void use_practice(Stage&) {}

void set_by_hand(Stage& stage) {
  stage.set(act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = kDryLake}});
}

void receive_then_silence(Stage& stage) {
  leave_practice(stage);
  for (int second = 0; second < 12; ++second) {
    stage.receive(test::epoch(36'000 + second, kDryLake, 20.0, 90.0));
    stage.wait(milliseconds(1000));
  }
  stage.set(act::LinkChanged{Link{Link::State::Lost, "the device is gone: no such device"}});
  stage.wait(milliseconds(4000));
}

void open_keypad(Stage& stage, KeypadPurpose purpose, bool turn_page) {
  if (purpose == KeypadPurpose::Search) press(stage, act::Show{Place::Stations});
  press(stage, act::OpenKeypad{purpose});
  if (turn_page) press(stage, act::KeypadPage{});
}

void leave_undo(Stage& stage) {
  press(stage, act::OpenKeypad{KeypadPurpose::Nose});
  press(stage, act::KeypadType{"118"});
  press(stage, act::KeypadAccept{});
}

void fill_paper(Stage& stage) {
  type_number(stage, Field::MapBar_mm, "20");
  type_number(stage, Field::MapBarLength, "30");
  type_number(stage, Field::MapPlace, "42.5,-118.5");
  type_number(stage, Field::MapDirection_deg, "90");
  type_number(stage, Field::MapLength_mm, "93.3");
}

Stop with_lost_pins(Stop stop) {
  for (const char* call_sign : {"QBPA", "QGONE"}) {
    const StationKey key{"a table of another year.csv", call_sign};
    stop.pinned.push_back(key);
    stop.pin_notes.push_back({.key = key, .call_sign = call_sign, .channel = "9"});
  }
  return stop;
}

}  // namespace

void leave_practice(Stage& stage) {
  stage.set(act::SetStop{Stop{}});
}

void press(Stage& stage, const Action& action) {
  stage.set(action);
}

void type_number(Stage& stage, Field field, const std::string& text) {
  press(stage, act::OpenField{field});
  press(stage, act::KeypadType{text});
  press(stage, act::KeypadAccept{});
}

namespace {

std::vector<View> place_views() {
  return {
      {"Here in practice", use_practice},
      {"Here with nothing known", leave_practice},
      {"Here by hand", set_by_hand},
      {"Here with a silent receiver", receive_then_silence},
      {"Here in practice with Undo", leave_undo},
      {"Stations in practice", [](Stage& s) { press(s, act::Show{Place::Stations}); }},
      {"Stations without any",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::Show{Place::Stations});
       }},
      {"Stations searched",
       [](Stage& s) {
         open_keypad(s, KeypadPurpose::Search, false);
         press(s, act::KeypadType{"B"});
         press(s, act::KeypadAccept{});
       }},
      {"Stations scrolled",
       [](Stage& s) {
         press(s, act::Show{Place::Stations});
         const touch::Point row = s.middle_of("search") + touch::Point{0.0f, 200.0f};
         s.drag(row, row - touch::Point{0.0f, 130.0f}, milliseconds(300));
         s.settle();
       }},
      {"Stations with Undo",
       [](Stage& s) {
         press(s, act::Show{Place::Stations});
         leave_undo(s);
       }},
      {"map", [](Stage& s) { press(s, act::Show{Place::Map}); }},
      {"map with a station touched",
       [](Stage& s) {
         press(s, act::Show{Place::Map});
         const reception::Outlook& outlook = *s.model().stations->rows[0].outlook;
         press(s, act::TouchMap{offset_of(s.model().map.view,
                                          plane_point(outlook.distance_m, outlook.bearing))});
       }},
      {"map with a place held",
       [](Stage& s) {
         press(s, act::Show{Place::Map});
         press(s, act::HoldMap{{70.0, 90.0}});
       }},
      {"map without a position",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::Show{Place::Map});
       }},
      {"map without stations, ground or best spot",
       [](Stage& s) {
         set_by_hand(s);
         press(s, act::Show{Place::Map});
         press(s, act::SwitchArea{});
       }},
      {"where to stand",
       [](Stage& s) {
         press(s, act::Show{Place::Map});
         press(s, act::SwitchArea{});
       }},
      {"settings", [](Stage& s) { press(s, act::OpenSheet{Sheet::Settings}); }},
      {"settings with a backlight",
       [](Stage& s) {
         press(s, act::BacklightFound{});
         press(s, act::OpenSheet{Sheet::Settings});
       }},
      {"settings without a voice",
       [](Stage& s) {
         press(s, act::VoiceAnswered{false});
         press(s, act::OpenSheet{Sheet::Settings});
       }},
      {"first start in a browser",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::InBrowser{});
         press(s, act::OpenSheet{Sheet::Start});
       }},
      {"Aim in practice", [](Stage& s) { press(s, act::Show{Place::Aim}); }},
      {"Aim beside the rig",
       [](Stage& s) {
         press(s, act::StandAt{Standing::beside_rig});
         press(s, act::Show{Place::Aim});
       }},
      {"Aim from nobody knows where",
       [](Stage& s) {
         Stop stop = s.model().stop;
         stop.standing.reset();
         press(s, act::SetStop{stop});
         press(s, act::Show{Place::Aim});
       }},
      {"Aim in practice with Undo",
       [](Stage& s) {
         press(s, act::Show{Place::Aim});
         leave_undo(s);
       }},
      {"Aim without a target",
       [](Stage& s) {
         set_by_hand(s);
         press(s, act::Show{Place::Aim});
       }},
      {"Aim without a position",
       [](Stage& s) {
         press(s, act::SetStop{Stop{.target = s.practice_stop().target}});
         press(s, act::Show{Place::Aim});
       }},
      {"Aim raised",
       [](Stage& s) {
         press(s, act::Show{Place::Aim});
         press(s, act::Ask{Asking::Raise});
         press(s, act::ConfirmAsked{});
       }},
      {"Aim with a heading sensor",
       [](Stage& s) {
         press(s, act::Show{Place::Aim});
         press(s, act::ChooseDialUp{DialUp::Facing});
         s.receive(test::sentence("HEHDT,123.4,T"));
         s.settle();
       }},
      {"keypad, position", [](Stage& s) { open_keypad(s, KeypadPurpose::Position, false); }},
      {"keypad, position, letters",
       [](Stage& s) { open_keypad(s, KeypadPurpose::Position, true); }},
      {"keypad, position, an error",
       [](Stage& s) {
         open_keypad(s, KeypadPurpose::Position, false);
         press(s, act::KeypadType{"42.5N 118..5W"});
         press(s, act::KeypadAccept{});
       }},
      {"keypad, position, read back",
       [](Stage& s) {
         open_keypad(s, KeypadPurpose::Position, false);
         press(s, act::KeypadType{"42.5N 118.5W"});
       }},
      {"keypad, position, a town's name",
       [](Stage& s) {
         open_keypad(s, KeypadPurpose::Position, true);
         press(s, act::KeypadType{"SAN"});
       }},
      {"keypad, a place ahead, a name of no town",
       [](Stage& s) {
         press(s, act::OpenField{Field::AheadPlace});
         press(s, act::KeypadType{"QZQZQZ"});
       }},
      {"keypad, nose", [](Stage& s) { open_keypad(s, KeypadPurpose::Nose, false); }},
      {"keypad, nose, true",
       [](Stage& s) {
         open_keypad(s, KeypadPurpose::Nose, false);
         press(s, act::KeypadNorth{});
       }},
      {"keypad, search, letters", [](Stage& s) { open_keypad(s, KeypadPurpose::Search, false); }},
      {"keypad, search, figures", [](Stage& s) { open_keypad(s, KeypadPurpose::Search, true); }},
      {"Here, painted", paint_sides},
      {"Here while parked", stand_parked},
      {"position", [](Stage& s) { press(s, act::OpenSheet{Sheet::Position}); }},
      {"gear", [](Stage& s) { press(s, act::OpenSheet{Sheet::Gear}); }},
      {"gear with an own pattern",
       [](Stage& s) {
         press(s, act::ChooseGear{{.pattern_table = "angle,db\n0,0\n30,-3\n60,-9\n90,-15\n"
                                                    "120,-15\n150,-15\n180,-15\n"}});
         press(s, act::OpenSheet{Sheet::Gear});
       }},
      {"before parking, one antenna", [](Stage& s) { press(s, act::OpenSheet{Sheet::Parking}); }},
      {"before parking, every antenna",
       [](Stage& s) {
         for (const gear::Gear& preset : gear::presets()) press(s, act::ToggleGear{preset.name});
         press(s, act::OpenSheet{Sheet::Parking});
       }},
      {"before parking, nothing likely",
       [](Stage& s) {
         press(s, act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = kNowhere}});
         press(s, act::OpenSheet{Sheet::Parking});
       }},
      {"before parking, no position",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::OpenSheet{Sheet::Parking});
       }},
      {"antennas on the rig", [](Stage& s) { press(s, act::OpenSheet{Sheet::Antennas}); }},
      {"surroundings", [](Stage& s) { press(s, act::OpenSheet{Sheet::Surroundings}); }},
      {"noise",
       [](Stage& s) {
         press(s, act::ChooseNoise{gear::NoiseEnvironment::quiet_rural, true});
         press(s, act::OpenSheet{Sheet::Noise});
       }},
      {"towers",
       [](Stage& s) {
         press(s, act::ChooseTowers{gear::TowerRange::in_sight, gear::TowerRange::beside});
         press(s, act::OpenSheet{Sheet::Towers});
       }},
      {"television", [](Stage& s) { press(s, act::OpenSheet{Sheet::Television}); }},
      {"Aim at a station that the TV cannot decode",
       [](Stage& s) {
         press(s, act::SelectStation{key_of(s.model().stations->rows.back().station)});
         press(s, act::Show{Place::Aim});
       }},
      {"path", [](Stage& s) { press(s, act::OpenSheet{Sheet::Path}); }},
      {"stations by network",
       [](Stage& s) {
         press(s, act::Show{Place::Stations});
         press(s, act::ChooseList{ListOf::Networks});
       }},
      {"pinned, in the plan",
       [](Stage& s) {
         press(s, act::PinStation{key_of(s.model().stations->rows[0].station)});
         press(s, act::PinStation{key_of(s.model().stations->rows[2].station)});
         press(s, act::ChoosePlan{PlanFor::All});
         press(s, act::OpenSheet{Sheet::Plan});
       }},
      {"plan for networks",
       [](Stage& s) {
         press(s, act::ChoosePlan{PlanFor::Networks});
         press(s, act::OpenSheet{Sheet::Plan});
       }},
      {"plan with its card on paper",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Plan});
         press(s, act::SavePaper{});
       }},
      {"channels to enter", [](Stage& s) { press(s, act::ScanStep{0}); }},
      {"ways of saying it", [](Stage& s) { press(s, act::OpenSheet{Sheet::Ways}); }},
      {"ways on the roof",
       [](Stage& s) {
         press(s, act::StandAt{Standing::on_roof});
         press(s, act::OpenSheet{Sheet::Ways});
       }},
      {"nose", [](Stage& s) { press(s, act::OpenSheet{Sheet::Nose}); }},
      {"paper map",
       [](Stage& s) {
         fill_paper(s);
         press(s, act::OpenSheet{Sheet::Paper});
       }},
      {"handle", [](Stage& s) { press(s, act::OpenSheet{Sheet::Handle}); }},
      {"a field to type",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Paper});
         press(s, act::OpenField{Field::MapBar_mm});
       }},
      {"Peak before a sweep", [](Stage& s) { press(s, act::Show{Place::Peak}); }},
      {"Peak with readings",
       [](Stage& s) {
         press(s, act::Show{Place::Peak});
         press(s, act::BeginSweep{SweepBy::Compass});
         for (const double change : {0.0, 10.0, -20.0, -10.0}) {
           press(s, act::SetMeter{change});
           press(s, act::ReadMeter{.nothing = false});
         }
       }},
      {"Peak with both edges",
       [](Stage& s) {
         press(s, act::Show{Place::Peak});
         press(s, act::ChooseMeter{Meter::none});
         press(s, act::BeginSweep{SweepBy::Compass});
         press(s, act::MarkEdge{.right = true});
         press(s, act::TurnSweep{-50.0});
         press(s, act::MarkEdge{.right = false});
       }},
      {"Stations by hand",
       [](Stage& s) {
         set_by_hand(s);
         press(s, act::Show{Place::Stations});
       }},
      {"Stations, a pinned one that is gone",
       [](Stage& s) {
         press(s, act::SetStop{with_lost_pins(s.practice_stop())});
         press(s, act::Show{Place::Stations});
         REQUIRE(s.targets().find("pin instead") != nullptr);
       }},
      {"Here, pinned stations that are gone",
       [](Stage& s) {
         press(s, act::SetStop{with_lost_pins(s.practice_stop())});
         REQUIRE(s.targets().find("lost pins") != nullptr);
       }},
      {"carries", [](Stage& s) { press(s, act::OpenSheet{Sheet::Carries}); }},
      {"Stations, a network searched for and pinned",
       [](Stage& s) {
         press(s, act::OpenKeypad{KeypadPurpose::Search});
         press(s, act::KeypadType{"Basin Pub"});
         press(s, act::KeypadAccept{});
         press(s, act::PinNetwork{"Basin Public"});
         press(s, act::ChooseList{ListOf::Networks});
         press(s, act::Show{Place::Stations});
         REQUIRE(s.targets().find("pin what is searched") != nullptr);
       }},
  };
}

}  // namespace

const std::vector<View>& views() {
  static const std::vector<View> all = [] {
    std::vector<View> joined = place_views();
    for (const auto& part :
         {record_views(), signal_views(), safety_views(), guide_views(), compass_views()}) {
      joined.insert(joined.end(), part.begin(), part.end());
    }
    return joined;
  }();
  return all;
}

}  // namespace mastwise::test
