#include "app/service/practice_log.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/chance.hpp"

#include <algorithm>
#include <array>
#include <chrono>

namespace mastwise::service {
namespace {

constexpr std::size_t kHere = 3, kStops = 17, kStationsTried = 6;
constexpr double kDeviation_db = 8.0, kVhfWorse_db = 12.0;

// Invented figures without a pattern to the eye; [0, 1).
double invented(std::size_t stop, std::size_t station) {
  constexpr std::size_t kStep = 37, kOther = 61, kOf = 97;
  return static_cast<double>((kStep * stop + kOther * station + 11) % kOf) / kOf;
}

Outcome outcome_of(double margin_db, Band band, double luck) {
  const double seen_db =
      margin_db - (band == Band::uhf ? 0.0 : kVhfWorse_db) + 2.0 * kDeviation_db * (luck - 0.5);
  constexpr double kBreaks_db = 3.0;
  if (seen_db > 0.0) return Outcome::steady;
  return seen_db > -kBreaks_db ? Outcome::breaks_up : Outcome::nothing;
}

}  // namespace

LogbookRecords practice_log(const Practice& practice, UtcTime before) {
  constexpr std::array kHeadings_deg{37.0, 39.0, 34.0};
  LogbookRecords records;
  for (std::size_t i = 0; i < kStops; ++i) {
    const bool here = i < kHere;
    const auto when = before - std::chrono::days(1 + (here ? i : 5 * i));
    const Mark mark{.changed = when, .tablet = "practice"};
    StopRecord stop{.id = "practice-" + std::to_string(i),
                    .mark = mark,
                    .position = practice.position,
                    .arrived = when,
                    .name = "PRACTICE"};
    if (!here) {
      constexpr double kApart_m = 9000.0, kStep_deg = 50.0;
      stop.position =
          destination(practice.position, Bearing<True>::degrees(kStep_deg * static_cast<double>(i)),
                      kApart_m * static_cast<double>(i));
    }
    records.stops.push_back(stop);
    for (std::size_t k = 0; k < std::min(kStationsTried, practice.stations.size()); ++k) {
      const Station& station = practice.stations[k];
      const auto slot = channel_slot(Raster::atsc, station.rf_channel);
      const Band band = slot ? slot->band : Band::uhf;
      const double margin_db =
          here ? 14.0 - 2.0 * static_cast<double>(k) : 32.0 * invented(i, k) - 12.0;
      records.outcomes.push_back(
          {.stop_id = stop.id,
           .source = station.provenance.source.name,
           .station_id = station.id,
           .mark = mark,
           .call_sign = station.call_sign,
           .rf_channel = station.rf_channel,
           .band = band,
           .heading = Bearing<True>::degrees(here ? kHeadings_deg[i] : 90.0),
           .outcome = outcome_of(margin_db, band, invented(k, i)),
           .when = when,
           .chance_percent = reception::chance_percent(margin_db, kDeviation_db),
           .margin_db = margin_db,
           .deviation_db = kDeviation_db});
    }
  }
  return records;
}

}  // namespace mastwise::service
