#pragma once

#include "core/headings/needle.hpp"

#include <optional>
#include <string>

// How a compass needle swings here.
namespace mastwise::words {

// "dips 66° here, north end down"; "level here" within half a degree.
std::string dip(double inclination_deg);

std::string field_strength(double nt);  // "20,900 nT", to the nearest hundred

std::string needle_zone(NeedleZone zone);  // "the northern zone", "any zone"

// "A needle made for the northern zone swings free here.", or what it does instead and what to do.
std::string needle_swing(std::optional<NeedleZone> made_for, const NeedleHere& here);

}  // namespace mastwise::words
