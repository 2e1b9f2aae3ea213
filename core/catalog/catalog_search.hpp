#pragma once

#include "core/stations/station.hpp"

#include <string>
#include <string_view>

// How the catalog finds by text, apart from its database.
namespace mastwise::catalog_search {

// The texts by which a station is found.
struct Words {
  std::string networks;
  std::string programs;
  std::string place;
  std::string channels;  // "rf23 v6 v6x1": RF channel, virtual channel, its major and minor
};
Words words_of(const Station& station);

// The full-text query for what a person typed, every word quoted; empty when there is none in it.
std::string match_query(std::string_view typed);

}  // namespace mastwise::catalog_search
