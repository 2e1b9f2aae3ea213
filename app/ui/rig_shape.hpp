#pragma once

#include <array>

namespace mastwise::ui {

// The rig's outline from above for every dial: distances ahead of its middle and to the right, on a
// dial of kRigDialRadius.
struct RigPoint {
  float ahead, right;
};
inline constexpr float kRigDialRadius = 308.0f;
inline constexpr std::array kRigOutline{RigPoint{-80, -26}, RigPoint{-72, -34}, RigPoint{48, -34},
                                        RigPoint{64, -28},  RigPoint{76, -15},  RigPoint{85, 0},
                                        RigPoint{76, 15},   RigPoint{64, 28},   RigPoint{48, 34},
                                        RigPoint{-72, 34},  RigPoint{-80, 26}};
inline constexpr std::array kRigWindscreen{RigPoint{50, -20}, RigPoint{56, -10}, RigPoint{58, 0},
                                           RigPoint{56, 10}, RigPoint{50, 20}};

}  // namespace mastwise::ui
