#include "core/propagation/itm/limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace mastwise::itm {
namespace {

constexpr double kLowestGroundM = -1000;
constexpr double kHighestGroundM = 10000;

struct Limited {
  const char* name;
  double value;
  double low;
  double high;
  const char* unit;
};

Error refusal(std::string what, std::string remedy) {
  return {.what = std::move(what), .where = "terrain model", .remedy = std::move(remedy)};
}

Error out_of_range(const std::string& name, double value, double low, double high,
                   const char* unit) {
  return refusal(fmt::format("{} is {}{}", name, value, unit),
                 fmt::format("give {} to {}{}", low, high, unit));
}

std::optional<Error> first_out_of_range(std::initializer_list<Limited> quantities) {
  for (const Limited& one : quantities) {
    if (!(one.value >= one.low && one.value <= one.high)) {
      return out_of_range(one.name, one.value, one.low, one.high, one.unit);
    }
  }
  return std::nullopt;
}

std::optional<Error> not_above_zero(const char* name, double value, const char* unit) {
  if (value > 0 && std::isfinite(value)) return std::nullopt;
  return refusal(fmt::format("{} is {}{}", name, value, unit),
                 fmt::format("give more than 0{}", unit));
}

std::optional<Error> bad_distance(double distance_m) {
  if (distance_m >= 1 && distance_m <= 2e6) return std::nullopt;
  return refusal(fmt::format("path length is {} m", distance_m), "give 1 to 2000000 m");
}

}  // namespace

std::optional<Error> check(const Link& link) {
  const auto polarization = static_cast<double>(link.polarization);
  const auto climate = static_cast<double>(link.climate);
  if (auto error = first_out_of_range(
          {{"frequency", link.frequency_mhz, 20, 20000, " MHz"},
           {"transmitter height", link.transmitter_height_m, 0.5, 3000, " m"},
           {"receiver height", link.receiver_height_m, 0.5, 3000, " m"},
           {"number of the polarization", polarization, 0, 1, ""},
           {"number of the climate", climate, 1, 7, ""},
           {"permittivity of the ground", link.relative_permittivity, 1, 100, ""},
           {"refractivity at sea level", link.sea_level_refractivity, 250, 400, " N-units"}})) {
    return error;
  }
  return not_above_zero("conductivity of the ground", link.conductivity_s_per_m, " S/m");
}

std::optional<Error> check(const TerrainProfile& profile) {
  if (profile.heights_m.size() < 3) {
    return refusal(fmt::format("profile has {} heights", profile.heights_m.size()),
                   "give at least 3");
  }
  if (auto error = not_above_zero("spacing of the profile", profile.spacing_m, " m")) return error;
  const auto intervals = static_cast<double>(profile.heights_m.size() - 1);
  return bad_distance(profile.spacing_m * intervals);
}

std::optional<Error> check_heights(std::span<const double> heights_m, const Relief& relief) {
  const auto* const blocks = relief.highest_m.data();
  if (std::isfinite(relief.sum_m) && relief.lowest_m >= kLowestGroundM &&
      *std::max_element(blocks, blocks + relief.blocks) <= kHighestGroundM) {
    return std::nullopt;
  }
  const auto bad = std::find_if_not(heights_m.begin(), heights_m.end(), [](double height_m) {
    return height_m >= kLowestGroundM && height_m <= kHighestGroundM;
  });
  return out_of_range(fmt::format("height {} of the profile", bad - heights_m.begin()), *bad,
                      kLowestGroundM, kHighestGroundM, " m");
}

std::optional<Error> check(const AreaTerrain& terrain, double distance_m) {
  const auto transmitter = static_cast<double>(terrain.transmitter_siting);
  const auto receiver = static_cast<double>(terrain.receiver_siting);
  if (auto error =
          first_out_of_range({{"irregularity of the terrain", terrain.delta_h_m, 0, 3000, " m"},
                              {"number of the transmitter's siting", transmitter, 0, 2, ""},
                              {"number of the receiver's siting", receiver, 0, 2, ""}})) {
    return error;
  }
  return bad_distance(distance_m);
}

std::optional<Error> check(const Variability& variability, const Percentages& percentages) {
  const std::array<std::pair<const char*, double>, 3> parts = {
      {{"time", percentages.time},
       {"location", percentages.location},
       {"situation", percentages.situation}}};
  for (const auto& [name, value] : parts) {
    if (value > 0 && value < 100) continue;
    return refusal(fmt::format("{} percentage is {}", name, value),
                   "give more than 0 and less than 100");
  }
  const auto mode = static_cast<double>(variability.mode);
  return first_out_of_range({{"number of the variability mode", mode, 0, 3, ""}});
}

std::optional<Error> check_medium(const Path& path) {
  const double refractivity = path.surface_refractivity;
  if (refractivity < 150 || refractivity > 400) {
    return refusal(fmt::format("refractivity at the terrain's mean height of {:.0f} m is {:.0f} "
                               "N-units",
                               path.mean_elevation_m, refractivity),
                   "give a sea-level refractivity for which it is 150 to 400 N-units");
  }
  if (path.ground_impedance.real() <= std::abs(path.ground_impedance.imag())) {
    return refusal("the ground has an impossible reflection at this frequency",
                   "give a higher permittivity or another conductivity");
  }
  return std::nullopt;
}

std::optional<Error> check_result(const Path& path) {
  if (std::isfinite(path.reference_attenuation_db)) return std::nullopt;
  return refusal("the rounded-earth approximation has no value for these heights and this ground",
                 "give a higher frequency, other heights or a better conducting ground");
}

}  // namespace mastwise::itm
