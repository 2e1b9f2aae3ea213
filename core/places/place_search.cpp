#include "core/places/gazetteer.hpp"
#include "core/places/place_query.hpp"
#include "core/places/place_table.hpp"
#include "core/places/spelling.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::places {
namespace {

struct Candidate {
  double rank;
  std::uint32_t index;
};

bool better(const Candidate& a, const Candidate& b) {
  return a.rank != b.rank ? a.rank > b.rank : a.index < b.index;
}

// The rank that the match of the letters adds; std::nullopt without a match.
std::optional<double> letters_rank(const std::vector<Spelling>& spellings, std::string_view name) {
  constexpr double kWholeName = 2.5, kWrongLetter = -3.0, kLaterWord = -1.5;
  std::optional<double> rank;
  const auto take_better = [&](double other) { rank = std::max(rank.value_or(other), other); };
  for (const Spelling& spelling : spellings) {
    if (const auto agreement = spelling.with_beginning(name)) {
      take_better(agreement->wrong_letters * kWrongLetter +
                  (agreement->whole_name ? kWholeName : 0.0));
    } else if (spelling.begins_later_word(name)) {
      take_better(kLaterWord);
    }
  }
  return rank;
}

double population_rank(const PlaceTable& table, std::size_t i) {
  constexpr double kNotOrdinary = -1.0;
  const std::uint32_t population = table.populations[i];
  const bool known = population != PlaceTable::kUnknownPopulation && population > 0;
  return (known ? std::log10(population) : 0.0) +
         (table.kinds[i] == Kind::Ordinary ? 0.0 : kNotOrdinary);
}

// The areas that meet all conditions.
std::vector<bool> areas_of(const Reading& reading, const PlaceTable& table) {
  std::vector<bool> areas(table.area_of.size(), true);
  for (const auto& condition : reading.conditions) {
    for (std::size_t i = 0; i < areas.size(); ++i) areas[i] = areas[i] && condition[i];
  }
  return areas;
}

void add_candidates(const Reading& reading, const PlaceTable& table,
                    std::vector<Candidate>& candidates) {
  const std::vector<bool> areas = areas_of(reading, table);
  std::vector<Spelling> spellings;
  for (const std::string& spelling : reading.spellings) spellings.emplace_back(spelling);
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (!areas[table.areas[i]]) continue;
    if (const auto letters = letters_rank(spellings, table.folded_name(i))) {
      candidates.push_back({*letters + population_rank(table, i), static_cast<std::uint32_t>(i)});
    }
  }
}

void add_nearness(const PlaceTable& table, Position near, std::vector<Candidate>& candidates) {
  constexpr double kNearM = 30e3;
  const EarthPoint here = earth_point(near.latitude_deg(), near.longitude_deg());
  for (Candidate& candidate : candidates) {
    const EarthPoint there = table.point(candidate.index, table.cell_of(candidate.index));
    candidate.rank -= std::log10(1.0 + straight_way_m(here, there) / kNearM);
  }
}

// Each place once, with its best reading.
void keep_best_readings(std::vector<Candidate>& candidates) {
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    return a.index != b.index ? a.index < b.index : a.rank > b.rank;
  });
  const auto same = [](const Candidate& a, const Candidate& b) { return a.index == b.index; };
  candidates.erase(std::unique(candidates.begin(), candidates.end(), same), candidates.end());
}

}  // namespace

std::vector<FoundPlace> Gazetteer::search(std::string_view typed, std::size_t most,
                                          std::optional<Position> near) const {
  std::vector<Candidate> candidates;
  const auto readings = readings_of(typed, *table_);
  for (const Reading& reading : readings) add_candidates(reading, *table_, candidates);
  if (readings.size() > 1) keep_best_readings(candidates);
  if (near) add_nearness(*table_, *near, candidates);
  const std::size_t count = std::min(most, candidates.size());
  std::partial_sort(candidates.begin(), candidates.begin() + static_cast<std::ptrdiff_t>(count),
                    candidates.end(), better);
  std::vector<FoundPlace> found;
  for (std::size_t i = 0; i < count; ++i) {
    FoundPlace one{.place = place(candidates[i].index)};
    if (near) one.way = path_between(*near, one.place.position);
    found.push_back(std::move(one));
  }
  return found;
}

}  // namespace mastwise::places
