#pragma once

#include "app/ui/ui.hpp"

namespace mastwise::ui {

// A rig from the side, to scale, standing on the ground.
struct RigProfile {
  Point ground;  // below the middle of the rig
  float units_per_m = 0.0f;
  float roof_m = 3.3f;    // height of its roof: 11 ft, a usual one
  float length_m = 7.6f;  // 25 ft
  float raised_m = 4.5f;  // height of the antenna's top when raised
  bool nose_right = true;
  enum class Antenna { Down, Raised, ToBeRaised } antenna = Antenna::Down;
  Color ink, body, glass;
};

// Where the antenna's mast stands on the roof, and the end of the raised antenna nearer the nose or
// tail, whichever is farther to the right.
Point rig_mast(const RigProfile& rig);
Point rig_antenna_end(const RigProfile& rig);

// The roof's height that goes with a raised antenna, in meters: the usual one, or lower where the
// antenna itself is hardly higher.
float usual_roof_m(double raised_m);

void draw_rig_side(Canvas& canvas, const RigProfile& rig);

}  // namespace mastwise::ui
