#include "core/plan/turn_plan.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <random>

#include <catch2/catch.hpp>

// Random curves whose arcs end on half degrees, against trying every half degree: whole peaks at
// whole degrees that fall by 2 a degree meet a floor of 70 there.
namespace mastwise {

namespace {

constexpr std::size_t kHalves = 720;
using Halves = std::array<double, kHalves>;
using reception::ChanceCurve;

struct Case {
  std::vector<std::optional<ChanceCurve>> curves = {};
  std::vector<Halves> halves = {};  // the same, by half degrees
};

// One, two or three lobes each, 3 to 30 degrees of tolerance.
Case random_case(std::mt19937& random, std::size_t most_stations) {
  const auto draw = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  Case made;
  const auto stations = static_cast<std::size_t>(draw(1, static_cast<int>(most_stations)));
  while (made.curves.size() < stations) {
    ChanceCurve::Values values = {};
    for (int lobe = draw(1, 3); lobe > 0; --lobe) {
      const int toward = draw(0, 359), peak = draw(76, 130);
      for (int h = 0; h < 360; ++h) {
        const int off = std::min(std::abs(h - toward), 360 - std::abs(h - toward));
        double& value = values[static_cast<std::size_t>(h)];
        value = std::clamp<double>(peak - 2 * off, value, 100.0);
      }
    }
    Halves halves;
    for (std::size_t i = 0; i < kHalves; ++i) {
      halves[i] = 0.5 * (values[i / 2] + values[(i + 1) / 2 % 360]);
    }
    made.curves.push_back(ChanceCurve({}, values));
    made.halves.push_back(halves);
  }
  return made;
}

unsigned brought_at(const Case& made, std::size_t half, double floor) {
  unsigned mask = 0;
  for (std::size_t s = 0; s < made.halves.size(); ++s) {
    if (made.halves[s][half] >= floor) mask |= 1U << s;
  }
  return mask;
}

// Every set of stations is reached with the fewest headings in turn.
std::size_t fewest_by_force(const Case& made, double floor) {
  std::vector<unsigned> masks;
  for (std::size_t half = 0; half < kHalves; ++half) masks.push_back(brought_at(made, half, floor));
  std::sort(masks.begin(), masks.end());
  masks.erase(std::unique(masks.begin(), masks.end()), masks.end());
  const unsigned all = (1U << made.halves.size()) - 1U;
  std::vector<bool> reached(all + 1U, false);
  std::vector<unsigned> front{0U};
  for (std::size_t headings = 0;; ++headings) {
    std::vector<unsigned> next;
    for (const unsigned have : front) {
      if (have == all) return headings;
      for (const unsigned mask : masks) {
        if (reached[have | mask]) continue;
        reached[have | mask] = true;
        next.push_back(have | mask);
      }
    }
    front = std::move(next);
  }
}

TurnPlan plan_of_all(const Case& made) {
  TurnPlanRequest request{.floor_percent = 70.0};
  for (std::size_t i = 0; i < made.curves.size(); ++i) request.wishes.push_back({.stations = {i}});
  return turn_plan(made.curves, request);
}

double sum_of(const Case& made, const TurnPlan& plan) {
  double sum = 0.0;
  for (const auto& curve : made.curves) {
    double best = 0.0;
    for (const PlannedHeading& heading : plan.headings) {
      best = std::max(best, curve->percent_at(heading.bearing));
    }
    sum += best;
  }
  return sum;
}

// The best sum of two headings that bring all.
double best_pair_by_force(const Case& made, double floor) {
  const std::size_t stations = made.halves.size();
  const unsigned all = (1U << stations) - 1U;
  double best = 0.0;
  for (std::size_t a = 0; a < kHalves; ++a) {
    for (std::size_t b = 0; b <= a; ++b) {
      if ((brought_at(made, a, floor) | brought_at(made, b, floor)) != all) continue;
      double sum = 0.0;
      for (const Halves& halves : made.halves) sum += std::max(halves[a], halves[b]);
      best = std::max(best, sum);
    }
  }
  return best;
}

}  // namespace

TEST_CASE("turn plan: as few headings as trying every half degree finds") {
  std::mt19937 random(11);
  std::array<int, 8> met{};
  const int kCases = test::kSanitized ? 300 : 3000;
  for (int i = 0; i < kCases; ++i) {
    const Case made = random_case(random, 9);
    const TurnPlan plan = plan_of_all(made);
    const std::size_t fewest = fewest_by_force(made, 70.0);
    INFO("case " << i << " of " << made.curves.size() << " stations");
    REQUIRE(plan.headings.size() == fewest);
    REQUIRE(plan.fewest_proved);
    ++met[std::min(fewest, met.size() - 1)];
    std::size_t relied_on = 0;
    for (const PlannedHeading& heading : plan.headings) {
      for (const Brought& each : heading.brings) {
        REQUIRE(each.chance_percent >= 70.0 - 1e-6);
        relied_on += each.relied_on ? 1U : 0U;
      }
      REQUIRE(heading.slack.left_deg >= 0.0);
      REQUIRE(heading.slack.right_deg >= 0.0);
    }
    REQUIRE(relied_on == made.curves.size());
  }
  // Plans of one to four headings were all met.
  for (std::size_t headings = 1; headings <= 4; ++headings) CHECK(met[headings] > kCases / 30);
}

TEST_CASE("turn plan: tolerance ends where a relied-on station fails") {
  std::mt19937 random(12);
  for (int i = 0; i < 300; ++i) {
    const Case made = random_case(random, 8);
    for (const PlannedHeading& heading : plan_of_all(made).headings) {
      if (heading.slack.all_round()) continue;
      const auto least_at = [&](double turn_deg) {
        double least = 100.0;
        for (const Brought& each : heading.brings) {
          if (!each.relied_on) continue;
          least = std::min(least, made.curves[each.station]->percent_at(
                                      heading.bearing + Turn::clockwise_deg(turn_deg)));
        }
        return least;
      };
      REQUIRE(least_at(0.999 * heading.slack.right_deg) >= 70.0 - 1e-6);
      REQUIRE(least_at(-0.999 * heading.slack.left_deg) >= 70.0 - 1e-6);
      REQUIRE(least_at(heading.slack.right_deg + 0.01) < 70.0);
      REQUIRE(least_at(-heading.slack.left_deg - 0.01) < 70.0);
    }
  }
}

TEST_CASE("turn plan: no other pair of headings brings noticeably more") {
  std::mt19937 random(13);
  int pairs = 0;
  for (int i = 0; i < 400 && pairs < 40; ++i) {
    const Case made = random_case(random, 6);
    const TurnPlan plan = plan_of_all(made);
    if (plan.headings.size() != 2) continue;
    ++pairs;
    INFO("case " << i);
    // Each heading may have been moved to the middle of a top flat within kFlat_percent.
    CHECK(sum_of(made, plan) >= best_pair_by_force(made, 70.0) - 2.0 * kFlat_percent - 1e-6);
  }
  CHECK(pairs == 40);
}

}  // namespace mastwise
