#pragma once

#include "core/map/shore.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/path_ground.hpp"
#include "core/reception/survey.hpp"

#include <span>

namespace mastwise::reception {

// The normal deviate exceeded with a probability of one in ten.
inline constexpr double kTenthDeviate = 1.2816;

// Fills in distance, bearing, mode, heights, fields, obstacles, the spreads of place, time and
// model of a station at the stop, and the values for its reasons. If there is no field, `missing`
// says why.
//
// Both models use the same profile, to the top of the surroundings at the stop; the loss from there
// down to the antenna is subtracted from both (surroundings.hpp), with what the ring's obstacle on
// that side costs beyond it (obstacle_ring.hpp). The field is the mean of the two
// medians in dB. If part of the path has no terrain, both models compute it over two guesses of the
// ground (partial_ground.hpp): the field is the mean of both in dB, and half of their difference
// joins the spread. If the ground at the stop is unknown, the field is that of the terrain model's
// area mode alone, over hills of middling irregularity (90 m), with the model's spread over places;
// the guess of rough ground is then an irregularity of 300 m, low mountains [TR 82-100].
//
// P.1812 counts the clutter along the path by land cover, kUsualClutter_m without it, and the zones
// of sea, coast and inland of `shore`, which has the stop as its center (null: all inland; see
// path_ground.hpp); unknown ground in the sea is 0 m high. Both models use the usual air of the
// stop's climate (air.hpp); over a path mostly over the sea the terrain model takes the sea's. The
// field is then corrected to the regulator's measured curves (calibration.hpp).
//
// Deviations: places by the surroundings [Recommendation ITU-R P.1812-4, location variability], in
// area mode the terrain model's if that is larger. Time: the fall from the median to the field
// exceeded for 90 % of time, in the terrain model by its tables, in P.1812 mirrored about the
// median (p1812.hpp), the mean of both over 1.2816. Model: the situation deviation of the terrain
// model [Algorithm (5.12)], half the difference of the two medians, the standard error of the mean
// of two, and what remains against the measured curves. With a known station pattern, the field
// toward the stop is that of its power times the square of the pattern's relative field. A
// directional station with an unknown pattern: a skewed mixture of losses (unknown_pattern.hpp).
void compute_path(const Station& station, const Receiver& receiver, const Land& land,
                  const map::Shore* shore, Measurement& measurement, Scratch& scratch);

// The part that both models compute on one profile of known ground, from the station's foot to the
// stop's: mode, transmitter's height, fields and spreads; no obstacles of the path. The measurement
// has its frequency, band and distance, and for a ring with obstacles its bearing; the station its
// power.
void compute_on_profile(const Station& station, const Receiver& receiver, const PathGround& ground,
                        double transmitter_height_m, Measurement& measurement,
                        p1812::Scratch& scratch);

// The same where part of the ground is guessed (partial_ground.hpp): `smooth` has one guess, and
// `rough_m` the heights of the other.
void compute_on_guesses(const Station& station, const Receiver& receiver, const PathGround& smooth,
                        std::span<const double> rough_m, double transmitter_height_m,
                        Measurement& measurement, p1812::Scratch& scratch);

// The field of 1 kW ERP for a basic transmission loss in dB, dBuV/m [P.1812 (70)].
double field_per_kilowatt_dbuvm(double loss_db, double frequency_mhz);

// Whether a field is impossible: the power is unknown or the stop is too near the transmitter (250
// m, P.1812 section 1).
Missing missing_for_field(const Station& station, double distance_m);

}  // namespace mastwise::reception
