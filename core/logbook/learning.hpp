#pragma once

#include "core/logbook/effects.hpp"
#include "core/logbook/record.hpp"
#include "core/reception/chance.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// What the logbook teaches of the chances to come: by how many dB stations come in better or worse
// than computed, in a band, with a gear, at a stop. Failures count as much as successes.
// How is told in effects.hpp.
namespace mastwise::learning {

struct Trial {
  double margin_db = 0.0;     // as computed, without any correction
  double deviation_db = 0.0;  // positive
  Outcome outcome = Outcome::nothing;
  Band band = Band::uhf;
  std::string gear = {};
  std::string stop_id = {};
};

// The trials of those outcomes that are not deleted and have margin and deviation.
std::vector<Trial> trials(std::span<const OutcomeRecord> outcomes);

// What is added to the margin of a station.
struct Correction {
  double bias_db = 0.0;      // negative: stations come in worse than computed
  double sigma_db = 0.0;     // of the bias; the prior's where nothing is known
  std::size_t outcomes = 0;  // of this band, with any gear
  std::size_t stops = 0;     // at which they were seen
  // Whether the bias is far enough from nothing to be used: see kLeastEvidence.
  bool applied = false;
  bool operator==(const Correction&) const = default;
};

// A bias is used once it is this many sigmas from nothing: below, what chance alone brings about
// would make good predictions worse. Chosen by simulation (tests/core/logbook): biases of 6 dB are
// used early, and well-calibrated logs lose less than 2 % of their Brier score.
constexpr double kLeastEvidence = 1.6;

class Learned {
 public:
  // With a stop's id the effect of that stop is added, where something was tried there. A gear that
  // was never used has the prior's.
  Correction correction(Band band, std::string_view gear, std::string_view stop_id = {}) const;

 private:
  friend Learned learn(std::span<const Trial> trials);

  struct Tried {
    std::size_t outcomes = 0;
    std::size_t stops = 0;
  };
  std::array<Tried, 3> tried_ = {};                             // by band
  std::map<std::string, std::size_t, std::less<>> gears_ = {};  // place among the shared effects
  std::map<std::string, std::size_t, std::less<>> stops_ = {};  // place among the stops
  Effects effects_ = {};
};

// Work: outcomes times shared effects squared, a few times over.
Learned learn(std::span<const Trial> trials);

// The chance in percent with the correction, where it is applied: the margin moved by the bias, the
// deviation grown by its sigma. Else that of reception::chance_percent.
double corrected_chance_percent(double margin_db, double deviation_db,
                                const Correction& correction);

}  // namespace mastwise::learning
