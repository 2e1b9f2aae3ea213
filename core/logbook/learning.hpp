#pragma once

#include "core/logbook/effects.hpp"
#include "core/logbook/record.hpp"
#include "core/reception/chance.hpp"
#include "core/reception/survey.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// What the logbook teaches about future chances: by how many dB stations come in better or worse
// than computed, in a band, with a gear, at a stop. Failures count as much as successes. See
// effects.hpp for the model.
namespace mastwise::learning {

struct Trial {
  double margin_db = 0.0;     // as computed, without correction
  double deviation_db = 0.0;  // positive
  Outcome outcome = Outcome::nothing;
  Band band = Band::uhf;
  std::string gear = {};
  std::string stop_id = {};
};

// The trials of the outcomes that are not deleted and have margin and deviation.
std::vector<Trial> trials(std::span<const OutcomeRecord> outcomes);

// A correction for the margin of a station.
struct Correction {
  double bias_db = 0.0;      // negative: stations come in worse than computed
  double sigma_db = 0.0;     // of the bias; the prior's without outcomes
  std::size_t outcomes = 0;  // of this band, with any gear
  std::size_t stops = 0;     // of these outcomes
  // Whether the bias is far enough from 0 to be used: see kLeastEvidence.
  bool applied = false;
  bool operator==(const Correction&) const = default;
};

// What the forecast takes from a correction: no bias unless it is applied, but a spread below that
// of an unlearned gear even then.
reception::LearnedBias as_bias(const Correction& correction);

// A bias is used once it is this many sigmas from 0; with less evidence, chance alone would make
// good predictions worse. Chosen by simulation (tests/core/logbook): biases of 6 dB are used early,
// and well-calibrated logs lose less than 2 % of their Brier score.
constexpr double kLeastEvidence = 1.6;

class Learned {
 public:
  // With a stop's id the effect of that stop is included, if a station was tried there. A gear that
  // was never used has the prior's effect.
  Correction correction(Band band, std::string_view gear, std::string_view stop_id = {}) const;
  // The same for every band, in the order of Band.
  std::array<Correction, 3> corrections(std::string_view gear, std::string_view stop_id) const;

 private:
  friend Learned learn(std::span<const Trial> trials);

  struct Tried {
    std::size_t outcomes = 0;
    std::size_t stops = 0;
  };
  std::array<Tried, 3> tried_ = {};                             // by band
  std::map<std::string, std::size_t, std::less<>> gears_ = {};  // index among the shared effects
  std::map<std::string, std::size_t, std::less<>> stops_ = {};  // index among the stops
  Effects effects_ = {};
};

// Cost: outcomes times shared effects squared, a few times over.
Learned learn(std::span<const Trial> trials);

// The chance in percent with the correction, if it applies: the margin shifted by the bias, the
// deviation widened by its sigma. Otherwise that of reception::chance_percent.
double corrected_chance_percent(double margin_db, double deviation_db,
                                const Correction& correction);

}  // namespace mastwise::learning
