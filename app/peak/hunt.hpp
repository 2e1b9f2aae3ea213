#pragma once

#include "app/peak/state.hpp"
#include "app/shared/shared.hpp"

#include <vector>

// The hunt for the rig's own noise: what the actions do to it.
namespace mastwise {

// The signal to noise that a person may type, dB: below the least there is no picture, and no
// receiver shows more than the most.
inline constexpr double kLeastHunt_db = -10.0, kMostHunt_db = 60.0;

// A hunt on the target; none without one.
std::optional<NoiseHunt> hunt_begun(const Shared& shared);

// The appliance is off from now on, so the next step begins; a step without readings is renamed.
void turn_off(NoiseHunt& hunt, const std::string& appliance, Monotonic now,
              const aim::MeterTiming& timing);

// Takes a reading of the connected meter once it has settled after the last one.
void hear(NoiseHunt& hunt, const aim::MeterReading& reading, const aim::MeterTiming& timing);

void take_reading(NoiseHunt& hunt);
void drop_last(NoiseHunt& hunt);

// The appliances that were turned off, with their noise; those without readings are left out.
std::vector<gear::ApplianceNoise> found_by(const NoiseHunt& hunt);

// The rig's appliances, with what was found in place of older figures for the same band.
std::vector<gear::ApplianceNoise> merged(std::vector<gear::ApplianceNoise> known,
                                         const std::vector<gear::ApplianceNoise>& found);

}  // namespace mastwise
