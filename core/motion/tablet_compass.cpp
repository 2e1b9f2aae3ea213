#include "core/motion/tablet_compass.hpp"

#include "core/motion/enough.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::motion {
namespace {

constexpr double kTabletRadian = std::numbers::pi / 180.0;
constexpr double kGravity_mps2 = 9.80665;

// The direction square to the screen's lower edge as a person sees it, away from them, level: the
// vertical crossed with the edge that points to their right.
std::optional<Vector> forward(const Vector& up) {
  const double across = std::hypot(up.x, up.y);
  if (across < std::sin(kLeastTilt_deg * kTabletRadian)) return std::nullopt;
  // A screen that looks down is read by nobody.
  if (up.z < -0.5) return std::nullopt;
  const bool upright = std::fabs(up.y) >= std::fabs(up.x);
  const Vector right = upright ? Vector{up.y > 0.0 ? 1.0 : -1.0, 0.0, 0.0}
                               : Vector{0.0, up.x > 0.0 ? -1.0 : 1.0, 0.0};
  return cross(up, right);
}

double azimuth_deg(const Vector& ahead, const Vector& up, const Vector& field) {
  const Vector east = cross(field, up);
  const Vector north = cross(up, east);
  return std::atan2(dot(ahead, east) * length(north), dot(ahead, north) * length(east)) /
         kTabletRadian;
}

TabletState state_of(const std::optional<IronFit>& fit, const Vector& acceleration,
                     const TabletReading& reading, const MagneticField& here) {
  if (here.zone == MagneticField::Zone::Blackout) return TabletState::field_weak;
  if (!usable(fit)) return TabletState::learning;
  if (std::fabs(length(acceleration) / kGravity_mps2 - 1.0) > kStill) return TabletState::moving;
  if (!forward((1.0 / length(acceleration)) * acceleration)) return TabletState::flat;
  if (std::fabs(reading.strength_nt / here.total_nt - 1.0) > kStrength) {
    return TabletState::strength_off;
  }
  if (std::fabs(reading.dip_deg - here.inclination_deg) > kDip_deg) return TabletState::dip_off;
  return TabletState::holds;
}

}  // namespace

std::optional<Bearing<Magnetic>> tilt_compensated(const Vector& acceleration, const Vector& field) {
  const double gravity = length(acceleration);
  if (!(gravity > 0.0) || !is_finite(acceleration) || !is_finite(field)) return std::nullopt;
  const Vector up = (1.0 / gravity) * acceleration;
  const auto ahead = forward(up);
  constexpr double kAlong = 1e-6;
  if (!ahead || !(length(cross(field, up)) > kAlong * length(field))) return std::nullopt;
  return Bearing<Magnetic>::degrees(azimuth_deg(*ahead, up, field));
}

double dip_deg(const Vector& acceleration, const Vector& field) {
  return std::atan2(-dot(acceleration, field), length(cross(acceleration, field))) / kTabletRadian;
}

double fit_sigma_deg(const IronFit& fit, const Vector& acceleration, const Vector& reading_ut) {
  const auto heading_with = [&](const IronFit& other) {
    return tilt_compensated(acceleration, other.without_iron_ut(reading_ut));
  };
  const auto middle = heading_with(fit);
  if (!middle) return 0.0;
  // By differences of a hundredth of each term's own sigma.
  constexpr double kStep = 0.01;
  std::array<double, IronFit::kTerms> slopes{};
  for (std::size_t i = 0; i < slopes.size(); ++i) {
    const double sigma = std::sqrt(std::max(0.0, fit.covariance[i][i]));
    if (sigma <= 0.0) continue;
    IronFit other = fit;
    const std::array<double*, 3> hard{&other.hard_ut.x, &other.hard_ut.y, &other.hard_ut.z};
    (i < 3 ? *hard[i] : other.shape[i - 3]) += kStep * sigma;
    if (const auto moved = heading_with(other)) {
      slopes[i] = (*moved - *middle).clockwise_deg() / (kStep * sigma);
    }
  }
  double variance = 0.0;
  for (std::size_t i = 0; i < slopes.size(); ++i) {
    for (std::size_t k = 0; k < slopes.size(); ++k) {
      variance += slopes[i] * fit.covariance[i][k] * slopes[k];
    }
  }
  return std::sqrt(std::max(0.0, variance));
}

bool usable(const std::optional<IronFit>& fit) {
  return fit && fit->patches >= kPatchesNeeded && fit->scatter <= kScatter;
}

double usual_sigma_deg(const IronFit& fit, double dip_deg) {
  constexpr int kHeadings = 12;
  constexpr double kTilt = 60.0 * kTabletRadian;
  const double dip = dip_deg * kTabletRadian;
  const Vector up{0.0, std::sin(kTilt), std::cos(kTilt)};
  double squares = 0.0;
  for (int i = 0; i < kHeadings; ++i) {
    const double faces = i * 2.0 * std::numbers::pi / kHeadings;
    const double right = -std::cos(dip) * std::sin(faces);
    const double ahead = std::cos(dip) * std::cos(faces);
    const Vector level{right, std::cos(kTilt) * ahead, -std::sin(kTilt) * ahead};
    const Vector field_ut = fit.strength_ut * (level - std::sin(dip) * up);
    squares += std::pow(fit_sigma_deg(fit, kGravity_mps2 * up, fit.with_iron_ut(field_ut)), 2);
  }
  return std::hypot(std::sqrt(squares / kHeadings), kLevel_deg * std::tan(dip), kHeldAlong_deg);
}

TabletReading read_tablet(const std::optional<IronFit>& fit,
                          const std::optional<Vector>& acceleration,
                          const std::optional<Vector>& reading_ut, const MagneticField& here) {
  TabletReading reading;
  if (!acceleration || !reading_ut || !(length(*acceleration) > 0.0)) return reading;
  const Vector field_ut = fit ? fit->without_iron_ut(*reading_ut) : *reading_ut;
  constexpr double kNanoteslas = 1000.0;
  reading.strength_nt = kNanoteslas * length(field_ut);
  reading.dip_deg = dip_deg(*acceleration, field_ut);
  reading.state = state_of(fit, *acceleration, reading, here);
  if (reading.state != TabletState::holds) return reading;
  reading.heading = tilt_compensated(*acceleration, field_ut);
  if (!reading.heading) {
    reading.state = TabletState::flat;
    return reading;
  }
  const double fit_deg = fit_sigma_deg(*fit, *acceleration, *reading_ut);
  if (fit_deg > kUsableFit_deg) {
    reading.heading.reset();
    reading.state = TabletState::learning;
    return reading;
  }
  const double level_deg = kLevel_deg * std::fabs(std::tan(reading.dip_deg * kTabletRadian));
  reading.sigma_deg = std::hypot(fit_deg, level_deg, kHeldAlong_deg);
  return reading;
}

}  // namespace mastwise::motion
