#include "core/gear/noise.hpp"

#include "core/gear/decibels.hpp"
#include "core/text/words.hpp"

#include <array>
#include <cmath>

namespace mastwise::gear {
namespace {

constexpr double kBoltzmann = 1.380649e-23;  // J/K [SI, 2019]
constexpr double kReferenceTemperatureK = 290.0;

constexpr std::array kEnvironments{NoiseEnvironment::city, NoiseEnvironment::residential,
                                   NoiseEnvironment::rural, NoiseEnvironment::quiet_rural};

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

constexpr double kHighestOfLines_mhz = 250.0;  // ITU-R P.372
constexpr double kTenthDeviate = 1.2816;       // of the normal distribution

// ITU-R BT.2033-2: the allowance at UHF in urban places, and the noise figure it is over. As an
// open implementation of the Recommendation has them; not compared with its text.
constexpr double kUrbanAllowance_db = 1.0;
constexpr double kAllowanceNoiseFigure_db = 6.0;

double factor_or_none(const std::optional<double>& figure_db) {
  return figure_db ? from_db(*figure_db) : 0.0;
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

Result<NoiseEnvironment> parse_noise_environment(std::string_view text) {
  return words::parse_choice(text, kEnvironments, "a noise environment");
}

std::optional<double> man_made_noise_figure_db(NoiseEnvironment environment, double frequency_mhz) {
  if (frequency_mhz <= kHighestOfLines_mhz) {
    return on_line(man_made_line(environment), frequency_mhz);
  }
  if (environment != NoiseEnvironment::city) return std::nullopt;
  return kAllowanceNoiseFigure_db + to_db(from_db(kUrbanAllowance_db) - 1.0);
}

std::optional<double> inverter_noise_figure_db(double frequency_mhz) {
  if (frequency_mhz > kHighestOfLines_mhz) return std::nullopt;
  return on_line(man_made_line(NoiseEnvironment::city), frequency_mhz);
}

double galactic_noise_figure_db(double frequency_mhz) {
  return on_line({52.0, 23.0}, frequency_mhz);
}

double external_noise_figure_db(const NoiseSources& sources, double frequency_mhz) {
  double factor = from_db(galactic_noise_figure_db(frequency_mhz)) +
                  factor_or_none(man_made_noise_figure_db(sources.environment, frequency_mhz));
  if (sources.inverter_on) factor += factor_or_none(inverter_noise_figure_db(frequency_mhz));
  return to_db(factor);
}

// The decile deviations as quoted from version 17; not compared with its text.
double man_made_deviation_db(NoiseEnvironment environment) {
  switch (environment) {
    case NoiseEnvironment::city:
      return 8.4 / kTenthDeviate;
    case NoiseEnvironment::residential:
      return 5.8 / kTenthDeviate;
    case NoiseEnvironment::rural:
    case NoiseEnvironment::quiet_rural:
      break;
  }
  return 6.8 / kTenthDeviate;
}

double noise_deviation_db(const NoiseSources& sources, double frequency_mhz,
                          double noise_figure_db) {
  const double total =
      from_db(noise_figure_db) + from_db(external_noise_figure_db(sources, frequency_mhz));
  const double around =
      factor_or_none(man_made_noise_figure_db(sources.environment, frequency_mhz)) / total *
      man_made_deviation_db(sources.environment);
  if (!sources.inverter_on) return around;
  const double inverter =
      factor_or_none(inverter_noise_figure_db(frequency_mhz)) / total * kInverterDeviation_db;
  return std::hypot(around, inverter);
}

TotalNoise total_noise(const NoiseSources& sources, Band band, double frequency_mhz,
                       double noise_figure_db) {
  const auto& measured = sources.measured[static_cast<std::size_t>(band)];
  NoiseSources counted = sources;
  if (measured) counted.inverter_on = false;
  const double chain = from_db(noise_figure_db);
  const double external = from_db(external_noise_figure_db(counted, frequency_mhz));
  const double around_db = noise_deviation_db(counted, frequency_mhz, noise_figure_db);
  if (!measured) return {to_db(external), to_db(chain + external), around_db};
  const double risen = from_db(measured->db);
  const double total = (chain + external) * risen;
  return {.external_db = to_db(total - chain),
          .total_db = to_db(total),
          .deviation_db = std::hypot(around_db / risen, measured->sigma_db)};
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
