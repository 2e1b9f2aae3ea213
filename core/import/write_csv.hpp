#pragma once

#include "core/stations/station.hpp"

#include <span>
#include <string>

namespace mastwise {

// The stations as the table of import_csv.hpp, a line for each below the header; reading it back
// gives the same stations, with other lines as their provenance. Notes are columns of their own. In
// texts of programs ";" and "|" become "," and "/", since they separate programs and their parts.
std::string write_station_csv(std::span<const Station> stations);

}  // namespace mastwise
