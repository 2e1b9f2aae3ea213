#include "app/look/color_vision.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::ui {
namespace {

using Channels = std::array<double, 3>;
using Matrix = std::array<Channels, 3>;

constexpr Matrix kProtan{
    {{0.11238, 0.88762, 0.0}, {0.11238, 0.88762, 0.0}, {0.00401, -0.00401, 1.0}}};
constexpr Matrix kDeutan{
    {{0.29275, 0.70725, 0.0}, {0.29275, 0.70725, 0.0}, {-0.02234, 0.02234, 1.0}}};
// On either side of the plane through the neutral axis.
constexpr Matrix kTritanFirst{
    {{1.01277, 0.13548, -0.14826}, {-0.01243, 0.86812, 0.14431}, {0.07589, 0.80500, 0.11911}}};
constexpr Matrix kTritanSecond{
    {{0.93678, 0.18979, -0.12657}, {0.06154, 0.81526, 0.12320}, {-0.37562, 1.12767, 0.24796}}};
constexpr Channels kTritanPlane{0.03901, -0.02788, -0.01113};

// D65 with the observer of 2 degrees.
constexpr Channels kWhite{0.95047, 1.0, 1.08883};
constexpr Matrix kXyz{{{0.4124564, 0.3575761, 0.1804375},
                       {0.2126729, 0.7151522, 0.0721750},
                       {0.0193339, 0.1191920, 0.9503041}}};

double dot(const Channels& a, const Channels& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Channels times(const Matrix& matrix, const Channels& channels) {
  return {dot(matrix[0], channels), dot(matrix[1], channels), dot(matrix[2], channels)};
}

double light_of(std::uint8_t channel) {
  const double share = channel / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

std::uint8_t channel_of(double light) {
  const double in = std::clamp(light, 0.0, 1.0);
  const double share = in <= 0.0031308 ? 12.92 * in : 1.055 * std::pow(in, 1.0 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(255.0 * share));
}

Channels lights_of(Color color) {
  return {light_of(color.red), light_of(color.green), light_of(color.blue)};
}

// The hue of a color's a and b, 0 to 360 degrees.
double hue_deg(double a, double b) {
  if (a == 0.0 && b == 0.0) return 0.0;
  const double deg = std::atan2(b, a) * 180.0 / std::numbers::pi;
  return deg < 0.0 ? deg + 360.0 : deg;
}

double radians(double deg) {
  return deg * std::numbers::pi / 180.0;
}

// x^7 / (x^7 + 25^7), the formula's measure of how colorful two colors are.
double seventh_share(double x) {
  constexpr double kSeventhOf25 = 6103515625.0;
  const double seventh = std::pow(x, 7.0);
  return seventh / (seventh + kSeventhOf25);
}

}  // namespace

Color as_seen(Color color, Eyes eyes) {
  if (eyes == Eyes::Usual) return color;
  const Channels lights = lights_of(color);
  const Matrix& tritan = dot(kTritanPlane, lights) >= 0.0 ? kTritanFirst : kTritanSecond;
  const Matrix& matrix = eyes == Eyes::Protanopia     ? kProtan
                         : eyes == Eyes::Deuteranopia ? kDeutan
                                                      : tritan;
  const Channels seen = times(matrix, lights);
  return {channel_of(seen[0]), channel_of(seen[1]), channel_of(seen[2])};
}

Lab lab_of(Color color) {
  constexpr double kEdge = 216.0 / 24389.0, kSlope = 24389.0 / 27.0;
  Channels f = times(kXyz, lights_of(color));
  for (std::size_t i = 0; i < f.size(); ++i) {
    const double share = f[i] / kWhite[i];
    f[i] = share > kEdge ? std::cbrt(share) : (kSlope * share + 16.0) / 116.0;
  }
  return {116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])};
}

double color_difference(const Lab& one, const Lab& other) {
  const double chroma = 0.5 * (std::hypot(one.a, one.b) + std::hypot(other.a, other.b));
  const double stretch = 1.0 + 0.5 * (1.0 - std::sqrt(seventh_share(chroma)));
  const double a1 = stretch * one.a, a2 = stretch * other.a;
  const double c1 = std::hypot(a1, one.b), c2 = std::hypot(a2, other.b);
  const double h1 = hue_deg(a1, one.b), h2 = hue_deg(a2, other.b);
  const bool gray = c1 * c2 == 0.0;
  double turn = gray ? 0.0 : h2 - h1;
  if (turn > 180.0) turn -= 360.0;
  if (turn < -180.0) turn += 360.0;
  double hue = h1 + h2;
  if (!gray) {
    hue *= 0.5;
    if (std::fabs(h1 - h2) > 180.0) hue += h1 + h2 < 360.0 ? 180.0 : -180.0;
  }
  const double l = 0.5 * (one.l + other.l), c = 0.5 * (c1 + c2);
  const double t = 1.0 - 0.17 * std::cos(radians(hue - 30.0)) +
                   0.24 * std::cos(radians(2.0 * hue)) + 0.32 * std::cos(radians(3.0 * hue + 6.0)) -
                   0.20 * std::cos(radians(4.0 * hue - 63.0));
  const double off = l - 50.0;
  const double by_l = 1.0 + 0.015 * off * off / std::sqrt(20.0 + off * off);
  const double by_c = 1.0 + 0.045 * c, by_h = 1.0 + 0.015 * c * t;
  const double bend_deg = 30.0 * std::exp(-std::pow((hue - 275.0) / 25.0, 2.0));
  const double rotation = -2.0 * std::sqrt(seventh_share(c)) * std::sin(radians(2.0 * bend_deg));
  const double dl = (other.l - one.l) / by_l, dc = (c2 - c1) / by_c;
  const double dh = 2.0 * std::sqrt(c1 * c2) * std::sin(radians(turn / 2.0)) / by_h;
  return std::sqrt(dl * dl + dc * dc + dh * dh + rotation * dc * dh);
}

}  // namespace mastwise::ui
