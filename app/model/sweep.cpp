#include "app/model/sweep.hpp"

namespace mastwise {
namespace {

void fit(Sweep& sweep, const gear::Pattern& pattern) {
  sweep.fit.reset();
  sweep.next.reset();
  sweep.why_no_fit.clear();
  if (sweep.readings.empty()) return;
  const auto fitter = aim::SweepFitter::for_pattern(pattern);
  if (!fitter) {
    sweep.why_no_fit = fitter.error().message();
    return;
  }
  const aim::SweepOptions options{.scale = sweep.scale};
  const auto fitted = fitter->fit(sweep.readings, options);
  if (!fitted) {
    sweep.why_no_fit = fitted.error().message();
    return;
  }
  sweep.fit = *fitted;
  if (const auto next = fitter->next_heading(sweep.readings, options)) sweep.next = *next;
}

}  // namespace

double scale_most(aim::Scale scale) {
  switch (scale) {
    case aim::Scale::bars_of_5:
      return 5.0;
    case aim::Scale::bars_of_10:
      return 10.0;
    case aim::Scale::quality_percent:
    case aim::Scale::decibel:
      break;
  }
  return 100.0;
}

double scale_step(aim::Scale scale) {
  return scale == aim::Scale::quality_percent ? 10.0 : 5.0;
}

std::string scale_words(aim::Scale scale) {
  switch (scale) {
    case aim::Scale::decibel:
      return "dB";
    case aim::Scale::bars_of_5:
      return "bars of 5";
    case aim::Scale::bars_of_10:
      return "bars of 10";
    case aim::Scale::quality_percent:
      break;
  }
  return "quality";
}

void read_meter(Sweep& sweep, const gear::Pattern& pattern, bool nothing) {
  sweep.readings.push_back({.heading = sweep.heading,
                            .value = nothing ? std::nullopt : std::optional<double>(sweep.value)});
  fit(sweep, pattern);
  // Before anything can be learnt, on to the right by the usual step [common practice: 10 to 15
  // degrees].
  constexpr double kStep_deg = 15.0;
  sweep.heading = sweep.next.value_or(sweep.heading + Turn::clockwise_deg(kStep_deg));
}

void drop_last_reading(Sweep& sweep, const gear::Pattern& pattern) {
  if (sweep.readings.empty()) return;
  sweep.heading = sweep.readings.back().heading;
  sweep.readings.pop_back();
  fit(sweep, pattern);
}

}  // namespace mastwise
