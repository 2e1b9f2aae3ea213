#include "app/peak/state.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise {
namespace {

// Two ways to find one direction on one dial. A shared error, such as the dial's, makes them agree
// too well. That is harmless, because both are used on that dial.
void compare_with_fit(Sweep& sweep) {
  if (!sweep.fit) return;
  const auto agreement =
      compare_headings(sweep.fit->peak, sweep.fit->sigma_deg, sweep.between_edges->middle,
                       sweep.between_edges->sigma_deg);
  if (agreement) {
    sweep.edges_agree = *agreement;
  } else {
    sweep.edge_trouble = agreement.error().message();
  }
}

void compare_edges(Sweep& sweep) {
  sweep.between_edges.reset();
  sweep.edges_agree.reset();
  sweep.edge_trouble.clear();
  if (!sweep.left_edge || !sweep.right_edge) return;
  const aim::Edges edges{.left = *sweep.left_edge, .right = *sweep.right_edge};
  const auto middle = aim::middle_of_edges(std::span(&edges, 1));
  if (!middle) {
    sweep.edge_trouble = middle.error().message();
    return;
  }
  sweep.between_edges = *middle;
  compare_with_fit(sweep);
}

void fit_readings(Sweep& sweep, const gear::Pattern& pattern) {
  sweep.fit.reset();
  sweep.next.reset();
  sweep.why_no_fit.clear();
  sweep.curve.clear();
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
  if (const auto curve = fitter->curve(sweep.readings, options)) sweep.curve = *curve;
}

}  // namespace

void fit(Sweep& sweep, const gear::Pattern& pattern) {
  fit_readings(sweep, pattern);
  compare_edges(sweep);
}

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

// Tuners that show decibels of signal to noise show some 20 where a picture is clear [common
// practice, no source]; of a scale with an end, its middle.
double scale_start(aim::Scale scale) {
  constexpr double kClear_db = 20.0;
  return scale == aim::Scale::decibel ? kClear_db : scale_most(scale) / 2.0;
}

std::optional<aim::Scale> scale_of(Meter meter) {
  if (meter == Meter::none) return std::nullopt;
  return aim::kScales[static_cast<std::size_t>(meter)];
}

Meter meter_of(aim::Scale scale) {
  const auto found = std::find(aim::kScales.begin(), aim::kScales.end(), scale);
  return static_cast<Meter>(found - aim::kScales.begin());
}

void follow_live(Sweep& sweep, const gear::Pattern& pattern, Monotonic now) {
  std::vector<aim::Reading> readings = sweep.live->readings();
  if (readings != sweep.readings) {
    sweep.readings = std::move(readings);
    fit(sweep, pattern);
  }
  sweep.hint = sweep.live->hint(sweep.fit, now);
}

void read_meter(Sweep& sweep, const gear::Pattern& pattern, bool nothing) {
  sweep.readings.push_back({.heading = sweep.heading,
                            .value = nothing ? std::nullopt : std::optional<double>(sweep.value)});
  fit(sweep, pattern);
  sweep.live.reset();  // it begins anew with this reading before its own
  // Before the fit has enough readings, step right by the usual amount [common practice: 10 to 15
  // degrees].
  constexpr double kStep_deg = 15.0;
  sweep.heading = sweep.next.value_or(sweep.heading + Turn::clockwise_deg(kStep_deg));
}

void drop_last_reading(Sweep& sweep, const gear::Pattern& pattern) {
  if (sweep.readings.empty()) return;
  sweep.heading = sweep.readings.back().heading;
  sweep.readings.pop_back();
  sweep.live.reset();
  fit(sweep, pattern);
}

void mark_edge(Sweep& sweep, bool right) {
  (right ? sweep.right_edge : sweep.left_edge) = sweep.heading;
  compare_edges(sweep);
}

std::optional<SweepResult> result_of(const Sweep& sweep) {
  constexpr double kSigmasOf95 = 1.96;
  if (sweep.fit) {
    const double more_deg =
        sweep.live ? std::hypot(sweep.live->lag_sigma_deg(), sweep.live->axis_sigma_deg()) : 0.0;
    return SweepResult{sweep.fit->peak, std::hypot(sweep.fit->sigma_deg, more_deg),
                       std::hypot(sweep.fit->error95_deg, kSigmasOf95 * more_deg)};
  }
  if (!sweep.between_edges) return std::nullopt;
  const aim::EdgeMiddle& edges = *sweep.between_edges;
  return SweepResult{edges.middle, edges.sigma_deg, kSigmasOf95 * edges.sigma_deg};
}

}  // namespace mastwise
