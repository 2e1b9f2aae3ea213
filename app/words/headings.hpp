#pragma once

#include "core/headings/compass_checks.hpp"
#include "core/headings/handle.hpp"
#include "core/headings/sayings.hpp"
#include "core/rig/rig_heading.hpp"
#include "core/sky/guide_bodies.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun.hpp"
#include "core/sky/sun_marks.hpp"
#include "core/zones/time_zone.hpp"

#include <string>

// Headings, and instructions to point at them.
namespace mastwise::words {

// One heading as an instruction, starting with a capital unless it begins with a clock hour:
// "Set your compass's declination to 14 W, then read 222". Times are those of `zone`.
std::string heading(const SaidAs& said, bool miles, const TimeZone& zone);

// The same in few words: the next time of the shadow alone, the best star alone.
std::string brief_heading(SaidAs said, bool miles, const TimeZone& zone);

// What a way to point is called: "By the shadow of a plumb line".
const char* way_title(SayingKind kind);

// "at 15:06 EDT the heading is square to its left", of the shadow seen away from the sun; with the
// day if that is not the day of `now`. To the nearest minute.
std::string sun_mark(const sky::SunMark& mark, UtcTime now, const TimeZone& zone);

std::string guide_name(sky::GuideBody body);  // "the moon", "Sirius"
// "Jupiter (SE, 35 degrees up)".
std::string star_place(sky::GuideBody body, Bearing<True> azimuth, double altitude_deg);

// A rig angle to the nearest 15 degrees: an hour of the clock, twelve at the nose as seen from
// above, and a place on the rig. 45 degrees is "half past one, off the right front corner". Right
// and left are those of a person who sits in the rig and looks toward its nose; within 7.5 degrees
// of the nose or tail neither is given. A corner means the diagonal, for any length of rig.
std::string rig_sides(RigAngle angle);

// "Look up and turn the handle clockwise by 40 degrees to 40; the antenna swings toward ...".
std::string handle_turn(const HandleTurn& turn);

// "Reading the map's 90 on a plain compass, instead of 80, aims 10 degrees too far right".
std::string north_mistake(const NorthMistake& mistake);

// "the trailer must be in line with its tow vehicle".
std::string rig_heading_caution(const RigHeadingCaution& caution);
// "the rig has moved 33 ft since its heading was set: set it again".
std::string rig_moved(double moved_m, bool miles);

// "the sun is too low", "it is not dark".
std::string why_no_shadow(sky::NoShadow why);
std::string why_no_pole_star(sky::NoPoleStar why);

}  // namespace mastwise::words
