#pragma once

#include <cmath>

// Levels as meters show them, in the 75 ohms of television cables.
namespace mastwise::gear {

constexpr double kCableImpedanceOhm = 75.0;

// The power of 0 dBuV, 1 uV across 75 ohms: -108.75 dBm. Source: P = U^2 / R.
inline double dbm_at_0_dbuv() {
  return 10.0 * std::log10(1e-12 / kCableImpedanceOhm / 1e-3);
}

// Any level; 0 dBmV is 60 dBuV and -48.75 dBm.
inline double dbm_from_dbuv(double level_dbuv) {
  return level_dbuv + dbm_at_0_dbuv();
}
inline double dbuv_from_dbm(double level_dbm) {
  return level_dbm - dbm_at_0_dbuv();
}
inline double dbm_from_dbmv(double level_dbmv) {
  return dbm_from_dbuv(level_dbmv + 60.0);
}
inline double dbmv_from_dbm(double level_dbm) {
  return dbuv_from_dbm(level_dbm) - 60.0;
}

}  // namespace mastwise::gear
