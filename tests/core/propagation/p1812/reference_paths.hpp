#pragma once

#include "core/propagation/p1812/p1812.hpp"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace mastwise::test {

// A path profile that owns its storage.
struct StoredProfile {
  std::vector<double> distances_km;
  std::vector<double> heights_m;
  std::vector<double> clutter_m;
  std::vector<p1812::Zone> zones;

  p1812::Profile view() const {
    return {.distances_km = distances_km,
            .heights_m = heights_m,
            .clutter_m = clutter_m,
            .zones = zones};
  }
};

// A profile in the file format of ITU-R Working Party 3K.
StoredProfile read_official_profile(const std::filesystem::path& file);

// A result log of Working Party 3K: each row's name with its values in order; some names come
// twice.
std::map<std::string, std::vector<double>> read_official_log(const std::filesystem::path& file);

// A plain table of distance in km and height in m.
StoredProfile read_plain_profile(const std::filesystem::path& file);

}  // namespace mastwise::test
