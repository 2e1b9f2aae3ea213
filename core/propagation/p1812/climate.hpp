#pragma once

#include "core/propagation/p1812/p1812.hpp"

#include <cstdint>

namespace mastwise::p1812 {

// The radio climates of the Irregular Terrain Model.
enum class Climate : std::uint8_t {
  equatorial,
  continental_subtropical,
  maritime_subtropical,
  desert,
  continental_temperate,
  maritime_temperate_land,
  maritime_temperate_sea
};

// Typical refractivity of a climate, for stops without better data. N0 is the surface refractivity
// that NTIA Report 82-100, table 1, suggests for the climate (from memory). DN follows from it by
// the exponential reference atmosphere, DN = 7.32 exp(0.005577 N) (Bean and Thayer 1959), which
// gives the 4/3 Earth for the continental temperate climate. `Refractivity{}`, 45 and 325, is the
// median of mid-latitude land in the validation examples of P.1812.
Refractivity refractivity_of(Climate climate);

}  // namespace mastwise::p1812
