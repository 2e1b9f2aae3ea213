#pragma once

namespace mastwise::p1812 {

// Free space basic transmission loss Lbfs (8), dB. f in GHz; d in km; antenna altitudes in m.
double free_space_loss_db(double frequency_ghz, double distance_km, double transmitter_altitude_m,
                          double receiver_altitude_m);

// Correction for multipath and focusing Es at p percent of time (9), dB: 0 at 50 %, negative below.
// Horizon distances dlt and dlr in km.
double focusing_db(double transmitter_horizon_km, double receiver_horizon_km, double time_percent);

}  // namespace mastwise::p1812
