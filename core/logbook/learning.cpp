#include "core/logbook/learning.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace mastwise::learning {
namespace {

constexpr std::size_t kBands = 3;

std::size_t place_of(Band band) {
  return static_cast<std::size_t>(band);
}

// The index of a name; a new name gets a new one.
std::size_t place_of(std::map<std::string, std::size_t, std::less<>>& places,
                     const std::string& name, std::size_t first) {
  return places.try_emplace(name, first + places.size()).first->second;
}

}  // namespace

std::vector<Trial> trials(std::span<const OutcomeRecord> outcomes) {
  std::vector<Trial> result;
  for (const OutcomeRecord& outcome : outcomes) {
    if (outcome.mark.deleted || !outcome.margin_db || !outcome.deviation_db) continue;
    result.push_back({.margin_db = *outcome.margin_db,
                      .deviation_db = *outcome.deviation_db,
                      .outcome = outcome.outcome,
                      .band = outcome.band,
                      .gear = outcome.gear,
                      .stop_id = outcome.stop_id});
  }
  return result;
}

Learned learn(std::span<const Trial> trials) {
  Learned learned;
  std::vector<Look> looks;
  std::array<std::set<std::size_t>, kBands> stops_of_band;
  for (const Trial& trial : trials) {
    const std::size_t band = place_of(trial.band);
    const std::size_t stop = place_of(learned.stops_, trial.stop_id, 0);
    looks.push_back({.margin_db = trial.margin_db,
                     .deviation_db = trial.deviation_db,
                     .outcome = trial.outcome,
                     .band = band,
                     .gear = place_of(learned.gears_, trial.gear, kBands),
                     .stop = stop});
    ++learned.tried_[band].outcomes;
    stops_of_band[band].insert(stop);
  }
  for (std::size_t band = 0; band < kBands; ++band) {
    learned.tried_[band].stops = stops_of_band[band].size();
  }
  std::vector<double> prior_db(kBands, kBandPrior_db);
  prior_db.resize(kBands + learned.gears_.size(), kGearPrior_db);
  learned.effects_ = estimate(looks, prior_db, learned.stops_.size());
  return learned;
}

Correction Learned::correction(Band band, std::string_view gear, std::string_view stop_id) const {
  if (effects_.shared_db.empty()) return {.sigma_db = std::hypot(kBandPrior_db, kGearPrior_db)};
  Correction correction{.outcomes = tried_[place_of(band)].outcomes,
                        .stops = tried_[place_of(band)].stops};
  double variance_db2 = 0.0;
  std::vector<std::size_t> shared{place_of(band)};
  const auto used = gears_.find(gear);
  if (used != gears_.end()) {
    shared.push_back(used->second);
  } else {
    variance_db2 += kGearPrior_db * kGearPrior_db;
  }
  for (const std::size_t place : shared) correction.bias_db += effects_.shared_db[place];
  // A hill that nobody knows of can spoil every station of one stop: alone it says little about
  // other places.
  if (correction.stops <= 1) {
    const double most_db = shared.size() > 1 ? std::hypot(kBandPrior_db, kGearPrior_db)  // both
                                             : kBandPrior_db;
    correction.bias_db = std::clamp(correction.bias_db, -most_db, most_db);
  }
  const auto here = stops_.find(stop_id);
  const StopEffect* stop = here == stops_.end() ? nullptr : &effects_.stops[here->second];
  if (stop != nullptr) correction.bias_db += stop->effect_db;
  variance_db2 += effects_.variance_db2(shared, stop);
  correction.sigma_db = std::sqrt(variance_db2);
  correction.applied = std::fabs(correction.bias_db) >= kLeastEvidence * correction.sigma_db;
  return correction;
}

std::array<Correction, 3> Learned::corrections(std::string_view gear,
                                               std::string_view stop_id) const {
  return {correction(Band::low_vhf, gear, stop_id), correction(Band::high_vhf, gear, stop_id),
          correction(Band::uhf, gear, stop_id)};
}

reception::LearnedBias as_bias(const Correction& correction) {
  if (!correction.applied) {
    return {.sigma_db = std::min(reception::kUnlearnedGear_db, correction.sigma_db)};
  }
  return {
      .bias_db = correction.bias_db, .sigma_db = correction.sigma_db, .stops = correction.stops};
}

double corrected_chance_percent(double margin_db, double deviation_db,
                                const Correction& correction) {
  if (!correction.applied) return reception::chance_percent(margin_db, deviation_db);
  return reception::chance_percent(margin_db + correction.bias_db,
                                   std::hypot(deviation_db, correction.sigma_db));
}

}  // namespace mastwise::learning
