#pragma once

#include "core/propagation/itm/itm.hpp"
#include "core/reception/reason.hpp"

#include <string>

// The reasons for a station's chance.
namespace mastwise::words {

// "ridge 7.0 mi away, 210 ft above the line: -18 dB"; "nothing in the way ..." at no cost.
std::string reason(const reception::Reason& reason, bool miles);
// A reason in a few words, for a list: "Ridge 11 mi out" and "costs 13 dB".
struct Brief {
  std::string what;
  std::string cost = {};  // empty if it costs no decibels
};
Brief brief(const reception::Reason& reason, bool miles);
// "ridge 11.3 km away, 64 m above the line"; "curve of the earth ...".
std::string obstacle(const reception::Obstacle& obstacle, bool miles);

// The terrain model's limit that a path exceeds: "the path is longer than 1,000 km".
std::string model_limit(itm::Warning warning);
// The formula that it used: "bent around the terrain by diffraction".
std::string model_range(itm::Range range);

}  // namespace mastwise::words
