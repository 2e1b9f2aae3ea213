#pragma once

#include "app/ui/ui.hpp"
#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise::ui {

// The dial's contents. Its ring shows true bearings, with a mark for magnetic north.
struct DialView {
  struct Mark {
    std::string label;
    Bearing<True> bearing;
    bool wanted = false;  // pinned
  };

  Point center;
  float radius = 0.0f;
  Bearing<True> up;  // direction at the top
  std::optional<Declination> declination;
  std::optional<RigHeading> nose;
  std::optional<Bearing<True>> target;
  std::optional<Slack> slack;           // of the target
  std::optional<Bearing<True>> facing;  // direction of the heading sensor
  std::vector<Mark> others;             // further stations, the nearest first
  // The antenna's response around the target's direction, clockwise in equal steps, in dB relative
  // to its maximum.
  std::vector<double> pattern_db = {};
};

// Draws the dial; the outermost marks reach kDialMargin beyond the radius.
constexpr float kDialMargin = 52.0f;
void draw_dial(Ui& ui, const DialView& view);

}  // namespace mastwise::ui
