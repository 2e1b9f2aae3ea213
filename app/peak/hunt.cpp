#include "app/peak/hunt.hpp"

#include "app/words/chances.hpp"

#include <algorithm>

namespace mastwise {
namespace {

// As many as a person would wait for; more hardly make the mean better.
constexpr std::size_t kMostHeard = 10;
// A receiver settles after the noise has changed [common practice, no source].
constexpr milliseconds kHuntSettles{3000};

}  // namespace

std::optional<NoiseHunt> hunt_begun(const Shared& shared) {
  if (!shared.stop.target || !shared.findings.outlook) return std::nullopt;
  return NoiseHunt{.title = words::title(*shared.stop.target),
                   .band = shared.findings.outlook->band,
                   .not_before = shared.now};
}

void turn_off(NoiseHunt& hunt, const std::string& appliance, Monotonic now,
              const aim::MeterTiming& timing) {
  if (appliance.empty()) return;
  if (!hunt.steps.back().readings_db.empty()) {
    hunt.steps.push_back({.turned_off = appliance});
  } else if (hunt.steps.size() > 1) {
    hunt.steps.back().turned_off = appliance;
  }
  hunt.not_before = now + kHuntSettles + timing.delay;
}

void hear(NoiseHunt& hunt, const aim::MeterReading& reading, const aim::MeterTiming& timing) {
  if (reading.kind != aim::MeterKind::snr_db) return;
  hunt.value_db = std::clamp(reading.value, kLeastHunt_db, kMostHunt_db);
  auto& readings = hunt.steps.back().readings_db;
  if (reading.when < hunt.not_before || readings.size() >= kMostHeard) return;
  readings.push_back(hunt.value_db);
  // Readings within the meter's smoothing repeat each other.
  hunt.not_before = reading.when + std::max(milliseconds{1000}, timing.smoothing);
}

void take_reading(NoiseHunt& hunt) {
  hunt.steps.back().readings_db.push_back(hunt.value_db);
}

void drop_last(NoiseHunt& hunt) {
  if (!hunt.steps.back().readings_db.empty()) {
    hunt.steps.back().readings_db.pop_back();
  } else if (hunt.steps.size() > 1) {
    hunt.steps.pop_back();
  }
}

std::vector<gear::ApplianceNoise> found_by(const NoiseHunt& hunt) {
  std::vector<gear::ApplianceNoise> found;
  const auto rises = gear::noise_rises(hunt.steps);
  for (std::size_t i = 0; i < rises.size(); ++i) {
    if (!rises[i]) continue;
    found.push_back({.name = hunt.steps[i + 1].turned_off, .band = hunt.band, .rise = *rises[i]});
  }
  return found;
}

std::vector<gear::ApplianceNoise> merged(std::vector<gear::ApplianceNoise> known,
                                         const std::vector<gear::ApplianceNoise>& found) {
  for (const gear::ApplianceNoise& one : found) {
    std::erase_if(known, [&](const gear::ApplianceNoise& other) {
      return other.name == one.name && other.band == one.band;
    });
    known.push_back(one);
  }
  return known;
}

}  // namespace mastwise
