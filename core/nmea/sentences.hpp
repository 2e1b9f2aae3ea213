#pragma once

#include "core/nmea/report.hpp"

#include <optional>
#include <string_view>

namespace mastwise::nmea {

// Reads one sentence (from `$` up to its `*`, checksum already checked) of RMC, GGA, GLL, GNS, VTG,
// ZDA, GSA, GST, HDT, HDG, HDM or THS from any talker, with the field counts of NMEA 0183 1.5 to
// 4.11. std::nullopt for every other sentence: proprietary (`$P...`) or for ships (`!...`). The
// report's talker views `sentence`.
std::optional<Report> read_sentence(std::string_view sentence);

}  // namespace mastwise::nmea
