
#include "app/service/startup.hpp"
#include "app/shared/settings.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/survey.hpp"
#include "platform/tile_folder.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <memory>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

namespace {

using reception::ChanceWord;
using reception::PathMode;

// The tiles of another source without one of them.
class Without : public terrain::TileSource {
 public:
  Without(const terrain::TileSource& all, terrain::TileCell missing)
      : all_(all), missing_(missing) {}
  std::shared_ptr<const terrain::Tile> tile(terrain::TileCell cell) const override {
    return cell == missing_ ? nullptr : all_.tile(cell);
  }

 private:
  const terrain::TileSource& all_;
  terrain::TileCell missing_;
};

// The same station and stop with all ground, with part of it, and with none.
struct Pair {
  double whole_percent, partial_percent, area_percent, coverage;
};

std::vector<Pair> pairs_without_each_tile() {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  const platform::TileFolder all(service::practice_folder());
  const terrain::TileSet none;
  std::vector<Pair> pairs;
  for (const double turn_deg : {0.0, 90.0, 180.0, 270.0}) {
    for (const double away_m : {0.0, 15e3, 30e3, 45e3}) {
      if (away_m == 0.0 && turn_deg > 0.0) continue;
      if (test::kSanitized && away_m > 0.0) continue;
      const Position stop =
          destination(practice->position, Bearing<True>::degrees(turn_deg), away_m);
      const reception::Receiver receiver{.position = stop, .gear = gear_of({})};
      const auto survey_over = [&](const terrain::TileSource& tiles) {
        reception::Survey survey(receiver, practice->stations, tiles);
        reception::Scratch scratch;
        survey.measure(0, survey.size(), scratch);
        return survey;
      };
      const auto whole = survey_over(all);
      const auto area = survey_over(none);
      for (int south = 41; south <= 43; ++south) {
        for (int west = -122; west <= -117; ++west) {
          const Without part(all, {south, west});
          const auto partial = survey_over(part);
          for (std::size_t i = 0; i < whole.size(); ++i) {
            if (partial.outlook(i)->mode != PathMode::partial) continue;
            if (whole.outlook(i)->mode != PathMode::point_to_point) continue;
            if (!area.outlook(i)->chance_percent) continue;
            pairs.push_back({*whole.outlook(i)->chance_percent, *partial.outlook(i)->chance_percent,
                             *area.outlook(i)->chance_percent,
                             partial.outlook(i)->terrain_coverage});
          }
        }
      }
    }
  }
  return pairs;
}

// Of a chance against a picture that comes in with the whole ground's chance.
double brier(double shown_percent, double whole_percent) {
  const double shown = shown_percent / 100.0, whole = whole_percent / 100.0;
  return whole * (1.0 - shown) * (1.0 - shown) + (1.0 - whole) * shown * shown;
}

}  // namespace

TEST_CASE("without any one tile the forecast does not flatter") {
  const std::vector<Pair> pairs = pairs_without_each_tile();
  REQUIRE(pairs.size() > (test::kSanitized ? 20 : 300));
  double partial = 0.0, area = 0.0;
  std::size_t flattered = 0, false_steady = 0;
  double worst = 0.0;
  for (const Pair& pair : pairs) {
    partial += brier(pair.partial_percent, pair.whole_percent);
    area += brier(pair.area_percent, pair.whole_percent);
    flattered += pair.partial_percent > pair.whole_percent + 10.0 ? 1 : 0;
    worst = std::max(worst, pair.partial_percent - pair.whole_percent);
    const bool steady = reception::chance_word(pair.partial_percent) == ChanceWord::steady;
    false_steady += steady && pair.whole_percent < 70.0 ? 1 : 0;
    if (pair.coverage < 0.9) CHECK(pair.partial_percent <= 89.0);
  }
  const auto count = static_cast<double>(pairs.size());
  INFO(pairs.size() << " pairs, Brier score " << partial / count << ", area mode " << area / count
                    << "; " << flattered << " over 10 points too high, the worst by " << worst);
  CHECK(partial < area);
  CHECK(static_cast<double>(flattered) <= 0.05 * count);
  CHECK(false_steady == 0);
}

}  // namespace mastwise
