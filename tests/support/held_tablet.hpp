#pragma once

#include "core/motion/vector.hpp"
#include "tests/support/dice.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace mastwise::test {

// How a person holds a tablet: the compass course they face, how far the far edge is up from level
// (90 is upright), and how far it is turned clockwise in its own plane.
struct Hold {
  double faces_deg = 0.0, tilt_deg = 45.0, turned_deg = 0.0;
};

// A tablet with its iron in the earth's field, as its own sensors see it. Our own simulation.
struct HeldTablet {
  double strength_ut = 52.0, dip_deg = 66.0;
  motion::Vector hard_ut = {};
  std::array<double, 9> soft{1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0};  // by rows
  double field_noise_ut = 0.0, acceleration_noise_mps2 = 0.0;
  motion::Vector nearby_ut = {};  // of iron beside it: east, north, up

  // Iron of an ordinary tablet: tens of microtesla, a few percent.
  static HeldTablet any(Dice& dice) {
    HeldTablet tablet;
    tablet.hard_ut = {30.0 * dice.normal(), 30.0 * dice.normal(), 30.0 * dice.normal()};
    // Symmetric, as iron without permanent magnetism is.
    const std::array<std::size_t, 3> upper{1, 2, 5}, lower{3, 6, 7};
    for (const std::size_t i : {0U, 4U, 8U}) tablet.soft[i] += 0.04 * dice.normal();
    for (std::size_t i = 0; i < upper.size(); ++i) {
      tablet.soft[upper[i]] = tablet.soft[lower[i]] = 0.03 * dice.normal();
    }
    tablet.field_noise_ut = 0.5;
    tablet.acceleration_noise_mps2 = 0.05;
    return tablet;
  }

  // One of these where the earth's field is anything but weak: 30 to 60 microtesla, dip to 72
  // degrees.
  static HeldTablet anywhere(Dice& dice) {
    HeldTablet tablet = any(dice);
    tablet.strength_ut = dice.between(30.0, 60.0);
    tablet.dip_deg = dice.between(-72.0, 72.0);
    return tablet;
  }

  struct Seen {
    motion::Vector acceleration_mps2, field_ut;
  };
  Seen seen(const Hold& hold, Dice& dice) const {
    using motion::Vector;
    constexpr double kDegree = std::numbers::pi / 180.0, kGravity = 9.80665;
    const double faces = hold.faces_deg * kDegree, tilt = hold.tilt_deg * kDegree;
    const double turned = hold.turned_deg * kDegree;
    const Vector ahead{std::sin(faces), std::cos(faces), 0.0}, up{0.0, 0.0, 1.0};
    const Vector right = cross(ahead, up);
    const Vector edge = std::cos(tilt) * ahead + std::sin(tilt) * up;
    const Vector x = std::cos(turned) * right - std::sin(turned) * edge;
    const Vector y = std::sin(turned) * right + std::cos(turned) * edge;
    const Vector z = cross(x, y);
    const auto in_tablet = [&](const Vector& v) { return Vector{dot(v, x), dot(v, y), dot(v, z)}; };
    const Vector earth{0.0, strength_ut * std::cos(dip_deg * kDegree),
                       -strength_ut * std::sin(dip_deg * kDegree)};
    const Vector f = in_tablet(earth + nearby_ut);
    const Vector drawn{soft[0] * f.x + soft[1] * f.y + soft[2] * f.z,
                       soft[3] * f.x + soft[4] * f.y + soft[5] * f.z,
                       soft[6] * f.x + soft[7] * f.y + soft[8] * f.z};
    const auto noise = [&](double by) {
      return Vector{by * dice.normal(), by * dice.normal(), by * dice.normal()};
    };
    return {kGravity * in_tablet(up) + noise(acceleration_noise_mps2),
            drawn + hard_ut + noise(field_noise_ut)};
  }

  // A turn around oneself while the tablet tumbles, eight readings a second for a minute.
  std::vector<Seen> turned_and_tumbled(Dice& dice, double share = 1.0) const {
    std::vector<Seen> all;
    constexpr int kReadings = 480;
    for (int i = 0; i < static_cast<int>(share * kReadings); ++i) {
      const double part = static_cast<double>(i) / kReadings;
      all.push_back(seen({.faces_deg = 360.0 * part,
                          .tilt_deg = 360.0 * 4.6 * part,
                          .turned_deg = 360.0 * 2.7 * part},
                         dice));
    }
    return all;
  }
};

}  // namespace mastwise::test
