#pragma once

#include "app/model/model.hpp"
#include "core/logbook/logbook.hpp"
#include "core/places/gazetteer.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun.hpp"

#include <string>
#include <string_view>
#include <vector>

// How numbers and states are said, the same on the screen, on paper and on the command line.
namespace mastwise::words {

std::string whole_degrees(double degrees);  // "208°", 359.7 is "0°"
template <class North>
std::string whole_degrees(Bearing<North> bearing) {
  return whole_degrees(bearing.degrees());
}
std::string tenths_of_degree(double degrees);         // "14.1°", 359.97 is "0.0°"
std::string distance(double distance_m, bool miles);  // "6.4 mi", "0.31 mi", "10.4 km"
std::string declination(Declination declination);     // "14.1° west"
std::string from_nose(RigAngle angle);  // "118° right", "20° left", "straight ahead"
std::string turn(Turn turn);            // "Turn right", "Turn left", "On target"
// How far the antenna may be off: "anywhere from 23° left to 19° right of it".
std::string slack(const std::optional<Slack>& slack);
std::string age(milliseconds age);  // "3 s", "4 min", "2 h"
std::string date(UtcTime time);     // "2 July 2026"
// The age of a table: "of 2017-04-13, 9 years 7 months old"; "age not known".
std::string data_age(std::string_view date, UtcTime now);
// What its age means for who aims by it; empty where nothing does.
std::string data_caution(std::string_view date, UtcTime now);
std::string iso_time(UtcTime time);                    // "2026-07-02T18:04:05Z"
std::string octant(Bearing<True> bearing);             // "NE": the nearest of eight
std::string time_of_day(milliseconds since_midnight);  // "18:04:05Z"
std::string notation(Notation notation);               // "degrees, minutes"
std::string link(const Link& link);

// A chance as its number and word: "83 %" and "likely"; "not known" where there is none.
std::string chance_number(const reception::Outlook& outlook);
std::string chance_number(double percent);
std::string chance_word(const reception::Outlook& outlook);
// How the two models see the path: "84 and 88 dBuV/m, models 4 dB apart".
std::string models(const reception::Outlook& outlook);
std::string surroundings(reception::Surroundings surroundings);

// "the sun is too low", "it is not dark".
std::string why_no_shadow(sky::NoShadow why);
std::string why_no_pole_star(sky::NoPoleStar why);
// "Bend, OR", "Paris, France": a place with what tells it from others of its name.
std::string place(const places::Place& place);
// Where a position is, seen from a place: "12 mi NE of Bend, OR", "near Bend, OR" within 1 mi or
// km.
std::string near_place(const places::NearPlace& near, bool miles);

// What a merge of two logbooks did, a line for each kind of record.
std::vector<std::string> merged(const MergeReport& report);

// The words with a capital first letter.
std::string sentence(std::string words);

// A station's programs as one line: "6.1 Basin Public, 6.2 Basin Weather".
std::string programs(const Station& station);
// What a traveler knows it by: the first virtual channel after the call sign.
std::string title(const Station& station);
// The networks it carries, or where it is licensed to.
std::string carries(const Station& station);

}  // namespace mastwise::words
