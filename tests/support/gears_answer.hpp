#pragma once

#include "app/parking/state.hpp"

namespace mastwise::test {

// With no member at its default.
inline GearsAnswer some_gears() {
  return {.question = {.here = {.from = *Position::at_deg(0.1, 0.7), .pinned = {{"s", "i"}}},
                       .gears = {{.preset = "p", .cable_m = 0.3}},
                       .learned = {{{{0.1, 0.3, 2}, {}, {0.7, 0.9, 3}}}}},
          .networks = {"n"},
          .unnamed = 3,
          .rows = {{.name = "g",
                    .height_m = 0.1,
                    .networks = 1,
                    .unnamed = 2,
                    .offers = {{.call_sign = "QABC", .chance_percent = 0.7}},
                    .only = {"QABC 6.1"},
                    .sectors = {{.arc = {Bearing<True>::degrees(0.1), 0.3},
                                 .stations = {{.title = "QABC 6.1",
                                               .carries = "n",
                                               .bearing = Bearing<True>::degrees(0.2),
                                               .chance_percent = 0.9}},
                                 .harmless_m = -0.7}}}},
          .enough = 0,
          .trouble = "t"};
}

}  // namespace mastwise::test
