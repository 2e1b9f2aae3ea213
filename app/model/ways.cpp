#include "app/model/ways.hpp"

#include "app/model/model.hpp"
#include "app/words/chances.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

constexpr double kUsualWalk_m = 100.0;

SayingInputs saying_inputs(const Model& model) {
  const Findings& found = model.findings;
  SayingInputs inputs{.from = *found.position,
                      .card = *found.card,
                      .context = heading_context(model),
                      .walk_m = kUsualWalk_m};
  if (model.settings.handle) {
    if (const auto handle = handle_of(*model.settings.handle)) inputs.handle = *handle;
  }
  if (const auto reading = model.form.number(Field::HandleNow_deg)) {
    inputs.handle_now = HandleReading::dial_deg(*reading);
  }
  if (const auto place = model.form.place(Field::LandmarkPlace)) {
    const std::string name = model.form.name(Field::LandmarkPlace);
    inputs.landmark = Landmark{.name = name,
                               .town = !name.empty(),
                               .position = *place,
                               .error_m = name.empty() ? kTransmitter_m : kDotOfTown_m};
  }
  const UtcTime now = moment_of(model);
  const sky::Shadow shadow = sky::plumb_shadow(*found.position, now);
  if (!shadow.why_none) {
    const auto later = sky::sun_at(*found.position, now + std::chrono::minutes(5));
    inputs.sun = SunNow{shadow.sun.azimuth, later.azimuth};
    inputs.context.sun_turn_deg_per_min = shadow.error_per_clock_minute_deg;
    inputs.context.clock_error_min = clock_error_min(model);
  }
  const sky::PoleStar star = sky::pole_star_at(*found.position, now);
  if (!star.why_none) inputs.pole_star = star.azimuth;
  return inputs;
}

}  // namespace

double clock_error_min(const Model& model) {
  constexpr double kMachineClock_min = 1.0;
  return model.receiver.fix(model.now).utc ? 0.0 : kMachineClock_min;
}

UtcTime moment_of(const Model& model) {
  const auto utc = model.receiver.fix(model.now).utc;
  return utc ? *utc : model.machine_time;
}

HeadingContext heading_context(const Model& model) {
  const Findings& found = model.findings;
  HeadingContext context;
  if (found.card) context.distance_m = found.card->distance_m;
  const auto parked = model.parked.result();
  const bool by_hand = model.stop.source == PositionSource::ByHand;
  context.stop_error_m = kTypedPosition_m;
  if (by_hand) {
    context.stop_error_m = model.stop.by_hand_error_m;
  } else if (parked && parked->scatter_m) {
    context.stop_error_m = *parked->scatter_m;
  }
  context.transmitter_error_m = kTransmitter_m;
  if (found.field) context.declination_sigma_deg = found.field->declination_sigma_deg;
  context.deviation_sigma_deg = kKeptAwayDeviation_deg;
  if (model.stop.nose) context.rig_heading_sigma_deg = model.stop.nose->sigma_deg;
  if (model.settings.handle) {
    if (const auto handle = handle_of(*model.settings.handle)) {
      context.handle_zero_sigma_deg = handle->sigma_deg();
      context.handle_play_deg = handle->mechanism().play_deg;
    }
  }
  return context;
}

void derive_ways(const Model& model, Findings& findings) {
  if (!findings.card || !findings.position) return;
  Sayings said = say_heading(saying_inputs(model));
  findings.ways = std::move(said.sayings);
  findings.ways_left_out = std::move(said.left_out);
  if (findings.field) {
    findings.mistake = north_mistakes(findings.card->bearing_true, findings.field->declination)
                           .map_north_as_magnetic;
  }
}

namespace {

ScanTick tick_of(const Model& model, const StationKey& key) {
  const auto& here = model.findings.position;
  if (!model.ticked_at || !here || !same_stop(*model.ticked_at, *here)) return ScanTick::not_tried;
  for (const Ticked& ticked : model.ticks) {
    if (ticked.key == key) return ticked.tick;
  }
  return ScanTick::not_tried;
}

const PlanStep* chosen_step(const Model& model) {
  if (!model.stations || !model.stations->plan) return nullptr;
  const auto& steps = model.stations->plan->steps;
  return model.scan_step < steps.size() ? &steps[model.scan_step] : nullptr;
}

}  // namespace

std::vector<ScanCandidate> scan_candidates(const StationsAnswer& answer, const PlanStep& step) {
  std::vector<ScanCandidate> candidates;
  for (const PlanStation& station : step.brings) {
    const StationRow* row = find_row(answer, station.key);
    if (row == nullptr || !row->outlook) continue;
    candidates.push_back({.station = row->station,
                          .chance_percent = station.chance_percent,
                          .bearing = row->outlook->bearing,
                          .distance_m = row->outlook->distance_m});
  }
  return candidates;
}

void derive_scan(const Model& model, Findings& findings) {
  const PlanStep* step = chosen_step(model);
  if (step == nullptr) return;
  const std::vector<ScanCandidate> candidates = scan_candidates(*model.stations, *step);
  std::vector<ScanTick> ticks;
  for (const ScanCandidate& candidate : candidates) {
    ticks.push_back(tick_of(model, key_of(candidate.station)));
  }
  ScanList& list = findings.scan;
  list.heading = step->bearing;
  ScanPlan plan = plan_scan(candidates);
  list.twins = std::move(plan.twins);
  for (ChannelToEnter& channel : plan.channels) {
    const std::size_t best = channel.expected.front().candidate;
    list.lines.push_back({.key = key_of(candidates[best].station),
                          .channel = std::move(channel),
                          .carries = words::carries(candidates[best].station),
                          .tick = ticks[best]});
  }
  const bool ticked_here = std::any_of(ticks.begin(), ticks.end(),
                                       [](ScanTick tick) { return tick != ScanTick::not_tried; });
  list.which = which_scan({.made_at_this_stop = ticked_here,
                           .takes_channels_by_hand = model.settings.channels_by_hand});
  list.state = advise(candidates, ticks).state;
}

}  // namespace mastwise
