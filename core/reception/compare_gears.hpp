#pragma once

#include "core/stations/station.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

// What each gear of a rig brings in at one stop.
namespace mastwise::reception {

// The chance of each station of a survey with one gear, percent, by station index; std::nullopt if
// unknown.
using GearChances = std::vector<std::optional<double>>;

// Whether a chance is called likely or steady (chance.hpp).
bool is_likely(const std::optional<double>& percent);

// A network, or one station whose networks are unknown.
struct Watchable {
  struct Best {
    std::size_t station = 0;  // index
    double chance_percent = 0.0;
    bool operator==(const Best&) const = default;
  };
  std::string network = {};                       // as the first station writes it; may be empty
  std::vector<std::optional<Best>> by_gear = {};  // std::nullopt: no chance is known
  // Whether the gear brings it at least likely.
  bool with(std::size_t gear) const;
  bool with_any() const;
  bool operator==(const Watchable&) const = default;
};

// The counts of one gear.
struct GearReach {
  std::size_t networks = 0;  // at least likely
  std::size_t unnamed = 0;   // at least likely stations whose networks are unknown
  // Stations at least likely with this gear and with no other one, best first.
  std::vector<std::size_t> only = {};
  bool operator==(const GearReach&) const = default;
};

struct GearComparison {
  // Networks that some gear brings at least likely: those that most gears bring first, then by
  // name.
  std::vector<Watchable> networks = {};
  std::vector<Watchable> unnamed = {};   // likewise, stations whose networks are unknown
  std::vector<Watchable> unlikely = {};  // networks that no gear brings at least likely
  std::vector<GearReach> gears = {};     // in the given order
};

// Compares gears: `chances` has one entry for each gear and in each one value for each station. A
// network counts with its best station; case does not tell networks apart.
GearComparison compare_gears(std::span<const Station> stations,
                             std::span<const GearChances> chances);

// The first gear that brings everything that any of them brings; std::nullopt if none does, or if
// none brings anything. Give the gears with the least effort first.
std::optional<std::size_t> enough(const GearComparison& comparison);

}  // namespace mastwise::reception
