#pragma once

#include "core/channels/channels.hpp"
#include "core/logbook/lesson.hpp"
#include "core/logbook/record.hpp"

#include <chrono>
#include <cstddef>
#include <string>

// What the logbook holds and teaches, in sentences.
namespace mastwise::words {

// "Steady", "Breaks up", "Nothing".
std::string outcome(Outcome outcome);

// "VHF came in 6 dB worse than forecast at 4 stops". The band is named as in the lesson.
std::string lesson(const learning::Lesson& lesson);

// "Here before: 3 nights", "First night here".
std::string nights_here(std::size_t nights);
// "4 of 6".
std::string of_all(std::size_t number, std::size_t all);
// "68 records", "17 stops".
std::string records(std::size_t outcomes);
std::string stops(std::size_t stops);

// "14 June", without the year.
std::string day_and_month(std::chrono::local_days day);
// "14 June" in the year of `today`, else "June 2025".
std::string near_date(std::chrono::local_days day, std::chrono::local_days today);

}  // namespace mastwise::words
