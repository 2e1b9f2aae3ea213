#include "app/peak/update.hpp"

#include "app/peak/hunt.hpp"
#include "app/shared/actions.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"

#include <algorithm>

namespace mastwise {
namespace {

gear::Pattern pattern_of(const Shared& shared, const Sweep& sweep) {
  return gear_of(shared.settings.gear).antenna.in(sweep.band).pattern;
}

// Starts a sweep of the target at its computed heading; none without target or heading.
std::optional<Sweep> begun(const PeakState& state, const Shared& shared, SweepBy by) {
  const Findings& found = shared.findings;
  if (!shared.stop.target || !found.card || !found.outlook) return state.sweep;
  const aim::Scale scale = scale_of(state.meter).value_or(aim::Scale::quality_percent);
  Sweep sweep{.station = key_of(*shared.stop.target),
              .title = words::title(*shared.stop.target),
              .band = found.outlook->band,
              .by = by,
              .scale = scale,
              .value = scale_start(scale),
              .no_meter = state.meter == Meter::none};
  if (by == SweepBy::Compass) sweep.heading = on_compass(found.card->bearing_magnetic);
  if (by == SweepBy::Sensor) {
    sweep.heading = Bearing<Dial>::degrees(found.card->bearing_true.degrees());
  }
  return sweep;
}

void set_scale(Sweep& sweep, aim::Scale scale) {
  if (!sweep.readings.empty() || sweep.scale == scale) return;
  sweep.scale = scale;
  sweep.value = scale_start(scale);
}

bool has_marks(const Sweep& sweep) {
  return !sweep.readings.empty() || sweep.left_edge || sweep.right_edge;
}

// Before a sweep is replaced or put away.
void remember_sweep(const PeakState& state, Shared& shared) {
  if (!state.sweep || !has_marks(*state.sweep)) return;
  remember(shared, "Sweep started over").also.push_back(act::PutSweepBack{*state.sweep});
}

// What the actions do to a sweep.
class SweepUpdater {
 public:
  SweepUpdater(Sweep& sweep, Shared& shared) : sweep_(sweep), shared_(shared) {}

  void operator()(const act::ChooseMeter& chosen) {
    const auto scale = scale_of(chosen.meter);
    sweep_.no_meter = !scale;
    if (scale) set_scale(sweep_, *scale);
  }
  void operator()(const act::TurnSweep& turn) {
    sweep_.heading = sweep_.heading + Turn::clockwise_deg(turn.degrees);
  }
  void operator()(const act::SetMeter& set) {
    const double least = sweep_.scale == aim::Scale::decibel ? -200.0 : 0.0;
    sweep_.value = std::clamp(sweep_.value + set.by, least, scale_most(sweep_.scale));
  }
  void operator()(const act::ReadMeter& read) { read_meter(sweep_, pattern(), read.nothing); }
  void operator()(const act::DropReading&) { drop_last_reading(sweep_, pattern()); }
  void operator()(const act::MarkEdge& edge) { mark_edge(sweep_, edge.right); }
  void operator()(const act::NextScale&) {
    const std::size_t now = static_cast<std::size_t>(meter_of(sweep_.scale));
    set_scale(sweep_, aim::kScales[(now + 1) % aim::kScales.size()]);
  }
  void operator()(const act::KeepSweep&);

 private:
  gear::Pattern pattern() const { return pattern_of(shared_, sweep_); }

  Sweep& sweep_;
  Shared& shared_;
};

// The sensor's direction as a dial of its own, by map north; none if it does not turn with the
// antenna.
std::optional<Bearing<Dial>> sensor_dial(const Shared& shared, Monotonic now) {
  if (shared.settings.sensor_mount == SensorMount::Rig) return std::nullopt;
  const auto says = sensor_says(shared.receiver.heading(now), shared.findings);
  if (!says) return std::nullopt;
  return Bearing<Dial>::degrees(says->degrees());
}

void SweepUpdater::operator()(const act::KeepSweep&) {
  const auto result = result_of(sweep_);
  if (!result || !shared_.stations || !shared_.findings.position) return;
  const StationRow* row = find_row(*shared_.stations, sweep_.station);
  if (row == nullptr) return;
  remember(shared_, "Sweep saved");
  const double forgiven_deg = aim::forgiven_deg(pattern());
  if (result->error95_deg > forgiven_deg) {
    shared_.trouble = words::sweep_too_wide(result->error95_deg, forgiven_deg);
  } else {
    shared_.trouble.clear();
    auto& kept = shared_.stop.strong_stations;
    std::erase_if(kept, [&](const PeakedStation& one) {
      return one.key == sweep_.station && one.by == sweep_.by;
    });
    kept.push_back({.key = sweep_.station,
                    .by = sweep_.by,
                    .position = row->station.position,
                    .taken_at = *shared_.findings.position,
                    .peak_deg = result->peak.degrees(),
                    .sigma_deg = result->sigma_deg,
                    .standing = shared_.stop.standing,
                    .at = moment_of(shared_)});
  }
  shared_.following.push_back(act::SweepKept{{.station = sweep_.station,
                                              .by = sweep_.by,
                                              .band = sweep_.band,
                                              .scale = std::string(aim::to_text(sweep_.scale)),
                                              .readings = sweep_.readings,
                                              .peak = result->peak,
                                              .sigma_deg = result->sigma_deg}});
}

class PeakUpdater {
 public:
  PeakUpdater(PeakState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::BeginSweep& begin) {
    remember_sweep(state_, shared_);
    state_.by = begin.by;
    state_.sweep = begun(state_, shared_, begin.by);
    state_.turning = false;
  }
  void operator()(const act::EndSweep&) {
    remember_sweep(state_, shared_);
    state_.sweep.reset();
    state_.turning = false;
  }
  void operator()(const act::PutSweepBack& back) {
    state_.sweep = back.sweep;
    fit(*state_.sweep, pattern_of(shared_, *state_.sweep));
  }
  void operator()(const act::ChooseTurnBy& chosen) { state_.by = chosen.by; }
  void operator()(const act::ConnectMeter& chosen) {
    shared_.settings.meter = chosen.name;
    state_.line = {};
    state_.line_link = {};
  }
  void operator()(const act::MeterLinkChanged& changed) { state_.line_link = changed.link; }
  void operator()(const act::MetersFound& found) { state_.meters = found.meters; }
  void operator()(const act::MeterBytes& received) {
    std::vector<aim::MeterReading> readings;
    state_.line.feed(received.bytes, received.now,
                     [&](const aim::MeterReading& one) { readings.push_back(one); });
    for (const aim::MeterReading& one : readings) hear(one);
  }
  // The sensor's heading, if these bytes had one.
  void hear_sensor(Monotonic now) {
    const std::uint64_t taken = shared_.receiver.heading(now).taken;
    if (taken == state_.headings_followed) return;
    state_.headings_followed = taken;
    if (!state_.sweep || state_.sweep->by != SweepBy::Sensor) return;
    const auto heading = sensor_dial(shared_, now);
    if (!heading) return;
    Sweep& sweep = *state_.sweep;
    sweep.heading = *heading;
    if (!sweep.live) return;
    sweep.live->turn(now, *heading);
    follow_live(sweep, pattern_of(shared_, sweep), now);
  }
  void operator()(const act::BeginHunt&) { state_.hunt = hunt_begun(shared_); }
  void operator()(const act::EndHunt&) { state_.hunt.reset(); }
  void operator()(const act::SetHunt& set) {
    if (!state_.hunt) return;
    state_.hunt->value_db = std::clamp(state_.hunt->value_db + set.by, kLeastHunt_db, kMostHunt_db);
  }
  void operator()(const act::ReadHunt&) {
    if (state_.hunt) take_reading(*state_.hunt);
  }
  void operator()(const act::DropHunt&) {
    if (state_.hunt) drop_last(*state_.hunt);
  }
  void operator()(const act::KeepHunt&) {
    if (!state_.hunt) return;
    const auto found = found_by(*state_.hunt);
    if (found.empty()) return;
    change_appliances("Noise measured", merged(shared_.settings.appliances, found));
    state_.hunt.reset();
  }
  void operator()(const act::SetAppliances& set) { shared_.settings.appliances = set.appliances; }
  void operator()(const act::SwitchAppliance& change) {
    auto appliances = shared_.settings.appliances;
    for (gear::ApplianceNoise& one : appliances) {
      if (one.name == change.name) one.on = change.on;
    }
    change_appliances("Appliance switched", std::move(appliances));
  }
  void turned_off(const std::string& appliance) {
    if (state_.hunt) turn_off(*state_.hunt, appliance, shared_.now, state_.line.timing());
  }
  void operator()(const act::SwitchTurning&) { state_.turning = !state_.turning; }
  void operator()(const act::ChooseMeter& chosen) {
    state_.meter = chosen.meter;
    to_sweep(chosen);
  }
  void operator()(const act::ReadMeter& read) {
    state_.turning = false;
    to_sweep(read);
  }
  template <class A>
  void operator()(const A& action) {
    to_sweep(action);
  }

 private:
  template <class A>
  void to_sweep(const A& action) {
    if (state_.sweep) SweepUpdater(*state_.sweep, shared_)(action);
  }

  void change_appliances(const char* what, std::vector<gear::ApplianceNoise> appliances) {
    remember(shared_, what).also.push_back(act::SetAppliances{shared_.settings.appliances});
    shared_.settings.appliances = std::move(appliances);
  }

  // A reading of the connected meter: the number to take, and with the sensor a reading by itself.
  void hear(const aim::MeterReading& reading) {
    if (state_.hunt && shared_.sheet == Sheet::NoiseHunt) {
      mastwise::hear(*state_.hunt, reading, state_.line.timing());
    }
    const auto kind = state_.line.kind(reading.when);
    if (!state_.sweep || state_.sweep->no_meter || !kind) return;
    if (reading.kind && reading.kind != kind) return;
    Sweep& sweep = *state_.sweep;
    set_scale(sweep, aim::scale_of(*kind));
    if (sweep.scale != aim::scale_of(*kind)) return;  // it was begun by hand on another scale
    if (reading.kind) sweep.value = reading.value;
    if (sweep.by != SweepBy::Sensor) return;
    const gear::Pattern pattern = pattern_of(shared_, sweep);
    if (!sweep.live) {
      sweep.live.emplace(
          aim::LiveOptions{.scale = sweep.scale,
                           .beamwidth_deg = pattern.half_power_beamwidth_deg().value_or(120.0),
                           .timing = state_.line.timing()},
          sweep.readings);
    }
    sweep.live->read(reading.when, reading.kind ? std::optional(reading.value) : std::nullopt);
    follow_live(sweep, pattern, reading.when);
  }

  PeakState& state_;
  Shared& shared_;
};

}  // namespace

bool reads_itself(const PeakState& peak, const nmea::Receiver& receiver, Monotonic now) {
  if (!peak.sweep || !peak.sweep->live) return false;
  const nmea::HeadingSensor sensor = receiver.heading(now);
  return peak.line.state(now) == aim::MeterState::speaking &&
         (sensor.true_heading || sensor.magnetic_heading);
}

void update(PeakState& state, Shared& shared, const Action& action) {
  if (const auto* received = action.get_if<act::ReceiverBytes>()) {
    PeakUpdater(state, shared).hear_sensor(received->now);
  }
  if (const auto* off = action.get_if<act::TurnedOff>()) {
    PeakUpdater(state, shared).turned_off(off->appliance);
  }
  visit(action, PeakActions{}, PeakUpdater(state, shared));
}

}  // namespace mastwise
