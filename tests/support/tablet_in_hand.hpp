#pragma once

#include "app/shared/actions.hpp"
#include "core/motion/sensor_lines.hpp"
#include "tests/support/held_tablet.hpp"
#include "tests/support/stage.hpp"

#include <string>

namespace mastwise::test {

// The lines of a tablet's two sensors at one moment.
inline std::string sensor_lines(const HeldTablet::Seen& seen, double at_s) {
  using Kind = motion::Sample::Kind;
  return motion::to_line(
             {.kind = Kind::acceleration, .at_s = at_s, .value = seen.acceleration_mps2}) +
         motion::to_line({.kind = Kind::field, .at_s = at_s, .value = seen.field_ut});
}

// A tablet of ordinary iron in the field of the stage's stop.
inline HeldTablet tablet_of(const Stage& stage, Dice& dice) {
  HeldTablet tablet = HeldTablet::any(dice);
  tablet.strength_ut = stage.model().findings.field->total_nt / 1000.0;
  tablet.dip_deg = stage.model().findings.field->inclination_deg;
  return tablet;
}

// Turns and tumbles a tablet for this share of a minute, with its sheet open, then holds it still,
// facing a magnetic course, with the field of some steel (east, north, up, uT) beside it.
inline void hold_tablet(Stage& stage, double share, const motion::Vector& steel_ut,
                        double faces_deg = 120.0) {
  Dice dice(21);
  HeldTablet tablet = tablet_of(stage, dice);
  stage.session().act(act::TabletLinkChanged{Link{Link::State::Open, "invented sensors"}});
  double at_s = 0.0;
  const auto now = [&] { return stage.model().now; };
  for (const auto& seen : tablet.turned_and_tumbled(dice, share)) {
    stage.session().act(act::TabletBytes{now(), sensor_lines(seen, at_s += 0.125)});
  }
  tablet.nearby_ut = steel_ut;
  for (int i = 0; i < 16; ++i) {
    const auto seen = tablet.seen({.faces_deg = faces_deg, .tilt_deg = 50.0}, dice);
    stage.session().act(act::TabletBytes{now(), sensor_lines(seen, at_s += 0.125)});
  }
  stage.settle();
}

}  // namespace mastwise::test
