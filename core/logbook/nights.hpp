#pragma once

#include "core/angles/bearing.hpp"
#include "core/logbook/record.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

// The nights that a rig spent at a place, and the heading that worked there.
namespace mastwise {

// One stop with what came in.
struct Night {
  std::string stop_id = {};
  Position position;
  UtcTime arrived{};
  // Where the antenna pointed for most of the steady pictures, else for most of what was tried; to
  // the nearest whole degree.
  std::optional<Bearing<True>> heading = {};
  bool worked = false;                 // at least one steady picture at the heading
  std::vector<Outcome> outcomes = {};  // steady first
  bool operator==(const Night&) const = default;
};

// The nights of the stops that have outcomes, in the order of the stops.
std::vector<Night> nights(std::span<const StopRecord> stops,
                          std::span<const OutcomeRecord> outcomes);

// A heading that brought steady pictures.
struct WorkedHeading {
  Bearing<True> heading;                  // the mean over its nights
  std::optional<double> spread_deg = {};  // their standard deviation; from two nights on
  std::size_t nights = 0;
  bool operator==(const WorkedHeading&) const = default;
};

// Nights whose headings are within this of one night's count as one heading, since a roof antenna's
// half-power beamwidth is 40 to 90 degrees (common practice, no source).
inline constexpr double kSameHeading_deg = 20.0;

// The heading of most nights that worked; among equals that of the earlier in the list. Empty
// without one.
std::optional<WorkedHeading> heading_that_worked(std::span<const Night> nights);

}  // namespace mastwise
