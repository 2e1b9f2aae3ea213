#pragma once

#include "core/stations/station.hpp"

#include <string>
#include <string_view>

// Full-text search terms for the catalog, independent of its database.
namespace mastwise::catalog_search {

// The texts that a search matches against a station.
struct Words {
  std::string networks;
  std::string programs;
  std::string place;
  std::string channels;  // "rf23 v6 v6x1": RF channel, virtual channel, its major and minor
};
Words words_of(const Station& station);

// The full-text query for what a person typed, every word quoted; empty if the text has no words.
std::string match_query(std::string_view typed);

}  // namespace mastwise::catalog_search
