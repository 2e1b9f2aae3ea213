#pragma once

#include "core/catalog/station_change.hpp"

#include <string>

// What a new table changed, in words.
namespace mastwise::words {

// "QAAB, Alkali Wells, 12 mi".
std::string change_title(const StationChange& change, bool miles);

// "New on RF 31, 50 kW.", "Gone; it was on RF 23.", "RF 31, before 23. Site moved 14 mi."
std::string change_facts(const StationChange& change, bool miles);

// A pinned station that its table no longer lists, and the station of that call sign that there is
// instead, if any: "QAAB, which you pinned, is no longer in stations.csv. It is on RF 31 in b.csv."
std::string lost_pin(const std::string& call_sign, const std::string& source,
                     const std::string& channel_instead, const std::string& source_instead);

}  // namespace mastwise::words
