#include "core/propagation/p1812/profile_scan.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::p1812 {

namespace {

constexpr Bulges kBulges = {500.0 / 8930.8, 500.0 / 19113.0};  // 4/3-like and beta earth, m/km^2

struct Case {
  std::vector<double> distances_km;
  std::vector<double> heights_m;
  std::vector<double> reciprocals;
  Line antennas;

  Section surveyed() const {
    return {.distances_km = distances_km.data(),
            .points = heights_m.size(),
            .length_km = distances_km.back()};
  }
  Section even() const {
    return {.spacing_km = distances_km[1],
            .reciprocals = reciprocals.data(),
            .points = heights_m.size(),
            .length_km = distances_km.back()};
  }
};

Case random_case(std::mt19937& random, std::size_t points, double antenna_m) {
  std::uniform_real_distribution<double> height(-100.0, 900.0);
  Case made;
  const double step_km = std::uniform_real_distribution<double>(0.05, 0.9)(random);
  for (std::size_t i = 0; i < points; ++i) {
    made.distances_km.push_back(step_km * static_cast<double>(i));
    made.heights_m.push_back(height(random));
    made.reciprocals.push_back(i == 0 ? 1.0 : 1.0 / static_cast<double>(i));
  }
  made.antennas = {made.heights_m.front() + antenna_m, made.heights_m.back() + 0.5 * antenna_m};
  return made;
}

// The maxima as the Recommendation writes them, point by point.
struct Plain {
  double above_line = -1e300, alpha_t = -1e300, alpha_r = -1e300;
  double theta_t = -1e300, theta_r = -1e300, stim_beta = -1e300, srim_beta = -1e300;
  double v_per_root = -1e300;  // (15) without sqrt(0.002 d / lambda)
};

Plain plain_maxima(const Case& made) {
  Plain found;
  const double d = made.distances_km.back();
  const auto [hts, hrs] = made.antennas;
  for (std::size_t i = 1; i + 1 < made.heights_m.size(); ++i) {
    const double t = made.distances_km[i];
    const double h = made.heights_m[i];
    const double line = (hts * (d - t) + hrs * t) / d;
    found.above_line = std::max(found.above_line, h - line);                      // (87d)
    found.alpha_t = std::max(found.alpha_t, (h - line) / t);                      // (87b)
    found.alpha_r = std::max(found.alpha_r, (h - line) / (d - t));                // (87c)
    found.theta_t = std::max(found.theta_t, (h - hts) / t - kBulges.median * t);  // (77)
    found.theta_r =
        std::max(found.theta_r, (h - hrs) / (d - t) - kBulges.median * (d - t));  // (80)
    const double raised = h + kBulges.beta * t * (d - t);
    found.stim_beta = std::max(found.stim_beta, (raised - hts) / t);        // (13)
    found.srim_beta = std::max(found.srim_beta, (raised - hrs) / (d - t));  // (17)
    const double median_raised = h + kBulges.median * t * (d - t);
    found.v_per_root =
        std::max(found.v_per_root, (median_raised - line) / std::sqrt(t * (d - t)));  // (15)
  }
  return found;
}

void check_against(const Plain& plain, const Case& made, const Section& section) {
  const Outlook seen = look_along(section, made.heights_m.data(), made.antennas, kBulges);
  const Obstacles& found = seen.obstacles;
  const double d = section.length_km;
  const double rise = (made.antennas.end_m - made.antennas.start_m) / d;
  CHECK(found.above_line_m == Approx(plain.above_line).epsilon(1e-9).margin(1e-9));
  CHECK(found.transmitter_slope - rise == Approx(plain.alpha_t).epsilon(1e-9).margin(1e-9));
  CHECK(found.receiver_slope + rise == Approx(plain.alpha_r).epsilon(1e-9).margin(1e-9));
  CHECK(found.transmitter_horizon_median == Approx(plain.theta_t).epsilon(1e-9).margin(1e-9));
  CHECK(found.receiver_horizon_median == Approx(plain.theta_r).epsilon(1e-9).margin(1e-9));
  CHECK(found.transmitter_horizon_beta + kBulges.beta * d ==
        Approx(plain.stim_beta).epsilon(1e-9).margin(1e-9));
  CHECK(found.receiver_horizon_beta + kBulges.beta * d ==
        Approx(plain.srim_beta).epsilon(1e-9).margin(1e-9));
  if (plain.v_per_root < 0.0) {
    CHECK(seen.clearances.median ==
          Approx(-plain.v_per_root * plain.v_per_root).epsilon(1e-9).margin(1e-9));
  }
}

}  // namespace

TEST_CASE("One pass over a profile finds the maxima that P.1812 defines point by point") {
  std::mt19937 random(1812);
  for (const std::size_t points : {4U, 5U, 6U, 7U, 64U, 257U}) {
    for (const double antenna_m : {2.0, 300.0, 3000.0}) {
      const Case made = random_case(random, points, antenna_m);
      const Plain plain = plain_maxima(made);
      INFO(points << " points, antenna " << antenna_m << " m");
      check_against(plain, made, made.surveyed());
      check_against(plain, made, made.even());
    }
  }
}

TEST_CASE("Horizon points are at the maxima") {
  std::mt19937 random(77);
  for (int round = 0; round < 20; ++round) {
    const Case made = random_case(random, 40, 20.0);
    const Section section = made.even();
    const double* heights = made.heights_m.data();
    const Obstacles seen = look_along(section, heights, made.antennas, kBulges).obstacles;
    const std::size_t start = find_transmitter_horizon(
        section, heights, made.antennas, kBulges.median, seen.transmitter_horizon_median);
    const std::size_t end = find_receiver_horizon(section, heights, made.antennas, kBulges.median,
                                                  seen.receiver_horizon_median);
    const double d = section.length_km;
    const double t = made.distances_km[start];
    const double r = d - made.distances_km[end];
    CHECK((heights[start] - made.antennas.start_m) / t - kBulges.median * t ==
          Approx(seen.transmitter_horizon_median).epsilon(1e-9));
    CHECK((heights[end] - made.antennas.end_m) / r - kBulges.median * r ==
          Approx(seen.receiver_horizon_median).epsilon(1e-9));
    CHECK(start <= end);
  }
}

TEST_CASE("The sums of the smooth surface match (83) and (84), for even and surveyed points") {
  std::mt19937 random(83);
  for (const std::size_t points : {4U, 5U, 100U, 101U}) {
    const Case made = random_case(random, points, 10.0);
    double v1 = 0.0, v2 = 0.0;
    for (std::size_t i = 1; i < points; ++i) {
      const double near = made.distances_km[i - 1], far = made.distances_km[i];
      const double low = made.heights_m[i - 1], high = made.heights_m[i];
      v1 += (far - near) * (high + low);
      v2 += (far - near) * (high * (2.0 * far + near) + low * (far + 2.0 * near));
    }
    for (const Section& section : {made.surveyed(), made.even()}) {
      const GroundSums sums = sum_ground(section, made.heights_m.data());
      CHECK(sums.v1 == Approx(v1).epsilon(1e-10));
      CHECK(sums.v2 == Approx(v2).epsilon(1e-10));
      CHECK(sums.lowest_m == *std::min_element(made.heights_m.begin(), made.heights_m.end()));
      CHECK(sums.highest_m == *std::max_element(made.heights_m.begin(), made.heights_m.end()));
      CHECK(sums.shortest_step_km == Approx(made.distances_km[1]).epsilon(1e-9));
    }
  }
}

TEST_CASE("The smooth surface is the least-squares line of a sloping plain") {
  // Heights 100 + 3 d: the line is the ground itself, hst = 100 and hsr = 100 + 3 d (85), (86).
  Case made;
  for (int i = 0; i <= 30; ++i) {
    made.distances_km.push_back(0.5 * i + 0.01 * (i % 3));
    made.heights_m.push_back(100.0 + 3.0 * made.distances_km.back());
  }
  const GroundSums sums = sum_ground(made.surveyed(), made.heights_m.data());
  const double d = made.distances_km.back();
  CHECK((2.0 * sums.v1 * d - sums.v2) / (d * d) == Approx(100.0).epsilon(1e-9));
  CHECK((sums.v2 - sums.v1 * d) / (d * d) == Approx(100.0 + 3.0 * d).epsilon(1e-9));
}

}  // namespace mastwise::p1812
