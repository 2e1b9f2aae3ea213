#pragma once

#include "core/channels/channels.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

// Which appliance of the rig makes how much noise, from a meter's signal-to-noise ratio on one
// station: read with everything on, then with one appliance off after another.
namespace mastwise::gear {

// A step of the hunt.
struct NoiseStep {
  std::string turned_off = {};           // empty for the first step: everything is on
  std::vector<double> readings_db = {};  // signal to noise
  bool operator==(const NoiseStep&) const = default;
};

// What a meter shows in one state.
struct MeterMean {
  double mean_db = 0.0;
  double sigma_db = 0.0;  // of the mean, one standard deviation
};

// std::nullopt without readings. The deviation is the readings' own over the root of their number,
// and at least what whole half decibels and a moving picture leave: 0.3 dB; of a single reading it
// is 0.5 dB [own choice].
std::optional<MeterMean> mean_of(const NoiseStep& step);

// The noise of an appliance on its own: how far it raises the noise in a band above what is left
// with all measured ones off.
struct NoiseRise {
  double db = 0.0;        // at least 0
  double sigma_db = 0.0;  // one standard deviation
  bool operator==(const NoiseRise&) const = default;
};

// For each step after the first one, what the appliance turned off there adds; std::nullopt where a
// step or the one before it has no readings. The signal does not change, so the signal-to-noise
// ratio falls as the noise rises, and noise adds by power: with R in dB, appliance k makes
// 10^((R_last - R_k-1) / 10) - 10^((R_last - R_k) / 10) times the noise that is left at last. The
// deviation follows from those of the three means.
std::vector<std::optional<NoiseRise>> noise_rises(std::span<const NoiseStep> steps);

// An appliance of the rig as it was measured in one band.
struct ApplianceNoise {
  std::string name = {};
  Band band = Band::uhf;
  NoiseRise rise = {};
  bool on = true;  // while one watches
  bool operator==(const ApplianceNoise&) const = default;
};

// The rise of the noise by all appliances that are on, by band; std::nullopt for a band in which
// none was measured. Their powers add up, each over the noise without any of them.
using NoiseRises = std::array<std::optional<NoiseRise>, 3>;  // in the order of Band
NoiseRises rises_of(std::span<const ApplianceNoise> appliances);

}  // namespace mastwise::gear
