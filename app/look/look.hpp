#pragma once

#include <cstddef>

namespace mastwise::ui {

// The colors of the whole screen: for daylight, for a dim room, and red for eyes used to the dark.
enum class Look { Day, Night, Red };
inline constexpr std::size_t kLookCount = 3;

}  // namespace mastwise::ui
