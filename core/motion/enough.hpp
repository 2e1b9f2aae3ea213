#pragma once

#include <cstddef>

// When a tablet has turned enough to know its own iron. Our choices, no source.
namespace mastwise::motion {

inline constexpr std::size_t kPatchesNeeded = 16;  // of kPatches
inline constexpr double kScatter = 0.05;           // of the strength
inline constexpr double kUsableFit_deg = 3.0;      // of the fit, at a reading

}  // namespace mastwise::motion
