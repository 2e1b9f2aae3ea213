#pragma once

#include "core/propagation/p1812/p1812.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise::cli {

// A path profile as a table: a header line, then a line for each point from the transmitter to the
// receiver. Columns: d_km and h_m must be there; lat, lon (degrees), clutter_m and zone (1 sea,
// 3 coastal land, 4 inland) may be. Other columns are passed over.
struct ProfileTable {
  std::vector<double> distances_km;
  std::vector<double> heights_m;
  std::vector<double> clutter_m = {};
  std::vector<p1812::Zone> zones = {};
  std::optional<double> middle_latitude_deg = {};  // of the path, where there is a column for it

  // The even spacing that the distances have, in meters; nothing where they differ by more than
  // their last digit explains.
  std::optional<double> spacing_m() const;
};

// The error names the line and the column.
Result<ProfileTable> read_profile_table(const std::string& path);

}  // namespace mastwise::cli
