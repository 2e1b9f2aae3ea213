#include "core/propagation/p1812/spherical_earth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::p1812 {

namespace {

struct Ground {
  double permittivity;
  double conductivity;  // S/m
};
constexpr Ground kLand = {22.0, 0.003};  // section 4.3.3
constexpr Ground kSea = {80.0, 5.0};

// K (29): normalized surface admittance.
double surface_admittance(const SphericalPath& path, double radius_km, Ground ground) {
  const double loss = 18.0 * ground.conductivity / path.frequency_ghz;
  const double contrast = ground.permittivity - 1.0;
  const double horizontal = 0.036 / std::cbrt(radius_km * path.frequency_ghz) /
                            std::sqrt(std::hypot(contrast, loss));  // KH (29a)
  return path.polarization == Polarization::horizontal
             ? horizontal
             : horizontal * std::hypot(ground.permittivity, loss);  // KV (29b)
}

// F(X) (33): distance term, dB.
double distance_term_db(double x) {
  return x >= 1.6 ? 11.0 + 10.0 * std::log10(x) - 17.6 * x
                  : -20.0 * std::log10(x) - 5.6488 * std::pow(x, 1.425);
}

// G(Y) (34)-(35): height gain, dB, limited as in the Recommendation.
double height_gain_db(double y, double beta, double admittance) {
  const double b = beta * y;  // (35)
  const double gain = b > 2.0 ? 17.6 * std::sqrt(b - 1.1) - 5.0 * std::log10(b - 1.1) - 8.0
                              : 20.0 * std::log10(b + 0.1 * b * b * b);
  return std::max(gain, 2.0 + 20.0 * std::log10(admittance));
}

// Ldft (30)-(36) over one kind of ground, dB.
double first_term_loss_db(const SphericalPath& path, double radius_km, Ground ground) {
  const double k = surface_admittance(path, radius_km, ground);
  const double k2 = k * k;
  const double k4 = k2 * k2;
  const double beta = (1.0 + 1.6 * k2 + 0.67 * k4) / (1.0 + 4.5 * k2 + 1.53 * k4);  // (30)
  const double f = path.frequency_ghz;
  const double x =
      21.88 * beta * std::cbrt(f / (radius_km * radius_km)) * path.distance_km;  // (31)
  const double y_per_m = 0.9575 * beta * std::cbrt(f * f / radius_km);           // (32)
  return -distance_term_db(x) - height_gain_db(y_per_m * path.transmitter_height_m, beta, k) -
         height_gain_db(y_per_m * path.receiver_height_m, beta, k);  // (36)
}

// Ldft (28): sea and land shared by omega, dB.
double first_term_loss_db(const SphericalPath& path, double radius_km) {
  const double omega = path.sea_fraction;
  double loss_db = 0.0;
  if (omega > 0.0) loss_db += omega * first_term_loss_db(path, radius_km, kSea);
  if (omega < 1.0) loss_db += (1.0 - omega) * first_term_loss_db(path, radius_km, kLand);
  return loss_db;
}

struct Reflection {
  double from_start_km;  // d1
  double to_end_km;      // d2
};

// The reflection point of a ray over the smooth Earth (24).
Reflection reflection_point(const SphericalPath& path) {
  const double d = path.distance_km;
  const double heights_m = path.transmitter_height_m + path.receiver_height_m;
  const double c = (path.transmitter_height_m - path.receiver_height_m) / heights_m;  // (24d)
  const double m = 250.0 * d * d / (path.earth_radius_km * heights_m);                // (24e)
  const double m1 = m + 1.0;
  const double cosine = std::clamp(1.5 * c * std::sqrt(3.0 * m / (m1 * m1 * m1)), -1.0, 1.0);
  const double angle = std::numbers::pi / 3.0 + std::acos(cosine) / 3.0;
  const double b = 2.0 * std::sqrt(m1 / (3.0 * m)) * std::cos(angle);  // (24c)
  const double d1 = 0.5 * d * (1.0 + b);                               // (24a)
  return {d1, d - d1};                                                 // (24b)
}

}  // namespace

double spherical_earth_loss_db(const SphericalPath& path) {
  const double d = path.distance_km;
  const double radius_km = path.earth_radius_km;
  const double roots = std::sqrt(path.transmitter_height_m) + std::sqrt(path.receiver_height_m);
  const double horizon_km = std::sqrt(2.0 * radius_km * 0.001) * roots;  // dlos (22)
  if (d >= horizon_km) return std::max(0.0, first_term_loss_db(path, radius_km));

  const Reflection at = reflection_point(path);
  const double d1 = at.from_start_km;
  const double d2 = at.to_end_km;
  const double clearance_m = ((path.transmitter_height_m - 500.0 * d1 * d1 / radius_km) * d2 +
                              (path.receiver_height_m - 500.0 * d2 * d2 / radius_km) * d1) /
                             d;  // hse (23)
  const double required_m =
      17.456 * std::sqrt(std::max(0.0, d1 * d2 * path.wavelength_m / d));  // hreq (25)
  if (clearance_m > required_m) return 0.0;
  const double marginal_radius_km = 500.0 * (d / roots) * (d / roots);  // aem (26)
  const double first_term_db = first_term_loss_db(path, marginal_radius_km);
  if (first_term_db <= 0.0 || required_m <= 0.0) return 0.0;
  return std::max(0.0, (1.0 - clearance_m / required_m) * first_term_db);  // (27)
}

}  // namespace mastwise::p1812
