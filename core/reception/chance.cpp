#include "core/reception/chance.hpp"

#include "core/reception/unknown_pattern.hpp"

#include <cmath>
#include <numbers>

namespace mastwise::reception {

ChanceWord chance_word(double percent) {
  const double shown = std::round(percent);
  if (shown >= 90.0) return ChanceWord::steady;
  if (shown >= 70.0) return ChanceWord::likely;
  if (shown >= 40.0) return ChanceWord::even_odds;
  if (shown >= 10.0) return ChanceWord::long_shot;
  return ChanceWord::out_of_reach;
}

std::string_view to_text(ChanceWord word) {
  switch (word) {
    case ChanceWord::steady:
      return "steady";
    case ChanceWord::likely:
      return "likely";
    case ChanceWord::even_odds:
      return "even odds";
    case ChanceWord::long_shot:
      return "long shot";
    case ChanceWord::out_of_reach:
      return "out of reach";
  }
  return {};
}

double Deviations::total_db() const {
  return std::sqrt(location_db * location_db + time_db * time_db + model_db * model_db +
                   ground_db * ground_db + heading_db * heading_db + station_db * station_db +
                   interference_db * interference_db + logbook_db * logbook_db +
                   noise_db * noise_db);
}

double chance_percent(double margin_db, double deviation_db) {
  return 50.0 * std::erfc(-margin_db / deviation_db / std::numbers::sqrt2);
}

double chance_percent(double margin_db, const Spread& spread) {
  if (!spread.unknown_pattern) return chance_percent(margin_db, spread.deviation_db);
  double sum = 0.0;
  for (const PatternLoss& each : kUnknownPattern) {
    sum += each.probability *
           chance_percent(margin_db + kUnknownPatternMean_db - each.loss_db, spread.deviation_db);
  }
  return sum;
}

double chance_cap_percent(double terrain_coverage, double rough_percent) {
  // The highest that are shown as less than steady, and as less than likely.
  constexpr double kBelowSteady_percent = 89.0;
  constexpr double kBelowLikely_percent = 69.0;
  if (terrain_coverage >= kKnownEnough) return 100.0;
  const bool rough_is_likely = chance_word(rough_percent) <= ChanceWord::likely;
  return terrain_coverage >= 0.5 || rough_is_likely ? kBelowSteady_percent : kBelowLikely_percent;
}

}  // namespace mastwise::reception
