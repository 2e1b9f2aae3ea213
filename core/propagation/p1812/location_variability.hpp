#pragma once

namespace mastwise::p1812 {

// sigma_loc, the standard deviation of the loss within a square around the receiver, dB (section
// 4.7). f in GHz; prediction resolution wa in m: the square's side; the receiver's height above
// ground and the clutter height around it in m. Falls to 0 from the top of the clutter to 10 m
// above it.
double location_deviation_db(double frequency_ghz, double prediction_resolution_m,
                             double receiver_height_m, double clutter_height_m);

// Lloc at pL percent of locations, dB: the addition to the median over locations.
double location_loss_db(double deviation_db, double locations_percent);

}  // namespace mastwise::p1812
