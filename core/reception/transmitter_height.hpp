#pragma once

#include "core/stations/station.hpp"
#include "core/terrain/tile_source.hpp"

#include <optional>

namespace mastwise::reception {

// Height of the station's antenna above the tile's ground in m, for a model that uses that ground:
// from its height above mean sea level. If only the height above average terrain is known, from the
// tile's average terrain around it [47 CFR 73.684(d)]. std::nullopt if neither is known or the
// tiles are missing. Clamped to at least 10 m, since a tile's ground may be above the true one
// [cp], and to the models' limit of 3,000 m.
std::optional<double> height_over_tile_m(const Station& station, const terrain::TileSource& tiles);

// Height above the ground at the station's foot, guessed or known from elsewhere: from its height
// above mean sea level, else as height_over_country_m().
std::optional<double> height_over_ground_m(const Station& station, double ground_amsl_m);

// Height above the surrounding ground in m, for a model without terrain: the height above average
// terrain, else that above the site's ground. Same limits; std::nullopt if neither is known.
std::optional<double> height_over_country_m(const Station& station);

}  // namespace mastwise::reception
