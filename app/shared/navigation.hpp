#pragma once

#include <cstddef>

namespace mastwise {

// The places that the rail leads to.
enum class Place { Here, Stations, Aim, Peak, Logbook, Ahead };
inline constexpr std::size_t kPlaceCount = 6;

}  // namespace mastwise
