#include "core/places/place_query.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace mastwise::places {
namespace {

using Condition = std::vector<bool>;

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kShortWords{
    {{"st", "saint"}, {"mt", "mount"}, {"ft", "fort"}}};
// Common names for a country besides its code and its name.
constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kOtherCodes{
    {{"usa", "us"}, {"uk", "gb"}, {"great britain", "gb"}, {"england", "gb"}}};

// The name as written, and with its first word expanded or abbreviated.
std::vector<std::string> spellings_of(const std::string& name) {
  std::vector<std::string> spellings{name};
  for (const auto& [brief, full] : kShortWords) {
    for (const auto& [from, to] : {std::pair(brief, full), std::pair(full, brief)}) {
      if (name.size() > from.size() && name[from.size()] == ' ' &&
          std::string_view(name).substr(0, from.size()) == from) {
        spellings.push_back(std::string(to) + name.substr(from.size()));
      }
    }
  }
  return spellings;
}

// Whether the word means the area: its code, its whole name, or at least `least` letters of it.
bool means(const AreaName& area, std::string_view word, std::size_t least) {
  if (word == area.folded_code) return true;
  return word.size() >= std::min(least, area.folded_name.size()) &&
         std::string_view(area.folded_name).substr(0, word.size()) == word;
}

// The areas that a word can mean; empty if none.
Condition condition_of(std::string_view word, std::size_t least, const PlaceTable& table) {
  for (const auto& [other, code] : kOtherCodes) {
    if (word == other) word = code;
  }
  Condition condition(table.area_of.size());
  bool any = false;
  const auto add = [&](const AreaName& named) {
    if (!means(named, word, least)) return;
    for (std::size_t i = 0; i < condition.size(); ++i) {
      const PlaceTable::Area& area = table.area_of[i];
      const bool within =
          area.country == named.country && (named.admin.empty() || area.admin == named.admin);
      if (!within) continue;
      condition[i] = true;
      any = true;
    }
  };
  std::for_each(table.countries.begin(), table.countries.end(), add);
  std::for_each(table.regions.begin(), table.regions.end(), add);
  return any ? condition : Condition();
}

// "paris, t, usa": the text after a comma is an area, even if it has only a few letters yet.
std::vector<Reading> readings_with_commas(std::string_view typed, const PlaceTable& table) {
  Reading reading;
  for (bool first = true; !typed.empty(); first = false) {
    const std::size_t end = std::min(typed.find(','), typed.size());
    const std::string part = table.folding.fold(typed.substr(0, end));
    typed.remove_prefix(std::min(end + 1, typed.size()));
    if (first) {
      reading.spellings = spellings_of(part);
    } else if (!part.empty()) {
      Condition condition = condition_of(part, 1, table);
      if (condition.empty()) return {};
      reading.conditions.push_back(std::move(condition));
    }
  }
  return {reading};
}

// Removes one to three final words that mean an area, in every way, and repeats with the rest.
void add_readings(const std::string& name, const std::vector<Condition>& conditions,
                  const PlaceTable& table, std::vector<Reading>& readings) {
  constexpr std::size_t kMostConditions = 2;
  constexpr int kMostWordsOfArea = 3;
  constexpr std::size_t kLeastLettersOfName = 3;
  readings.push_back({spellings_of(name), conditions});
  if (conditions.size() == kMostConditions) return;
  std::size_t space = name.size();
  for (int words = 1; words <= kMostWordsOfArea; ++words) {
    space = space == 0 ? std::string::npos : name.rfind(' ', space - 1);
    if (space == std::string::npos || space == 0) return;
    Condition condition =
        condition_of(std::string_view(name).substr(space + 1), kLeastLettersOfName, table);
    if (condition.empty()) continue;
    std::vector<Condition> more = conditions;
    more.push_back(std::move(condition));
    add_readings(name.substr(0, space), more, table, readings);
  }
}

}  // namespace

std::vector<Reading> readings_of(std::string_view typed, const PlaceTable& table) {
  // Longer than any place with its state and country.
  constexpr std::size_t kMostBytes = 200;
  typed = typed.substr(0, kMostBytes);
  if (typed.find(',') != std::string_view::npos) return readings_with_commas(typed, table);
  std::vector<Reading> readings;
  add_readings(table.folding.fold(typed), {}, table, readings);
  return readings;
}

}  // namespace mastwise::places
