#pragma once

#include "app/ui/ui.hpp"
#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace mastwise::ui {

// The dial's contents. Three rings, told apart by their marks and not by color: true bearings with
// solid ticks and letters, the compass with hollow ticks and numerals, the rig with dots.
struct DialView {
  // A further station at the rim.
  struct Mark {
    std::string label, short_label;
    Bearing<True> bearing;
    std::optional<double> chance_percent = {};
    bool wanted = false;  // pinned
  };

  // A null that could lie on an interferer, and the heading that puts it there.
  struct Null {
    Bearing<True> heading, interferer;
    double width_deg = 0.0;
  };

  Point center;
  float radius = 0.0f;  // of the outer ring
  Rect room;            // for the labels around it
  Bearing<True> up;     // direction at the top
  std::optional<Declination> declination;
  std::optional<RigHeading> nose;
  std::optional<Bearing<True>> target;
  std::optional<Slack> slack;           // of the target
  std::optional<Bearing<True>> facing;  // direction of the heading sensor
  double facing_error_deg = 0.0;        // one standard deviation
  std::optional<Null> null = {};
  std::vector<Mark> others;    // further stations, the likeliest first
  std::string from_nose = {};  // "97° right": the target from the nose
  // The antenna's response around the target's direction, clockwise in equal steps, in dB relative
  // to its maximum.
  std::vector<double> pattern_db = {};
  // Draws what stands around the stop within the given radius around the center; may be empty.
  std::function<void(Canvas&, const Theme&, Point center, float radius)> surroundings = {};
};

// Draws the dial; the outermost marks reach kDialMargin beyond the radius.
constexpr float kDialMargin = 44.0f;
void draw_dial(Ui& ui, const DialView& view);

// The degrees at an end of the tolerance, and the middle of their place.
struct ToleranceEnd {
  Point at;
  std::string words;
};
// Both ends; none without a target or tolerance, or if it is all round.
std::vector<ToleranceEnd> tolerance_ends(const DialView& view);

// The labels of the stations at the rim, in the corners around the dial, with lines to their marks.
void draw_dial_labels(Ui& ui, const DialView& view);

}  // namespace mastwise::ui
