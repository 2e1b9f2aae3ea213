#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <utility>

// Every sentence that Mastwise makes from facts, and the units in them: a table for each language,
// english.cpp and spanish.cpp.
namespace mastwise::words {

using Phrase = const char*;

// Blanks in braces are filled in by name; a language may reorder them. Sentences that may follow a
// label start in lower case: see sentence().
struct Phrases {
  struct Units {
    Phrase mile, kilometer, foot, meter;
    Phrase one_degree, degrees;  // {number}
    Phrase east, west, east_letter, west_letter;
    std::array<Phrase, 8> octants;  // from north, clockwise
    Phrase right, left;             // {degrees}
    Phrase straight_along;          // no turn from a line of sight
    Phrase straight_ahead, straight_behind;
    Phrase on_target, turn_right, turn_left;
  } units;

  struct Times {
    Phrase seconds, minutes, hours;  // {number}
    std::array<Phrase, 12> months;
    Phrase date;         // {day} {month} {year}
    Phrase moment;       // {date} {time} {zone}
    Phrase zone_tablet;  // {zone}
    Phrase zone_unknown;
    Phrase year, years, month, months_old, day, days;  // {number}
    Phrase source_age;                                 // {date} {age}
    Phrase source_age_unknown;                         // {date}
    Phrase age_unknown;
    Phrase source_ageing, source_stale;
    Phrase earlier_stop;  // {date} {distance}
  } times;

  struct Reasons {
    Phrase with_cost, with_more_cost;     // {what} {cost}
    Phrase ridge_above, ridge_below;      // {distance} {height}
    Phrase curve_above, curve_below;      // {distance} {height}
    Phrase uneven_ground, assumed_hills;  // {distance}
    Phrase clutter;                       // {around} {clutter} {antenna}
    Phrase low_antenna;                   // {antenna}
    Phrase leaves, bare_trees;            // {depth}
    // An obstacle marked beside the rig: {distance} {height}
    Phrase trees_beside, bare_trees_beside, rig_beside, hill_beside;
    Phrase vertical_signal, horizontal_signal;
    Phrase same_channel, next_channel;  // {station} {distance} {level}
    Phrase weaker, stronger;            // {decibel}
    Phrase a_station;
    Phrase noise, noise_with_inverter;        // {frequency} {environment}
    Phrase noise_measured;                    // likewise
    Phrase heading_error;                     // {degrees}
    Phrase fading;                            // {distance} {cost}
    Phrase model_spread;                      // {spread} {distance}
    Phrase pattern_known, pattern_assumed;    // {cost}
    Phrase too_weak, too_weak_for_amplifier;  // {cost}
    Phrase overload, overload_by_towers;      // {sum} {cost}
    Phrase came_in_worse, came_in_better;     // {band} {decibel} {where}
    Phrase last_stop, last_stops;             // {number}
    Phrase check_vhf, check_uhf;              // {lesson}
    Phrase clear_line;                        // {distance}
    Phrase no_terrain;                        // {missing} {distance} {tile}
    Phrase unknown_channel;                   // {channel}
    Phrase unknown_power, unknown_height;
    Phrase too_near;  // {distance}
    Phrase beyond_models, unknown_amsl;
    Phrase unknown_standard;                                                     // {standard}
    Phrase amplifier_without_power;                                              // {cost}
    Phrase cannot_decode, may_be_encrypted, may_need_hevc, standard_may_differ;  // {standard}
    Phrase assumed_mode;                  // {standard} {mode} {needs} {least} {most}
    std::array<Phrase, 14> model_limits;  // in the order of itm::Warning
    std::array<Phrase, 3> model_ranges;   // in the order of itm::Range
  } reasons;

  // The same in a few words, for a list.
  struct Briefs {
    Phrase costs;  // {cost}
    Phrase ridge;  // {distance}
    Phrase curve, uneven_ground, assumed_hills, low_antenna;
    Phrase leaves, bare_trees, polarization;
    Phrase trees_beside, rig_beside, hill_beside;
    Phrase same_channel, next_channel;  // {station}
    Phrase noise, noise_with_inverter, noise_measured;
    Phrase aim;  // {degrees}
    Phrase fading;
    Phrase models;  // {spread}
    Phrase pattern, too_weak, too_strong, came_in_worse, came_in_better;
    Phrase clear_line, no_terrain, beyond_models, fact_unknown, amplifier_off, assumed_mode;
  } briefs;

  struct Chances {
    Phrase ordinary_evening;
    Phrase in_leaf, bare;  // {around}
    Phrase unknown, not_on_this_tv, not_computed;
    Phrase area_field;  // {field}
    Phrase field;       // {field} {spread}
    Phrase tolerance_unknown, any_heading;
    Phrase tolerance;  // {left} {right}
    Phrase beside;     // {station} {interferer} {gain}
    Phrase at_best;    // {name} {chance}
  } chances;

  struct Headings {
    Phrase true_bearing;                  // {degrees}
    Phrase grid_bearing;                  // {zone} {degrees}
    Phrase magnetic_bearing;              // {degrees}
    Phrase set_compass;                   // {declination} {degrees}
    Phrase sun_shadow;                    // {marks}
    std::array<Phrase, 4> shadow_lies;    // {time}, in the order of sky::ShadowLies
    Phrase shadow_angle;                  // {now} {later}
    Phrase star, or_star;                 // {star} {aside}
    Phrase star_place;                    // {name} {octant} {degrees}
    std::array<Phrase, 28> guide_bodies;  // in the order of sky::GuideBody
    Phrase landmark;                      // {landmark} {aside}
    Phrase a_landmark;
    Phrase turn_in_place;       // {known} {degrees}
    Phrase turn_in_place_less;  // likewise, to the left
    Phrase the_shadow;
    Phrase middle_of_town;                             // {name}
    Phrase walk;                                       // {distance} {latitude} {longitude}
    Phrase leave_handle;                               // {reading}
    Phrase handle_clockwise, handle_counterclockwise;  // {degrees} {reading} {side}
    Phrase past_and_back;                              // {degrees}
    std::array<Phrase, 4> sides;                       // in the order of RigSide
    std::array<Phrase, 24> rig_sides;                  // every 15 degrees clockwise from the nose
    Phrase map_north_as_magnetic;                      // {true} {magnetic} {effect}
    Phrase declination_twice;                          // {true} {magnetic} {effect}
    Phrase wrong_sign;                                 // {wrong} {magnetic} {effect}
    Phrase too_far_right, too_far_left;                // {degrees}
    Phrase no_difference;
    Phrase trailer_in_line, true_or_magnetic;
    Phrase sensor_declination;           // {set} {here}
    Phrase rig_moved;                    // {distance}
    std::array<Phrase, 3> no_shadow;     // in the order of sky::NoShadow
    std::array<Phrase, 2> no_pole_star;  // in the order of sky::NoPoleStar
  } headings;

  struct Checks {
    Phrase readings_agree;
    Phrase readings_disagree;            // {degrees}
    Phrase agreement;                    // {degrees} {usual} {verdict}
    std::array<Phrase, 4> verdicts;      // in the order of Verdict
    std::array<Phrase, 3> needle_pulls;  // in the order of NeedlePull
    Phrase by_one_check, by_checks;      // {number}
    Phrase implausible;
    Phrase compass_low, compass_high;  // {by} {off} {set} {error}
    Phrase compass_agrees;             // {by} {error}
    Phrase sweep_too_wide;             // {error} {forgiven}
    Phrase handle_off;                 // {by} {off} {set} {error}
    Phrase contradiction;
  } checks;

  struct Scans {
    std::array<Phrase, 5> states;   // in the order of ScanState
    std::array<Phrase, 4> choices;  // in the order of ScanChoice
    Phrase twins;                   // {channel} {stations}
    Phrase twin;                    // {station} {rf} {distance}
    Phrase and_twin;                // between two of them
    Phrase other_first;             // {twins} {rf}
  } scans;

  struct Places {
    Phrase near;                      // {place}
    Phrase away;                      // {distance} {octant} {place}
    std::array<Phrase, 5> notations;  // in the order of Notation
  } places;

  struct Receivers {
    std::array<Phrase, 15> troubles;  // in the order of nmea::FixTrouble; {seconds} of silence
    Phrase no_fix_with_satellites;    // {number}
  } receivers;

  struct Files {
    Phrase stops, outcomes, sweeps;
    Phrase merged;  // {what} {added} {renewed} {same} {kept}
    Phrase searching;
    Phrase open, lost, ended;     // {name}, of the line to the receiver
    Phrase unsaved_one, unsaved;  // {number} {why}
    Phrase refused;               // {number}
    Phrase settings_dropped;      // {names}
    Phrase state_dropped;         // {why}
    Phrase logbook_rescued;       // {file} {stops} {outcomes}
    Phrase logbook_unwritable;    // {why}
    Phrase catalog_rescued;       // {file} {stations}
    Phrase catalog_damaged;       // {why}
  } files;
};

extern const Phrases kEnglish;
extern const Phrases kSpanish;

// Those of the language in use: see language.hpp. A sentence that takes its phrases from one call
// is of one language.
const Phrases& phrases();

// The phrase with its blanks filled in: fill(phrase, {{"distance", "6 mi"}}).
std::string fill(Phrase phrase, std::initializer_list<std::pair<Phrase, std::string>> blanks);

// The words with a capital first letter; "¿" and digits stay.
std::string sentence(std::string words);

// The name of an enumerator in a table in enumeration order; empty if the number is out of range.
template <class Table, class Enum>
std::string named(const Table& table, Enum value) {
  const auto number = static_cast<std::size_t>(value);
  return number < table.size() ? table[number] : std::string();
}

}  // namespace mastwise::words
