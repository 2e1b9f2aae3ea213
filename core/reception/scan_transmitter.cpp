#include "core/reception/scan_transmitter.hpp"

#include "core/channels/channels.hpp"
#include "core/reception/path_fields.hpp"
#include "core/reception/transmitter_height.hpp"
#include "core/terrain/profile.hpp"

namespace mastwise::reception {
namespace {

Error cannot_scan(const Station& station, const char* what) {
  return {.what = what,
          .where = station.call_sign,
          .remedy = "complete the station's facts or load the terrain there"};
}

}  // namespace

Result<ScanTransmitter> scan_transmitter(const Station& station, const terrain::TileSource& tiles) {
  if (missing_for_field(station, 1e6) == Missing::power) {
    return cannot_scan(station, "the power is unknown");
  }
  if (!channel_slot(station.raster, station.rf_channel)) {
    return cannot_scan(station, "the channel plan does not have its channel");
  }
  const auto tile_m = terrain::ground_height_m(tiles, station.position);
  const auto foot_m = tile_m ? tile_m : station.site_amsl_m;
  if (!foot_m) return cannot_scan(station, "missing terrain at the transmitter");
  const auto height_m =
      tile_m ? height_over_tile_m(station, tiles) : height_over_ground_m(station, *foot_m);
  if (!height_m) return cannot_scan(station, "the antenna height is unknown");
  return ScanTransmitter{station, *height_m, *foot_m};
}

}  // namespace mastwise::reception
