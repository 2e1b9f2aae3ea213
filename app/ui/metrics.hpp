#pragma once

#include <algorithm>

namespace mastwise::ui {

// Sizes. Screens measure in units: one unit is 1/7.44 mm, a pixel of an 8-inch 1280x800 tablet, so
// that a target has the same size on every screen.
constexpr float kUnitsPerMm = 7.4409f;
constexpr float kTouchUnits = 9.0f * kUnitsPerMm;  // the smallest side of a target
constexpr float kGapUnits = 2.0f * kUnitsPerMm;    // the smallest gap between two targets

struct Metrics {
  float width_px = 0.0f, height_px = 0.0f;
  float px_per_mm = 0.0f;
  float px_per_unit = 0.0f;
  float letters = 1.0f;  // how many times larger than usual, in units, texts are

  float width() const { return width_px / px_per_unit; }
  float height() const { return height_px / px_per_unit; }
  bool portrait() const { return height_px > width_px; }
  bool operator==(const Metrics&) const = default;
};

// The shorter and the longer side of a screen that the layout needs.
constexpr float kLeastLong = 1100.0f, kLeastShort = 676.0f;

// How many times larger texts may be in the same layout: 1.6 times the usual size on a tablet of 8
// inches, whose layout grows 1.16 times.
constexpr float kMostLetters = 1.38f;

// The same screen with larger texts: everything is larger as far as the layout has room, and
// beyond that the texts alone.
inline Metrics enlarged(Metrics metrics, float factor) {
  const float longer = std::max(metrics.width_px, metrics.height_px);
  const float shorter = std::min(metrics.width_px, metrics.height_px);
  const float most = std::min(longer / kLeastLong, shorter / kLeastShort);
  const float wanted = factor * metrics.px_per_unit;
  metrics.px_per_unit = std::max(metrics.px_per_unit, std::min(wanted, most));
  metrics.letters = std::clamp(wanted / metrics.px_per_unit, 1.0f, kMostLetters);
  return metrics;
}

// The sizes for a screen with these pixels and dots per inch. A very large screen shows everything
// larger. A screen too small for the layout shows it smaller, with targets under 9 mm: smaller
// screens are not supported.
inline Metrics metrics(float width_px, float height_px, float dots_per_inch) {
  constexpr float kMmPerInch = 25.4f;
  constexpr float kMostLong = 1640.0f;
  const float longer = std::max(width_px, height_px);
  const float shorter = std::min(width_px, height_px);
  const float px_per_mm = dots_per_inch / kMmPerInch;
  const float most = std::min(longer / kLeastLong, shorter / kLeastShort);
  const float least = std::min(longer / kMostLong, most);
  return {width_px, height_px, px_per_mm, std::clamp(px_per_mm / kUnitsPerMm, least, most)};
}

// Usual dots per inch of dash tablets and head units if the system does not report them:
// 7 inches at 800x480, 8 at 1280x800, 10.1 at 1920x1200 (common practice, no source).
inline float usual_dots_per_inch(float width_px, float height_px) {
  const float longer = std::max(width_px, height_px);
  if (longer <= 1024.0f) return 133.0f;
  if (longer <= 1366.0f) return 189.0f;
  return 224.0f;
}

}  // namespace mastwise::ui
