#include "core/reception/compare.hpp"

#include "core/text/words.hpp"

#include <algorithm>

namespace mastwise::reception {
namespace {

std::optional<Offer> best_offer(const std::vector<Prospect>& prospects, const Wish& wish) {
  std::optional<Offer> best;
  for (std::size_t i = 0; i < prospects.size(); ++i) {
    const Outlook& outlook = prospects[i].outlook;
    if (!outlook.chance_percent || !grants(prospects[i].station, wish)) continue;
    if (best && best->chance_percent >= *outlook.chance_percent) continue;
    best = Offer{.prospect = i,
                 .chance_percent = *outlook.chance_percent,
                 .distance_m = outlook.distance_m,
                 .bearing = outlook.bearing};
  }
  return best;
}

PlaceOffers offers_at(std::size_t place, const std::vector<Prospect>& prospects,
                      std::span<const Wish> wishes) {
  PlaceOffers row{.place = place};
  double sum_percent = 0.0;
  double weakest_percent = 100.0;
  for (const Wish& wish : wishes) {
    row.offers.push_back(best_offer(prospects, wish));
    const auto& offer = row.offers.back();
    const double percent = offer ? offer->chance_percent : 0.0;
    row.granted += offer ? 1U : 0U;
    sum_percent += percent;
    weakest_percent = std::min(weakest_percent, percent);
  }
  row.weakest_percent = weakest_percent;
  row.mean_percent = sum_percent / static_cast<double>(wishes.size());
  return row;
}

}  // namespace

bool grants(const Station& station, const Wish& wish) {
  const auto in_programs = [&](auto matches) {
    return std::any_of(station.programs.begin(), station.programs.end(), matches);
  };
  switch (wish.kind) {
    case Wish::Kind::call_sign:
      return words::same_word(station.call_sign, wish.text);
    case Wish::Kind::network:
      return words::same_word(station.network, wish.text) ||
             in_programs([&](const Program& program) {
               return words::same_word(program.network, wish.text);
             });
    case Wish::Kind::program:
      return in_programs([&](const Program& program) {
        return words::same_word(program.name, wish.text) ||
               words::same_word(program.virtual_channel, wish.text);
      });
  }
  return false;
}

std::vector<PlaceOffers> compare_places(std::span<const std::vector<Prospect>> places,
                                        std::span<const Wish> wishes) {
  std::vector<PlaceOffers> rows;
  for (std::size_t place = 0; place < places.size(); ++place) {
    rows.push_back(offers_at(place, places[place], wishes));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const PlaceOffers& a, const PlaceOffers& b) {
    if (a.weakest_percent != b.weakest_percent) return a.weakest_percent > b.weakest_percent;
    return a.mean_percent > b.mean_percent;
  });
  return rows;
}

}  // namespace mastwise::reception
