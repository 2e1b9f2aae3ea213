#include "core/sweep/sweep_scale.hpp"

namespace mastwise::aim {

std::string_view to_text(Scale scale) {
  switch (scale) {
    case Scale::quality_percent:
      return "quality";
    case Scale::decibel:
      return "db";
    case Scale::bars_of_5:
      return "bars";
    case Scale::bars_of_10:
      return "bars10";
  }
  return "";
}

ScaleFigures scale_figures(Scale scale) {
  constexpr double kStepSigma = 0.288675;  // of a uniform error one step wide: 1 / sqrt(12)
  const auto bars = [](double count) {
    return ScaleFigures{.units_per_db = 0.04 * count,
                        .slope_sigma = 0.5,
                        .peak_level = 0.8 * count,
                        .peak_level_sigma = 0.5 * count,
                        .noise = 0.42 * count / 5.0,
                        .rounding = kStepSigma,
                        .least = 0.0,
                        .most = count};
  };
  switch (scale) {
    case Scale::quality_percent:
      return {.units_per_db = 4.0,
              .slope_sigma = 0.5,
              .peak_level = 80.0,
              .peak_level_sigma = 50.0,
              .noise = 9.0,
              .rounding = kStepSigma,
              .least = 0.0,
              .most = 100.0};
    case Scale::decibel:
      break;
    case Scale::bars_of_5:
      return bars(5.0);
    case Scale::bars_of_10:
      return bars(10.0);
  }
  return {.units_per_db = 1.0,
          .slope_sigma = 1e-3,
          .peak_level = std::numeric_limits<double>::quiet_NaN(),
          .peak_level_sigma = 30.0,
          .noise = 1.5,
          .rounding = 0.0};
}

}  // namespace mastwise::aim
