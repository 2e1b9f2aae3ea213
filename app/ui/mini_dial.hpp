#pragma once

#include "app/ui/ui.hpp"
#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"

#include <optional>

namespace mastwise::ui {

// A small dial for lists: the rig with its nose up (or north up while the nose is not known), the
// antenna's arrow, and the aiming tolerance as an arc outside.
struct MiniDial {
  Point center;
  float radius = 0.0f;  // of the ring; the arc reaches 12 units beyond
  std::optional<RigHeading> nose = {};
  Bearing<True> heading;
  std::optional<Slack> slack = {};
};
void draw_mini_dial(Ui& ui, const MiniDial& dial);

}  // namespace mastwise::ui
