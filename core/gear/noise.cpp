#include "core/gear/noise.hpp"

#include "core/gear/decibels.hpp"

#include <cmath>

namespace mastwise::gear {
namespace {

constexpr double kBoltzmann = 1.380649e-23;  // J/K [SI, 2019]
constexpr double kReferenceTemperatureK = 290.0;

// Fam = c - d log10 f.
struct NoiseLine {
  double c;
  double d;
};

// ITU-R P.372, table of c and d by environmental category.
NoiseLine man_made_line(NoiseEnvironment environment) {
  switch (environment) {
    case NoiseEnvironment::city:
      return {76.8, 27.7};
    case NoiseEnvironment::residential:
      return {72.5, 27.7};
    case NoiseEnvironment::rural:
      return {67.2, 27.7};
    case NoiseEnvironment::quiet_rural:
      return {53.6, 28.6};
  }
  return {76.8, 27.7};
}

double on_line(NoiseLine line, double frequency_mhz) {
  return line.c - line.d * std::log10(frequency_mhz);
}

}  // namespace

std::string_view to_text(NoiseEnvironment environment) {
  switch (environment) {
    case NoiseEnvironment::city:
      return "city";
    case NoiseEnvironment::residential:
      return "residential";
    case NoiseEnvironment::rural:
      return "rural";
    case NoiseEnvironment::quiet_rural:
      return "quiet rural";
  }
  return "";
}

double man_made_noise_figure_db(NoiseEnvironment environment, double frequency_mhz) {
  return on_line(man_made_line(environment), frequency_mhz);
}

double galactic_noise_figure_db(double frequency_mhz) {
  return on_line({52.0, 23.0}, frequency_mhz);
}

double external_noise_figure_db(NoiseEnvironment environment, double frequency_mhz) {
  return to_db(from_db(man_made_noise_figure_db(environment, frequency_mhz)) +
               from_db(galactic_noise_figure_db(frequency_mhz)));
}

double thermal_noise_dbm(double noise_bandwidth_hz) {
  return to_db(kBoltzmann * kReferenceTemperatureK * noise_bandwidth_hz / 1e-3);
}

Stage loss_stage(double loss_db) {
  return {.gain_db = -loss_db, .noise_figure_db = loss_db};
}

double cascade_noise_figure_db(std::span<const Stage> stages) {
  double noise_factor = 1.0;
  double gain_before = 1.0;
  for (const Stage& stage : stages) {
    noise_factor += (from_db(stage.noise_figure_db) - 1.0) / gain_before;
    gain_before *= from_db(stage.gain_db);
  }
  return to_db(noise_factor);
}

}  // namespace mastwise::gear
