#include "app/map/draw_labels.hpp"

#include <cmath>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using screens::LabelField;
using touch::Point;
using touch::Rect;

namespace {

const Rect kArea{0.0f, 0.0f, 1000.0f, 700.0f};

Rect around_mark(Point middle, float radius) {
  return {middle.x - radius, middle.y - radius, middle.x + radius, middle.y + radius};
}

// Whether a circle's line runs through the rectangle, by walking around the circle.
bool walked_through(Point center, float radius, Rect rect) {
  for (int i = 0; i < 3600; ++i) {
    const float angle = static_cast<float>(i) * 3.14159265f / 1800.0f;
    if (rect.contains({center.x + radius * std::cos(angle), center.y + radius * std::sin(angle)})) {
      return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("map words never stand on marks, rings, lines or each other") {
  std::mt19937 random(5);
  std::uniform_real_distribution<float> x(0.0f, 1000.0f), y(0.0f, 700.0f), width(90.0f, 200.0f);
  constexpr float kMark = 19.0f;
  const Point center = kArea.center();
  std::size_t placed = 0, wanted = 0;
  for (int round = 0; round < 40; ++round) {
    LabelField field(kArea);
    for (const float radius : {110.0f, 220.0f, 330.0f}) field.block_ring(center, radius);
    const Point end{x(random), y(random)};
    field.block_line(center, end);
    std::vector<Point> marks;
    for (int i = 0; i < 24; ++i) marks.push_back({x(random), y(random)});
    for (const Point mark : marks) field.block_mark(mark, kMark);
    std::vector<Rect> plates;
    for (const Point mark : marks) {
      ++wanted;
      const auto place = field.beside(mark, kMark, width(random), 34.0f);
      if (!place) continue;
      ++placed;
      const Rect plate = place->plate;
      CHECK(kArea.contains({plate.left, plate.top}));
      CHECK(kArea.contains({plate.right, plate.bottom}));
      for (const Point other : marks) CHECK_FALSE(plate.overlaps(around_mark(other, kMark)));
      for (const Rect& other : plates) CHECK_FALSE(plate.overlaps(other));
      for (const float radius : {110.0f, 220.0f, 330.0f}) {
        CHECK_FALSE(walked_through(center, radius, plate));
      }
      for (int i = 0; i <= 100; ++i) {
        const Point on_line = center + (end - center) * (static_cast<float>(i) / 100.0f);
        CHECK_FALSE(plate.contains(on_line));
      }
      // The leader reaches the plate's edge.
      CHECK(plate.inset(-0.5f).contains(place->leader));
      plates.push_back(plate);
    }
  }
  // A field that places nothing would keep every rule.
  CHECK(placed > wanted * 6 / 10);
}

TEST_CASE("a leader goes around a mark that is in its way") {
  LabelField field(kArea);
  const Point mark{500.0f, 350.0f}, right{545.0f, 350.0f}, left{455.0f, 350.0f};
  for (const Point each : {mark, right, left}) field.block_mark(each, 19.0f);
  const auto place = field.beside(mark, 19.0f, 120.0f, 34.0f);
  REQUIRE(place);
  for (int i = 0; i <= 100; ++i) {
    const Point on_leader = mark + (place->leader - mark) * (static_cast<float>(i) / 100.0f);
    CHECK_FALSE(around_mark(right, 19.0f).contains(on_leader));
    CHECK_FALSE(around_mark(left, 19.0f).contains(on_leader));
  }
}

TEST_CASE("no leader line of the map crosses another, a mark or words") {
  std::mt19937 random(7);
  std::uniform_real_distribution<float> x(250.0f, 750.0f), y(150.0f, 550.0f), width(90.0f, 200.0f);
  constexpr float kMark = 19.0f;
  constexpr int kSteps = 200;
  std::size_t placed = 0, wanted = 0, crossed = 0;
  for (int round = 0; round < 60; ++round) {
    LabelField field(kArea);
    std::vector<Point> marks;
    for (int i = 0; i < 18; ++i) marks.push_back({x(random), y(random)});
    for (const Point mark : marks) field.block_mark(mark, kMark);
    struct Placed {
      Point mark;
      LabelField::Place place;
    };
    std::vector<Placed> all;
    for (const Point mark : marks) {
      ++wanted;
      if (const auto place = field.beside(mark, kMark, width(random), 34.0f)) {
        all.push_back({mark, *place});
      }
    }
    placed += all.size();
    // On which side of the other leader both ends are.
    const auto side = [](const Placed& line, Point point) {
      const Point way = line.place.leader - line.mark, off = point - line.mark;
      return way.x * off.y - way.y * off.x > 0.0f;
    };
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t j = 0; j < all.size(); ++j) {
        if (i == j) continue;
        const Placed &one = all[i], &other = all[j];
        const bool meets = side(one, other.mark) != side(one, other.place.leader) &&
                           side(other, one.mark) != side(other, one.place.leader);
        if (meets) ++crossed;
        for (int step = 0; step <= kSteps; ++step) {
          const Point on =
              one.mark + (one.place.leader - one.mark) * (static_cast<float>(step) / kSteps);
          if (other.place.plate.contains(on)) ++crossed;
        }
      }
    }
  }
  CHECK(crossed == 0);
  CHECK(placed > wanted * 6 / 10);
}

TEST_CASE("a mark without room has no words") {
  LabelField field(kArea);
  field.block(kArea);
  CHECK_FALSE(field.beside({500.0f, 350.0f}, 19.0f, 120.0f, 34.0f));
}

TEST_CASE("only a ring that breaks gives way, and only to a mark without other room") {
  using On = LabelField::On;
  const Rect on_ring{580.0f, 335.0f, 620.0f, 365.0f};
  LabelField whole(kArea), broken(kArea);
  whole.block_ring(kArea.center(), 100.0f);
  broken.block_ring(kArea.center(), 100.0f, true);
  CHECK_FALSE(whole.is_free(on_ring));
  CHECK_FALSE(whole.is_free(on_ring, On::BreakingRings));
  CHECK(whole.is_free(on_ring, On::Rings));
  CHECK_FALSE(broken.is_free(on_ring));
  CHECK(broken.is_free(on_ring, On::BreakingRings));
  // Room enough outside the ring: it stays whole.
  const auto outside = broken.beside({640.0f, 350.0f}, 19.0f, 150.0f, 34.0f);
  REQUIRE(outside);
  CHECK_FALSE(walked_through(kArea.center(), 100.0f, outside->plate));
  // Words that reach across the ring break it, or have no room.
  LabelField wide_whole(kArea), wide_broken(kArea);
  wide_whole.block_ring(kArea.center(), 200.0f);
  wide_broken.block_ring(kArea.center(), 200.0f, true);
  CHECK(wide_broken.beside(kArea.center(), 19.0f, 500.0f, 34.0f));
  CHECK_FALSE(wide_whole.beside(kArea.center(), 19.0f, 500.0f, 34.0f));
}
