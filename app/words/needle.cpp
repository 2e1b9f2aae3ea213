#include "app/words/needle.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {

std::string dip(double inclination_deg) {
  const double size_deg = std::fabs(inclination_deg);
  if (size_deg < 0.5) return say("level here");
  return fill(inclination_deg > 0.0 ? say("dips {degrees} here, north end down")
                                    : say("dips {degrees} here, south end down"),
              {{"degrees", whole_degrees(size_deg)}});
}

std::string field_strength(double nt) {
  const long hundreds = std::lround(nt / 100.0);
  if (hundreds < 10) return fmt::format("{} nT", 100 * hundreds);
  return fmt::format("{},{:03} nT", hundreds / 10, hundreds % 10 * 100);
}

std::string needle_zone(NeedleZone zone) {
  switch (zone) {
    case NeedleZone::northern:
      return say("the northern zone");
    case NeedleZone::equator:
      return say("the zone of the equator");
    case NeedleZone::southern:
      return say("the southern zone");
    case NeedleZone::anywhere:
      return say("any zone");
  }
  return {};
}

std::string needle_swing(std::optional<NeedleZone> made_for, const NeedleHere& here) {
  const std::string zone = needle_zone(made_for.value_or(NeedleZone::northern));
  switch (here.swing) {
    case NeedleSwing::free:
      return fill(say("A needle made for {zone} swings free here."), {{"zone", zone}});
    case NeedleSwing::drags:
      return fill(here.north_end_low
                      ? say("A needle made for {zone} may drag here: its north end sinks.")
                      : say("A needle made for {zone} may drag here: its south end sinks."),
                  {{"zone", zone}});
    case NeedleSwing::sticks:
      return fill(say("A needle made for {zone} sticks here. Use another compass or another way."),
                  {{"zone", zone}});
  }
  return {};
}

}  // namespace mastwise::words
