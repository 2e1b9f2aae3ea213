#pragma once

#include "core/reception/survey.hpp"
#include "tests/support/made_tiles.hpp"

#include <string>

namespace mastwise::test {

inline constexpr double kMile_m = 1609.344;

// Tiles of 3 arc seconds over an invented country on the meridian of 100.5 W, from 44 N on
// northward.
terrain::TileSet country(int cells, const HeightAt& height_m);

// Ground of one height.
HeightAt flat(double height_m);
// Ordinary country: hills of several lengths whose heights vary by about 90 m between the lowest
// and the highest tenth, on ground 300 m high.
HeightAt hills();

// Flat land at 200 m with one sharp ridge 600 m high across, 12 km north of the stop within 50 m.
HeightAt one_ridge();

// The south end of that terrain, and places north of it.
Position stop_position();
Position north_of_stop(double distance_m);

// An ATSC 1.0 station, horizontal, all facts known. Call sign QTST.
Station transmitter(Position position, int rf_channel, double antenna_amsl_m, double erp_kw);

// The same of 500 m under another call sign, from the stop by distance and true bearing.
Station named_station(std::string call_sign, double distance_m, double bearing_deg, int rf_channel,
                      double erp_kw);

// A receiver with the gear of the first preset.
reception::Receiver roof_antenna();
// The same with this pattern and 6 dB for UHF, and without an amplifier.
reception::Receiver with_pattern(gear::Pattern pattern, double heading_error_deg);

}  // namespace mastwise::test
