#pragma once

#include "core/landcover/cover_source.hpp"
#include "core/map/shore.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/terrain/profile.hpp"

#include <optional>
#include <span>
#include <vector>

namespace mastwise::reception {

// The ground of a path from a station to a stop, as input of both models.
struct PathGround {
  itm::TerrainProfile terrain;
  std::span<const double> clutter_m = {};        // representative, one for each point
  std::span<const p1812::Zone> zones = {};       // one for each point; empty: all inland
  double station_coast_km = p1812::kNoCoast_km;  // over land to the sea along the path
  double stop_coast_km = p1812::kNoCoast_km;
  double sea_share = 0.0;  // of its points, [0, 1]
};

// What lies on the ground of a path. A buffer that its thread keeps from path to path.
struct GroundCover {
  std::vector<double> clutter_m = {};
  std::vector<p1812::Zone> zones = {};
  std::vector<map::SeaStretch> sea = {};
};

// Fills `cover.clutter_m` for the points of a profile that terrain::cut_profile filled: by land
// cover [Recommendation ITU-R P.1812 table 2], or kUsualClutter_m where that is unknown. `source`
// may be null.
void lay_clutter(const landcover::CoverSource* source, const terrain::PathProfile& profile,
                 GroundCover& cover);

// Gives the unknown points of a profile that lie in the sea its height, 0 m. `sea`: stretches from
// the profile's last point, or from its first one.
void lay_sea(std::span<const map::SeaStretch> sea, bool from_last_point,
             terrain::PathProfile& profile);

// Where a path's points are: on the line from a shore's center, which is one of its ends.
struct AlongShore {
  const map::Shore& shore;
  Bearing<True> bearing;             // from the center
  bool center_is_last_point = true;  // else the first one
};

// The ground with what lies on it, in `cover`, which must outlive the result and have clutter for
// at least as many points. Its sea are points at most 1 m high in `cover.sea`, meters from the
// shore's center, without clutter; coastal is land below 100 m with a coast within 50 km [P.1812
// table 2].
PathGround with_cover(const itm::TerrainProfile& terrain, const std::optional<AlongShore>& along,
                      GroundCover& cover);

}  // namespace mastwise::reception
