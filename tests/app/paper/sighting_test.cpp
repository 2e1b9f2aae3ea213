#include "app/paper/sections.hpp"
#include "app/service/startup.hpp"

#include <cmath>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::paper;

// A protractor's ticks are whole degrees from -90 to 90, each at its own angle from the dot.
TEST_CASE("paper: the protractor has a tick at each degree of half a circle") {
  const auto faces = Typefaces::load(service::fonts_folder());
  REQUIRE(faces);
  Page page{.size = kLetter};
  Pen pen(page, *faces);
  const Area area{30.0, 100.0, 582.0, 400.0};
  const double bottom = write_sighting(pen, area);
  CHECK(bottom == Approx(area.top + height_of_sighting()));
  const Arc* half = nullptr;
  for (const paper::Mark& mark : page.marks) {
    const auto* arc = std::get_if<Arc>(&mark);
    if (arc != nullptr && arc->from_deg == -90.0 && arc->to_deg == 90.0) half = arc;
  }
  REQUIRE(half != nullptr);
  std::set<long> degrees;
  for (const paper::Mark& mark : page.marks) {
    const auto* shape = std::get_if<Shape>(&mark);
    if (shape == nullptr || shape->corners.size() != 2) continue;
    const Spot& tip = shape->corners[1];
    const double right = tip.x - half->center.x, up = half->center.y - tip.y;
    if (std::fabs(std::hypot(right, up) - half->radius_pt) > 1e-6) continue;
    const double angle_deg = std::atan2(right, up) * 180.0 / M_PI;
    CHECK(angle_deg == Approx(std::round(angle_deg)).margin(1e-6));
    degrees.insert(std::lround(angle_deg));
  }
  CHECK(degrees.size() == 181);
}
