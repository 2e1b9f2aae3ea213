#include "app/logbook/forecast.hpp"

#include "core/reception/aimed.hpp"
#include "core/reception/chance.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {

std::optional<Bearing<True>> aimed_at(const Shared& shared) {
  if (!shared.findings.card) return std::nullopt;
  return shared.findings.card->bearing_true;
}

std::optional<AimedForecast> forecast_at(const Shared& shared, const StationRow& row,
                                         Bearing<True> heading, const LearnedByBand& learned) {
  if (!row.outlook || row.outlook->decoding != gear::Decoding::possible) return std::nullopt;
  // As computed at that heading, before the logbook's corrections.
  const reception::LearnedBias& bias = learned[static_cast<std::size_t>(row.outlook->band)];
  reception::Outlook outlook = *row.outlook;
  outlook.deviations.logbook_db = 0.0;
  const gear::Pattern pattern = gear_of(shared.settings.gear).antenna.in(outlook.band).pattern;
  const auto aimed =
      reception::aimed_elsewhere(outlook, pattern, heading, shared.findings.heading_error_deg);
  if (!aimed) return std::nullopt;
  const double deviation_db = std::hypot(aimed->deviation_db, bias.sigma_db);
  return AimedForecast{
      .chance_percent = std::min(outlook.chance_cap_percent,
                                 reception::chance_percent(aimed->margin_db, deviation_db)),
      .margin_db = aimed->margin_db - bias.bias_db,
      .deviation_db = aimed->deviation_db};
}

}  // namespace mastwise
