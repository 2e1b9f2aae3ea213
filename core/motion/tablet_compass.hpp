#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/motion/iron_fit.hpp"
#include "core/motion/vector.hpp"

#include <cstdint>
#include <optional>

// A heading by a tablet's own magnetometer and accelerometer, held at arm's length.
namespace mastwise::motion {

// The magnetic heading of a person who holds the tablet upright before them, as a book or to take a
// picture: square to the screen's lower edge, whichever edge is lower. Both vectors not zero and
// not along each other; std::nullopt otherwise, or if the tablet lies nearly flat (kLeastTilt_deg).
// Source: east is the vertical crossed with the field; equal to the yaw of Freescale AN4248,
// Implementing a Tilt-Compensated eCompass, equation 22, for its axes.
std::optional<Bearing<Magnetic>> tilt_compensated(const Vector& acceleration, const Vector& field);
inline constexpr double kLeastTilt_deg = 20.0;  // our choice, no source

// Degrees by which the field points below the horizon.
double dip_deg(const Vector& acceleration, const Vector& field);

enum class TabletState : std::uint8_t {
  silent,        // no readings
  learning,      // its iron is not known
  moving,        // shaken or carried: the accelerometer says more than the vertical
  flat,          // or the screen looks down
  strength_off,  // the field is stronger or weaker than here
  dip_off,       // the field points too steeply or not steeply enough
  field_weak,    // no compass works here
  holds,
};

struct TabletReading {
  TabletState state = TabletState::silent;
  std::optional<Bearing<Magnetic>> heading = {};  // only when it holds
  double sigma_deg = 0.0;  // one sigma of the instrument, without where one stands
  double strength_nt = 0.0;
  double dip_deg = 0.0;
  bool operator==(const TabletReading&) const = default;
};

// The heading of a held tablet, with means over about a second: acceleration in m/s^2, the
// magnetometer's reading in uT. It is refused where the field differs from the magnetic model's:
// beyond kStrength of the total field, or kDip_deg of the inclination. Iron whose field lies along
// east or west changes neither at first order, so passing proves little: the error of where one
// stands counts as well.
TabletReading read_tablet(const std::optional<IronFit>& fit,
                          const std::optional<Vector>& acceleration,
                          const std::optional<Vector>& reading_ut, const MagneticField& here);
// Our choices, no source. The model itself is within 0.3 % and 0.3 degrees; a magnetometer's scale
// and an accelerometer's zero take most of the rest.
inline constexpr double kStrength = 0.10;
inline constexpr double kDip_deg = 4.0;
inline constexpr double kStill = 0.05;  // of gravity, by which a held tablet may be off it

// Whether enough of the sphere was seen, and the readings lie on an ellipsoid. At a reading the fit
// must also be within kUsableFit_deg (core/motion/enough.hpp).
bool usable(const std::optional<IronFit>& fit);

// One sigma of a held tablet's heading, degrees, without where one stands, where the field dips by
// `dip_deg` (under 90 from level): the root mean square over all headings, held half upright. For
// the budget, which must not change with every step.
double usual_sigma_deg(const IronFit& fit, double dip_deg);

// One sigma of the heading by the fit alone, degrees, at a reading.
double fit_sigma_deg(const IronFit& fit, const Vector& acceleration, const Vector& reading_ut);

// One sigma of the vertical by a consumer accelerometer in the hand: common practice, no source.
// It turns the heading by its tangent times that of the dip.
inline constexpr double kLevel_deg = 0.6;
// One sigma of pointing a hand-held tablet along a line. Common practice, no source.
inline constexpr double kHeldAlong_deg = 2.0;

}  // namespace mastwise::motion
