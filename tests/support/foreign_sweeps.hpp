#pragma once

#include "tests/support/sweeps.hpp"

#include <cstddef>
#include <cstdint>

// Sweeps that share no assumption with the fit beyond the nominal pattern: the antenna on the roof
// differs from its data sheet, the signal drifts, gusts come and go, and the meter is coarse.
namespace mastwise::test {

// The most of each trouble; every sweep draws its own share of each, from none to all of it.
struct ForeignSweeps {
  gear::Pattern nominal = gear::Pattern::directional(60.0, 13.0);  // what the fit is told
  aim::Scale scale = aim::Scale::quality_percent;
  double least_noise_db = 0.5, most_noise_db = 2.5;  // one sigma of a reading
  double width_off = 0.0;                            // the beam is wider or narrower by this share
  double ripple_db = 0.0;          // of the roof's hardware: the height of each of four waves
  double lobes_db = 0.0;           // behind the beam, likewise
  double gust_share = 0.0;         // of the readings, where a gust costs 2 to 10 dB
  double drift_db = 0.0;           // from the first to the last reading, either way
  double heading_sigma_deg = 0.0;  // of setting the heading
  double reflected_share = 0.0;    // of the sweeps, 5 to 15 dB below, 25 to 110 degrees aside
  bool coarse = false;             // the meter moves in steps of 2, 5 or 10 points, or 0.5 or 1 dB
};

// One sweep of a kind.
MadeSweep foreign_sweep(Chance& chance, const ForeignSweeps& kind);

// How often the stated error of 95 % holds.
Coverage foreign_coverage(const ForeignSweeps& kind, std::size_t sweeps, std::uint64_t seed);

}  // namespace mastwise::test
