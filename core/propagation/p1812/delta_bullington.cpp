#include "core/propagation/p1812/delta_bullington.hpp"

#include <algorithm>

namespace mastwise::p1812 {

Diffraction delta_bullington(const Section& section, const BullingtonView& view, Line antennas,
                             const SphericalPath& smooth) {
  const Line smooth_antennas = {smooth.transmitter_height_m, smooth.receiver_height_m};
  Diffraction diffraction;
  diffraction.bullington_actual_db =
      bullington_loss_db(view, antennas, section.length_km, smooth.wavelength_m);
  diffraction.bullington_smooth_db = smooth_bullington_loss_db(
      section, smooth_antennas, 500.0 / smooth.earth_radius_km, smooth.wavelength_m);
  diffraction.spherical_earth_db = spherical_earth_loss_db(smooth);
  diffraction.loss_db =
      diffraction.bullington_actual_db +
      std::max(diffraction.spherical_earth_db - diffraction.bullington_smooth_db, 0.0);  // (39)
  return diffraction;
}

}  // namespace mastwise::p1812
