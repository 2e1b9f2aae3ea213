#include "app/words/records.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {

std::string outcome(Outcome outcome) {
  switch (outcome) {
    case Outcome::steady:
      return say("Steady");
    case Outcome::breaks_up:
      return say("Breaks up");
    case Outcome::nothing:
      return say("Nothing");
  }
  return {};
}

std::string lesson(const learning::Lesson& lesson) {
  const char* const band = lesson.band == Band::uhf        ? say("UHF")
                           : lesson.band == Band::high_vhf ? say("High VHF")
                                                           : say("Low VHF");
  const char* const words = lesson.bias_db < 0.0
                                ? say("{band} came in {number} dB worse than forecast, {stops}")
                                : say("{band} came in {number} dB better than forecast, {stops}");
  const std::string stops = lesson.stops == 1 ? std::string(say("at 1 stop"))
                                              : fill(say("at {number} stops"),
                                                     {{"number", std::to_string(lesson.stops)}});
  return fill(words, {{"band", band},
                      {"number", fmt::format("{:.0f}", std::fabs(lesson.bias_db))},
                      {"stops", stops}});
}

std::string nights_here(std::size_t nights) {
  if (nights == 0) return say("First night here");
  if (nights == 1) return say("Here before: 1 night");
  return fill(say("Here before: {number} nights"), {{"number", std::to_string(nights)}});
}

std::string of_all(std::size_t number, std::size_t all) {
  return fill(say("{number} of {all}"),
              {{"number", std::to_string(number)}, {"all", std::to_string(all)}});
}

std::string records(std::size_t outcomes) {
  if (outcomes == 1) return say("1 record");
  return fill(say("{number} records"), {{"number", std::to_string(outcomes)}});
}

std::string stops(std::size_t stops) {
  if (stops == 1) return say("1 stop");
  return fill(say("{number} stops"), {{"number", std::to_string(stops)}});
}

std::string day_and_month(std::chrono::local_days day) {
  const std::chrono::year_month_day date{day};
  return fill(say("{day} {month}"),
              {{"day", std::to_string(static_cast<unsigned>(date.day()))},
               {"month", phrases().times.months[static_cast<unsigned>(date.month()) - 1]}});
}

std::string near_date(std::chrono::local_days day, std::chrono::local_days today) {
  const std::chrono::year_month_day date{day};
  if (date.year() == std::chrono::year_month_day{today}.year()) return day_and_month(day);
  return fill(say("{month} {year}"),
              {{"month", phrases().times.months[static_cast<unsigned>(date.month()) - 1]},
               {"year", std::to_string(static_cast<int>(date.year()))}});
}

}  // namespace mastwise::words
