#include "core/nmea/fix.hpp"

#include <fmt/format.h>

namespace mastwise::nmea {
namespace {

std::string void_in_words(const Fix& fix) {
  if (!fix.satellites) return "the receiver says that it has no fix yet";
  return fmt::format("the receiver says that it has no fix yet, with {} satellites",
                     *fix.satellites);
}

std::string silence_in_words(const Fix& fix) {
  using std::chrono::duration_cast;
  const auto silence_s =
      duration_cast<std::chrono::seconds>(fix.silent_for.value_or(milliseconds(0)));
  return fmt::format("nothing received for {} s; check the cable and the power", silence_s.count());
}

}  // namespace

std::string explain(const Fix& fix) {
  switch (fix.why_not_good) {
    case FixTrouble::none:
      return {};
    case FixTrouble::no_data:
      return "nothing received yet";
    case FixTrouble::silent:
      return silence_in_words(fix);
    case FixTrouble::not_nmea:
      return "data is received, but no NMEA 0183; choose another speed or another device";
    case FixTrouble::damaged:
      return "sentences arrive damaged; check the cable and the speed";
    case FixTrouble::no_checksums:
      return "the sentences have no checksum and are not used; set the receiver to NMEA 0183 2.0 "
             "or "
             "later";
    case FixTrouble::no_position_reports:
      return "the device talks, but says nothing about its position";
    case FixTrouble::no_satellites:
      return "the receiver uses no satellite; give it a view of the sky";
    case FixTrouble::receiver_says_void:
      return void_in_words(fix);
    case FixTrouble::frozen_time:
      return "the receiver repeats an old moment: it has lost its fix";
    case FixTrouble::no_time:
      return "positions come without a time and may be old";
    case FixTrouble::estimated:
      return "dead reckoning: the receiver has no satellites";
    case FixTrouble::manual:
      return "the position was typed into the receiver";
    case FixTrouble::simulator:
      return "the receiver is simulating";
    case FixTrouble::impossible_position:
      return "the receiver gives coordinates that are not on the earth";
  }
  return {};
}

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
