#include "tests/app/session/views.hpp"
#include "tests/support/nmea_text.hpp"

#include <string>

#include <fmt/core.h>

namespace mastwise::test {
namespace {

// A position without a target.
void stand_in_the_desert(Stage& stage) {
  press(stage, act::SetStop{Stop{.source = PositionSource::ByHand,
                                 .by_hand = *Position::at_deg(42.5, -118.5)}});
}

// A sweep that reads itself, over part of the beam at a steady rate.
void turn_with_sensor(Stage& stage, double rate_dps) {
  press(stage, act::Show{Place::Peak});
  press(stage, act::ConnectMeter{"dvb:0.0"});
  press(stage, act::BeginSweep{SweepBy::Sensor});
  for (int i = 0; i < 60; ++i) {
    const Monotonic now = stage.now() + i * milliseconds(250);
    const double at_s = 0.25 * i;
    const std::string degrees = fmt::format("{:.1f}", fold_circle_deg(rate_dps * at_s));
    stage.session().act(act::ReceiverBytes{now, sentence("HEHDT," + degrees + ",T")});
    const std::string level = fmt::format("{:.1f}", 10.0 + 0.2 * at_s);
    stage.session().act(act::MeterBytes{now, "LEVEL " + level + " dBmV\n"});
  }
  stage.settle();
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
      {"a sweep that reads itself", [](Stage& s) { turn_with_sensor(s, 3.0); }},
      {"a sweep that reads itself, too fast", [](Stage& s) { turn_with_sensor(s, 25.0); }},
      {"where the readings come from",
       [](Stage& s) {
         press(s, act::ConnectMeter{"/dev/ttyQ0"});
         press(s, act::MetersFound{{{"dvb:0.0", ""}, {"/dev/ttyQ0", "PRACTICE Q1"}}});
         press(s, act::OpenSheet{Sheet::Meter});
       }},
      {"the hunt for noise, before it begins",
       [](Stage& s) { press(s, act::OpenSheet{Sheet::NoiseHunt}); }},
      {"the hunt for noise, with what it found",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::NoiseHunt});
         press(s, act::SetAppliances{{{.name = "Inverter",
                                       .band = Band::low_vhf,
                                       .rise = {.db = 12.3, .sigma_db = 1.2}}}});
         press(s, act::BeginHunt{});
         for (const char* appliance : {"Inverter", "Battery charger", "LED lights"}) {
           press(s, act::ReadHunt{});
           press(s, act::TurnedOff{appliance});
           press(s, act::SetHunt{5.0});
         }
         press(s, act::ReadHunt{});
       }},
      {"an appliance's name being typed",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::NoiseHunt});
         press(s, act::BeginHunt{});
         press(s, act::OpenKeypad{KeypadPurpose::Appliance});
       }},
      {"the hunt for noise without a target",
       [](Stage& s) {
         stand_in_the_desert(s);
         press(s, act::OpenSheet{Sheet::NoiseHunt});
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
