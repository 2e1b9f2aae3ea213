#include "app/paper/sections.hpp"

#include <cmath>
#include <string>

#include <fmt/format.h>

// Drawings for a heading that is sighted: the line over the mast, and a protractor for an angle
// from a shadow.
namespace mastwise::paper {
namespace {

constexpr double kRadius_pt = 74.0, kLabels_pt = 12.0, kDrawing_pt = kRadius_pt + kLabels_pt;

// From above: a person, and the line over the mast, on which the boom lies.
void draw_sight_line(Pen& pen, const Area& area) {
  const double y = area.top + 0.5 * kDrawing_pt, mast = area.left + 0.58 * area.width();
  constexpr double kDash_pt = 7.0, kGap_pt = 5.0, kHead_pt = 11.0;
  for (double x = area.left + 16.0; x < area.right - kHead_pt; x += kDash_pt + kGap_pt) {
    pen.line({x, y}, {x + kDash_pt, y}, 1.0, 0.35);
  }
  pen.polygon({{area.right, y}, {area.right - kHead_pt, y - 4.0}, {area.right - kHead_pt, y + 4.0}},
              0.0);
  pen.disc({area.left + 7.0, y}, 6.0);
  pen.line({mast - 26.0, y}, {mast + 26.0, y}, 2.6);
  for (const double at : {-23.0, -8.0, 7.0, 22.0}) {
    const double half = 20.0 - 0.15 * at;
    pen.line({mast + at, y - half}, {mast + at, y + half}, 1.2);
  }
  pen.disc({mast, y}, 4.5);
  pen.text({area.left, y + 20.0}, "you", kSmallGray);
  pen.text({mast, y + 34.0}, "mast and boom", kSmallGray, Align::Center);
  pen.text({area.right, y + 16.0}, "heading", kSmallGray, Align::Right);
}

// Half a circle of degrees to both sides of a line.
void draw_protractor(Pen& pen, Spot center) {
  pen.arc(center, kRadius_pt, -90.0, 90.0, 0.9);
  pen.line({center.x - kRadius_pt, center.y}, {center.x + kRadius_pt, center.y}, 0.9);
  for (int degrees = -90; degrees <= 90; ++degrees) {
    const bool ten = degrees % 10 == 0, five = degrees % 5 == 0;
    const double length = ten ? 9.0 : five ? 6.0 : 3.0;
    pen.line(around(center, kRadius_pt - length, degrees), around(center, kRadius_pt, degrees),
             ten ? 0.8 : 0.35);
    if (degrees % 30 != 0) continue;
    const Spot at = around(center, kRadius_pt + 6.5, degrees);
    pen.text({at.x, at.y + 2.4}, std::to_string(std::abs(degrees)), kSmallGray, Align::Center);
  }
  pen.line(center, around(center, kRadius_pt, 0.0), 1.4);
  pen.disc(center, 2.2);
}

}  // namespace

double write_sighting(Pen& pen, const Area& area) {
  constexpr double kBelow_pt = 4.0;
  Area left = area, right = area;
  left.right = area.left + 0.44 * area.width();
  right.left = area.left + 0.5 * area.width();
  left.top = write_label(pen, left, "ALONG THE LINE, THE BOOM END-ON");
  right.top = write_label(pen, right, "PROTRACTOR");
  draw_sight_line(pen, left);
  const Spot center{right.left + kRadius_pt + kLabels_pt, right.top + kDrawing_pt};
  draw_protractor(pen, center);
  const double words = center.x + kRadius_pt + kLabels_pt + 8.0;
  pen.paragraph({words, right.top + 8.0}, right.right - words,
                "Lay the dot below a plumb line and the 0 along its shadow, away from the sun. "
                "Count left or right from there. Beyond 90, count from the line toward the sun.",
                kBody);
  return right.top + kDrawing_pt + kBelow_pt;
}

double height_of_sighting() {
  constexpr double kLabel_pt = 13.5;
  return kLabel_pt + kDrawing_pt + 4.0;
}

}  // namespace mastwise::paper
