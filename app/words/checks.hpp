#pragma once

#include "core/headings/compass_checks.hpp"
#include "core/headings/handle.hpp"
#include "core/sweep/strong_station.hpp"

#include <optional>
#include <string>

// Whether compass and handle can be trusted.
namespace mastwise::words {

// "The two readings disagree by 7 degrees: iron pulls the needle at one of the spots ...".
std::string reciprocal(const ReciprocalCheck& check);
// "12 degrees apart, where 5 would be usual: in doubt: measure again".
std::string agreement(const Agreement& agreement);
std::string needle_pull(NeedlePull pull);  // "a wire fence"

// "By 2 checks, the compass agrees with the map here within its +- 2 degrees: nothing to correct".
std::string compass_agrees(const aim::DialCheck& check);

// The error of a compass by its checks, or of the handle by stations peaked on, with the corrected
// number.
std::string compass_check(const aim::DialCheck& check, const std::optional<Bearing<Dial>>& turn_to);
std::string handle_check(const aim::DialCheck& check, const std::optional<HandleReading>& set_to);

// Why a sweep does not correct other headings: its error of 95 %, and what the antenna forgives.
std::string sweep_too_wide(double error95_deg, double forgiven_deg);

}  // namespace mastwise::words
