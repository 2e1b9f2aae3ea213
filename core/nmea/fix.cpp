#include "core/nmea/fix.hpp"

namespace mastwise::nmea {
const char* name_of(FixQuality quality) {
  switch (quality) {
    case FixQuality::none:
      return "none";
    case FixQuality::estimated:
      return "estimated";
    case FixQuality::manual:
      return "manual";
    case FixQuality::simulator:
      return "simulator";
    case FixQuality::unspecified:
      return "unspecified";
    case FixQuality::autonomous:
      return "autonomous";
    case FixQuality::differential:
      return "differential";
    case FixQuality::precise:
      return "precise";
    case FixQuality::rtk_float:
      return "RTK float";
    case FixQuality::rtk_fixed:
      return "RTK fixed";
  }
  return "none";
}

}  // namespace mastwise::nmea
