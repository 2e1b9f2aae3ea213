#pragma once

#include "core/stations/station.hpp"
#include "core/terrain/tile_source.hpp"

#include <optional>

namespace mastwise::reception {

// Height of the station's antenna above the tile's ground in m, for a model that works on that
// ground: from its height above mean sea level; where only the height above average terrain is
// known, from the tile's own average terrain around [47 CFR 73.684(d)]. Nothing where neither is
// known or the tiles are missing. Never below 10 m, since a tile's ground may be over the true one
// [cp], nor above the 3,000 m that the models take.
std::optional<double> height_over_tile_m(const Station& station, const terrain::TileSource& tiles);

// Height above the country around in m, for a model without terrain: the height above average
// terrain, else that above the site's ground. Same limits; nothing where neither is known.
std::optional<double> height_over_country_m(const Station& station);

}  // namespace mastwise::reception
