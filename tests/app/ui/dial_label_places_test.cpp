#include "app/ui/dial_label_places.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using touch::Point;
using touch::Rect;
using ui::DialLabelPlace;

namespace {

// As on an 8-inch tablet, whose left edge of the dial is at the rail.
const ui::DialRoom kDial{{444.0f, 392.0f}, 260.0f, 304.0f, {136.0f, 24.0f, 784.0f, 664.0f}};

std::vector<ui::DialLabelWish> random_marks(std::mt19937& random) {
  std::uniform_real_distribution<float> angle(0.0f, 6.2831853f), width(110.0f, 240.0f);
  std::vector<ui::DialLabelWish> wishes;
  while (wishes.size() < 7) {
    const float at = angle(random);
    const Point mark{kDial.center.x + kDial.radius * std::sin(at),
                     kDial.center.y - kDial.radius * std::cos(at)};
    const bool near = std::any_of(wishes.begin(), wishes.end(), [&](const auto& other) {
      return touch::distance(mark, other.mark) < 40.0f;
    });
    if (!near) wishes.push_back({mark, width(random), 70.0f});
  }
  std::sort(wishes.begin(), wishes.end(), [](const auto& a, const auto& b) {
    return std::fabs(a.mark.y - kDial.center.y) > std::fabs(b.mark.y - kDial.center.y);
  });
  return wishes;
}

// Points along a line, so that the check is not the code under test.
std::vector<Point> walked(const std::vector<Point>& line) {
  constexpr int kSteps = 400;
  std::vector<Point> points;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    for (int step = 0; step <= kSteps; ++step) {
      points.push_back(line[i] + (line[i + 1] - line[i]) * (static_cast<float>(step) / kSteps));
    }
  }
  return points;
}

// How often the leader of one lies on the words, the mark or the blocked place of another.
int crossings(const std::vector<std::optional<DialLabelPlace>>& places,
              const std::vector<ui::DialLabelWish>& wishes, const Rect& blocked) {
  int found = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i]) continue;
    if (places[i]->words.overlaps(blocked)) ++found;
    const std::vector<Point> leader = walked(places[i]->leader);
    const auto on = [&](auto covers) { return std::any_of(leader.begin(), leader.end(), covers); };
    if (on([&](Point point) { return blocked.contains(point); })) ++found;
    for (std::size_t j = 0; j < places.size(); ++j) {
      if (i == j) continue;
      if (on([&](Point point) { return touch::distance(point, wishes[j].mark) < ui::kDialMark; })) {
        ++found;
      }
      if (!places[j]) continue;
      if (places[i]->words.overlaps(places[j]->words)) ++found;
      if (on([&](Point point) { return places[j]->words.contains(point); })) ++found;
    }
  }
  return found;
}

}  // namespace

TEST_CASE("no leader line of the dial crosses a label, a mark or the tolerance's degrees") {
  std::mt19937 random(11);
  std::size_t placed = 0, wanted = 0;
  int crossed = 0;
  for (int round = 0; round < 300; ++round) {
    const auto wishes = random_marks(random);
    const Rect blocked{640.0f, 120.0f, 700.0f, 160.0f};
    const auto places = ui::place_dial_labels(kDial, wishes, std::vector{blocked});
    REQUIRE(places.size() == wishes.size());
    crossed += crossings(places, wishes, blocked);
    wanted += wishes.size();
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (!places[i]) continue;
      ++placed;
      CHECK(touch::distance(places[i]->leader.back(), wishes[i].mark) < 0.01f);
      CHECK(places[i]->words.left >= kDial.room.left - 0.01f);
      CHECK(places[i]->words.right <= kDial.room.right + 0.01f);
    }
  }
  CHECK(crossed == 0);
  // A dial without labels would keep every rule.
  CHECK(placed > wanted * 6 / 10);
}

TEST_CASE("two stations at one side of the dial have their labels one below the other") {
  const Point upper{184.3f, 379.0f}, lower{186.8f, 430.0f};
  const std::vector<ui::DialLabelWish> wishes{{upper, 160.0f, 70.0f}, {lower, 160.0f, 70.0f}};
  const auto places = ui::place_dial_labels(kDial, wishes, {});
  REQUIRE(places[0]);
  REQUIRE(places[1]);
  CHECK(crossings(places, wishes, {}) == 0);
}
