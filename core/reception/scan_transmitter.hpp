#pragma once

#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/terrain/tile_source.hpp"

namespace mastwise::reception {

// The station of a scan, as it is for every cell.
struct ScanTransmitter {
  Station station;
  double height_m;  // above its foot
  double foot_m;    // the tile's ground, or the site's height where there is none
};

// Errors: the station's power, channel or height is unknown, or the ground under it.
Result<ScanTransmitter> scan_transmitter(const Station& station, const terrain::TileSource& tiles);

}  // namespace mastwise::reception
