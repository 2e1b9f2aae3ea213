#pragma once

#include "core/propagation/p1812/p1812.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise::cli {

// A path profile as a table: a header line, then a line for each point from the transmitter to the
// receiver. The columns d_km and h_m are required; lat, lon (degrees), clutter_m and zone (1 sea,
// 3 coastal land, 4 inland) are optional. Other columns are ignored.
struct ProfileTable {
  std::vector<double> distances_km;
  std::vector<double> heights_m;
  std::vector<double> clutter_m = {};
  std::vector<p1812::Zone> zones = {};
  std::optional<double> middle_latitude_deg = {};  // of the path, if the table has lat

  // The even spacing of the distances, in meters; empty if they differ by more than rounding
  // explains.
  std::optional<double> spacing_m() const;
};

// The error names the line and the column.
Result<ProfileTable> read_profile_table(const std::string& path);

}  // namespace mastwise::cli
