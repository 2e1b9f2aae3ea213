#pragma once

#include <string_view>

// Notes that Mastwise itself writes or shows, by their column.
namespace mastwise {

inline constexpr std::string_view kAlsoInSource = "Also in source";  // another source's name, date
inline constexpr std::string_view kRebroadcasts = "Rebroadcasts";    // of a translator: a call sign

}  // namespace mastwise
