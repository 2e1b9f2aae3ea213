#pragma once

#include "tests/support/dice.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

// The vertical acceleration of a rig's floor, simulated.
namespace mastwise::test {

inline constexpr double kRoadSamples_hz = 400.0;

// ISO 8608: the displacement's spectral density at 0.1 cycles a meter, 1e-6 m^3, the geometric
// means of the classes; it falls with the square of the spatial frequency [from memory].
enum class RoadClass { a = 16, b = 64, c = 256, d = 1024 };

// A golden car, the quarter car of the International Roughness Index: M. W. Sayers, On the
// Calculation of International Roughness Index from Longitudinal Road Profile (1995): by the sprung
// mass, tire 653 and suspension 63.3 1/s^2, damper 6.0 1/s, unsprung mass 0.15 [from memory].
inline std::vector<double> driven(RoadClass road, double speed_kmh, double seconds, Dice& dice) {
  constexpr double kTire = 653.0, kSpring = 63.3, kDamper = 6.0, kUnsprung = 0.15;
  const double speed_mps = speed_kmh / 3.6, step_s = 1.0 / kRoadSamples_hz;
  // White noise of the road's slope: G(n0) n0^2 (2 pi)^2 v, on one side of zero, by time.
  const double density = static_cast<double>(road) * 1e-6 * 0.01 * 4.0 * std::numbers::pi *
                         std::numbers::pi * speed_mps;
  const double climb_mps = std::sqrt(density * kRoadSamples_hz / 2.0);
  // Below 0.01 cycles a meter a road's waves are hills.
  const double forget = std::exp(-2.0 * std::numbers::pi * 0.01 * speed_mps * step_s);
  double ground = 0.0, body = 0.0, body_mps = 0.0, wheel = 0.0, wheel_mps = 0.0;
  std::vector<double> felt;
  const auto settle = static_cast<std::size_t>(10.0 * kRoadSamples_hz);
  const auto count = settle + static_cast<std::size_t>(seconds * kRoadSamples_hz);
  for (std::size_t i = 0; i < count; ++i) {
    ground = forget * ground + climb_mps * dice.normal() * step_s;
    const double pull = kSpring * (wheel - body) + kDamper * (wheel_mps - body_mps);
    body_mps += step_s * pull;
    wheel_mps += step_s * (kTire * (ground - wheel) - pull) / kUnsprung;
    body += step_s * body_mps;
    wheel += step_s * wheel_mps;
    if (i >= settle) felt.push_back(pull);
  }
  return felt;
}

struct AtRest {
  int people = 0;
  double gusts_mps2 = 0.0;  // root mean square of the rig's rocking in wind
  double hum_mps2 = 0.0;    // likewise of a generator or an air conditioner at 30 Hz
};

// A rig of 4 t on its springs, 1.6 Hz with a quarter of critical damping [common practice, no
// source]. People of 75 kg get up every five minutes and walk for two to eight seconds, 1.6 to 2.2
// steps a second; a step's first three harmonics are 0.4, 0.1 and 0.1 of the weight [Bachmann and
// Ammann, Vibrations in Structures (1987), from memory].
inline std::vector<double> at_rest(const AtRest& rest, double seconds, Dice& dice) {
  constexpr double kMass_kg = 4000.0, kPerson_n = 75.0 * 9.81, kOwn_hz = 1.6, kDamping = 0.25;
  constexpr double kEvery_s = 300.0;
  const double step_s = 1.0 / kRoadSamples_hz, own = 2.0 * std::numbers::pi * kOwn_hz;
  struct Walk {
    double from_s = 0.0, to_s = 0.0, steps_hz = 2.0;
  };
  std::vector<Walk> walks;
  for (int person = 0; person < rest.people; ++person) {
    for (double at_s = kEvery_s * dice.uniform(); at_s < seconds;
         at_s += 2.0 * kEvery_s * dice.uniform()) {
      walks.push_back({at_s, at_s + dice.between(2.0, 8.0), dice.between(1.6, 2.2)});
    }
  }
  std::sort(walks.begin(), walks.end(),
            [](const Walk& a, const Walk& b) { return a.from_s < b.from_s; });
  std::vector<double> felt;
  double place = 0.0, speed = 0.0, gust = 0.0;
  std::size_t first = 0;
  // Gusts are noise of half a second about the rig's own motion.
  const double keep = std::exp(-step_s / 0.5), stir = std::sqrt(1.0 - keep * keep);
  for (std::size_t i = 0; i < static_cast<std::size_t>(seconds * kRoadSamples_hz); ++i) {
    const double at_s = static_cast<double>(i) * step_s;
    double force_n = 0.0;
    while (first < walks.size() && walks[first].to_s + 10.0 < at_s) ++first;
    for (std::size_t k = first; k < walks.size() && walks[k].from_s <= at_s; ++k) {
      if (at_s > walks[k].to_s) continue;
      const double phase = 2.0 * std::numbers::pi * walks[k].steps_hz * (at_s - walks[k].from_s);
      force_n += kPerson_n * (0.4 * std::sin(phase) + 0.1 * std::sin(2.0 * phase) +
                              0.1 * std::sin(3.0 * phase));
    }
    gust = keep * gust + stir * rest.gusts_mps2 * dice.normal();
    const double push = force_n / kMass_kg - own * own * place - 2.0 * kDamping * own * speed;
    speed += step_s * push;
    place += step_s * speed;
    felt.push_back(push + gust +
                   rest.hum_mps2 * std::numbers::sqrt2 *
                       std::sin(2.0 * std::numbers::pi * 30.3 * at_s));
  }
  return felt;
}

}  // namespace mastwise::test
