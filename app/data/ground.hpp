#pragma once

#include "app/shared/names.hpp"
#include "core/map/projection.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// The ground on board around the stop and the way, and the room on the disk.
namespace mastwise {

// Ground counts as near up to here: most stations of an ordinary evening are nearer (90 miles;
// common practice, no source).
inline constexpr double kNearGround_m = 144'841.0;

// Whether a tile of heights is on board.
enum class SquareHeld { Held, Missing, Sea };
template <>
inline constexpr std::array kStoredNames<SquareHeld> = names({"held", "missing", "sea"});

// A one-degree square on the plane of the map.
struct GroundSquare {
  std::string cell = {};  // "N44W072"
  SquareHeld held = SquareHeld::Missing;
  bool land_cover = false;                      // its tile is on board too
  double near_km2 = 0.0;                        // of its area, what is near the way
  std::array<map::PlanePoint, 4> corners = {};  // from the south-west corner, counterclockwise
  bool operator==(const GroundSquare&) const = default;
};

using GroundLine = std::array<map::PlanePoint, 2>;

struct GroundAround {
  std::vector<GroundSquare> squares = {};  // the near ones and those between
  std::vector<map::PlanePoint> way = {};   // the stop, then the places ahead
  std::vector<GroundLine> reach = {};      // pieces of the outline of what is near
  bool operator==(const GroundAround&) const = default;
};

struct DiskUse {
  std::uint64_t ground_bytes = 0;
  std::uint64_t station_bytes = 0;
  std::optional<std::uint64_t> free_bytes = {};
  bool operator==(const DiskUse&) const = default;
};

}  // namespace mastwise
