#pragma once

#include "core/plan/slack.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/surroundings.hpp"
#include "core/stations/station.hpp"

#include <optional>
#include <string>
#include <vector>

// Stations, their chances and how exactly to aim at them.
namespace mastwise::words {

// A chance as its number and word: "83 %" and "likely"; "unknown" if it could not be computed, "not
// on this TV" if the TV cannot decode the station.
std::string chance_number(const reception::Outlook& outlook);
std::string chance_number(double percent);
std::string chance_word(const reception::Outlook& outlook);
// The field by the two models: "86 dBµV/m, models 4 dB apart".
std::string models(const reception::Outlook& outlook);
// "on an ordinary evening": what every chance is for. The models' medians are of all hours of an
// average year, and no source lets them say more of one evening.
std::string evening();
// "forest, in leaf", "forest, bare", "town".
std::string surroundings(reception::Surroundings surroundings, bool in_leaf);

// How far the antenna may be off: "Good from 23° left to 19° right".
std::string slack(const std::optional<Slack>& slack);

// Why a heading is beside a station, and what no heading brings: "QABC 6.1, 12 % at best".
std::string aimed_beside(const std::string& station, const std::string& interferer,
                         double gain_percent);
// "At 10° magnetic a null lies on QDST: QWNT gains 24 points, lost: QLSE".
std::string on_null(const std::string& station, const std::string& interferer,
                    const std::string& heading, double gain_percent,
                    const std::vector<std::string>& loses);

std::string at_best(const std::string& name, const std::optional<double>& best_percent);

// A station's programs as one line: "6.1 Basin Public, 6.2 Basin Weather".
std::string programs(const Station& station);
// The call sign and the first virtual channel.
std::string title(const Station& station);
// The networks it carries, or else its city of license.
std::string carries(const Station& station);

}  // namespace mastwise::words
