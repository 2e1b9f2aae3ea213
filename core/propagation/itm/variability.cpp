#include "core/propagation/itm/climates.hpp"
#include "core/propagation/itm/limits.hpp"
#include "core/propagation/itm/normal_deviate.hpp"
#include "core/propagation/itm/roughness.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::itm {
namespace {

struct Deviates {
  double time;
  double location;
  double situation;
};

// Variations that the mode combines share one deviate.
Deviates deviates(const Variability& variability, const Percentages& percentages) {
  Deviates z = {normal_deviate(percentages.time / 100), normal_deviate(percentages.location / 100),
                normal_deviate(percentages.situation / 100)};
  switch (variability.mode) {
    case VariabilityMode::single_message:
      z.time = z.situation;
      z.location = z.situation;
      break;
    case VariabilityMode::individual:
      z.location = z.situation;
      break;
    case VariabilityMode::mobile:
      z.location = z.time;
      break;
    case VariabilityMode::broadcast:
      break;
  }
  return z;
}

// d_e: the distance at which a path between standard terminals has the same variation.
double effective_distance_m(const Path& path) {
  constexpr double kStandardRadiusM = 9e6;
  double reach_m = std::cbrt(575.7e12 / path.wave_number_per_m);
  for (const Terminal& terminal : path.terminals) {
    reach_m += std::sqrt(2 * kStandardRadiusM * terminal.effective_height_m);  // d_ex (5.2)
  }
  constexpr double kStandardReachM = 130e3;
  return path.distance_m < reach_m ? kStandardReachM * path.distance_m / reach_m
                                   : kStandardReachM + path.distance_m - reach_m;  // (5.3)
}

// sigma_T on the deviate's side of the median, and that of ducts beyond z_D.
double time_deviation_db(const ClimateTable& table, double effective_distance, double wave_number,
                         double z) {
  if (z < 0) return table.below.at(effective_distance) * table.factor_below.at(wave_number);
  const double above = table.above.at(effective_distance) * table.factor_above.at(wave_number);
  if (z <= table.ducting_deviate) return above;
  const double ducting = above * table.ducting_ratio;
  return ducting + (above - ducting) * table.ducting_deviate / z;
}

double location_deviation_db(const Path& path) {
  const double roughness =
      stretch_irregularity_m(path.delta_h_m, path.distance_m) * path.wave_number_per_m;
  return 10 * roughness / (roughness + 13);
}

double square(double value) {
  return value * value;
}

// Below free space the distribution is compressed, since the field cannot rise without limit.
double squeezed(double attenuation_db) {
  return attenuation_db < 0 ? attenuation_db * (29 - attenuation_db) / (29 - 10 * attenuation_db)
                            : attenuation_db;
}

struct Spread {
  double offset_db;     // Y_R: certain at the given deviates
  double deviation_db;  // remaining uncertainty, at the situation's deviate
};

Spread spread(const Variability& variability, const Prediction& prediction, const Deviates& z,
              double situation_variance) {
  const double time = prediction.time_deviation_db;
  const double location = prediction.location_deviation_db;
  switch (variability.mode) {
    case VariabilityMode::single_message:
      return {0, std::sqrt(time * time + location * location + situation_variance)};
    case VariabilityMode::individual:
      return {time * z.time, std::sqrt(location * location + situation_variance)};
    case VariabilityMode::mobile:
      return {std::sqrt(time * time + location * location) * z.time, std::sqrt(situation_variance)};
    case VariabilityMode::broadcast:
      break;
  }
  return {time * z.time + location * z.location, std::sqrt(situation_variance)};
}

}  // namespace

Result<Variability> variability_from_code(int code) {
  if (code < 0 || code > 33 || code % 10 > 3) {
    return Error{.what = fmt::format("variability code is {}", code),
                 .where = "terrain model",
                 .remedy =
                     "give 0 to 3, plus 10 without location variability, plus 20 without "
                     "situation variability"};
  }
  return Variability{.mode = static_cast<VariabilityMode>(code % 10),
                     .location_varies = code / 10 % 2 == 0,
                     .situation_varies = code < 20};
}

Result<Prediction> predict(const Path& path, const Variability& variability,
                           const Percentages& percentages) {
  if (auto error = check(variability, percentages)) return *error;
  const Deviates z = deviates(variability, percentages);
  const ClimateTable& table = climate_table(path.climate);

  Prediction prediction;
  prediction.effective_distance_m = effective_distance_m(path);
  prediction.climate_median_db = table.median.at(prediction.effective_distance_m);
  prediction.time_deviation_db =
      time_deviation_db(table, prediction.effective_distance_m, path.wave_number_per_m, z.time);
  if (variability.location_varies) prediction.location_deviation_db = location_deviation_db(path);
  if (variability.situation_varies) {
    prediction.situation_deviation_db = 5 + 3 * std::exp(-prediction.effective_distance_m / 100e3);
  }

  const double situation_variance =
      square(prediction.situation_deviation_db) +
      square(prediction.time_deviation_db * z.time) / (7.8 + square(z.situation)) +
      square(prediction.location_deviation_db * z.location) / (24 + square(z.situation));
  const Spread parts = spread(variability, prediction, z, situation_variance);
  prediction.attenuation_db =
      squeezed(path.reference_attenuation_db - prediction.climate_median_db - parts.offset_db -
               parts.deviation_db * z.situation);
  prediction.loss_db = path.free_space_loss_db + prediction.attenuation_db;
  prediction.warnings = path.warnings | deviate_warnings(z.time, z.location, z.situation);
  return prediction;
}

}  // namespace mastwise::itm
