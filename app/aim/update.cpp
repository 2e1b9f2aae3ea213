#include "app/aim/update.hpp"

#include "app/aim/handle.hpp"
#include "app/words/checks.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun.hpp"

#include <utility>

namespace mastwise {
namespace {

class AimUpdater {
 public:
  AimUpdater(AimState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::TurnDial&) {
    constexpr std::size_t kCount = kStoredNames<DialUp>.size();
    state_.dial_up = static_cast<DialUp>((static_cast<std::size_t>(state_.dial_up) + 1) % kCount);
  }
  void operator()(const act::ChooseDialUp& chosen) { state_.dial_up = chosen.up; }
  void operator()(const act::ChoosePointing& chosen) { shared_.settings.pointing = chosen.method; }
  void operator()(const act::KeepHandle&) {
    if (const auto handle = handle_from(shared_.form)) shared_.settings.handle = handle;
  }
  void operator()(const act::ForgetHandle&) {
    remember(shared_, "Handle deleted").also.push_back(act::HandleBack{shared_.settings.handle});
    shared_.settings.handle.reset();
  }
  void operator()(const act::HandleBack& back) { shared_.settings.handle = back.handle; }
  void operator()(const act::ForgetCorrection&) {
    remember(shared_, "Correction deleted");
    shared_.stop.strong_stations.clear();
  }

 private:
  AimState& state_;
  Shared& shared_;
};

constexpr double kUsualWalk_m = 100.0;

SayingInputs saying_inputs(const Shared& shared) {
  const Findings& found = shared.findings;
  SayingInputs inputs{
      .from = *found.position,
      .card = *found.card,
      .context = heading_context(shared),
      .compass_off = found.card->bearing_magnetic -
                     to_magnetic(found.card->bearing_true, found.field->declination),
      .walk_m = kUsualWalk_m};
  if (shared.settings.handle) {
    if (const auto handle = handle_of(*shared.settings.handle)) inputs.handle = *handle;
  }
  if (const auto reading = shared.form.number(Field::HandleNow_deg)) {
    inputs.handle_now = HandleReading::dial_deg(*reading);
  }
  if (const auto place = shared.form.place(Field::LandmarkPlace)) {
    const std::string name = shared.form.name(Field::LandmarkPlace);
    inputs.landmark = Landmark{.name = name,
                               .town = !name.empty(),
                               .position = *place,
                               .error_m = name.empty() ? kTransmitter_m : kDotOfTown_m};
  }
  const UtcTime now = moment_of(shared);
  const sky::Shadow shadow = sky::plumb_shadow(*found.position, now);
  if (!shadow.why_none) {
    const auto later = sky::sun_at(*found.position, now + std::chrono::minutes(5));
    inputs.sun = SunNow{shadow.sun.azimuth, later.azimuth};
    inputs.context.sun_turn_deg_per_min = shadow.error_per_clock_minute_deg;
    inputs.context.clock_error_min = clock_error_min(shared);
  }
  const sky::PoleStar star = sky::pole_star_at(*found.position, now);
  if (!star.why_none) inputs.pole_star = star.azimuth;
  return inputs;
}

void derive_ways(AimState& state, const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.card || !found.position) return;
  Sayings said = say_heading(saying_inputs(shared));
  state.ways = std::move(said.sayings);
  state.ways_left_out = std::move(said.left_out);
  if (found.field) {
    state.mistake =
        north_mistakes(found.card->bearing_true, found.field->declination).map_north_as_magnetic;
  }
}

FormAnswer reciprocal_check(const Form& form) {
  const auto both = numbers(form, Field::ThereBearing_deg, Field::BackBearing_deg);
  if (!both) return {};
  return {.lines = {words::reciprocal(check_reciprocal(Bearing<Magnetic>::degrees((*both)[0]),
                                                       Bearing<Magnetic>::degrees((*both)[1])))}};
}

FormAnswer agreement_check(const Form& form) {
  const auto typed = numbers(form, Field::OneWay_deg, Field::OneWayError_deg, Field::OtherWay_deg,
                             Field::OtherWayError_deg);
  if (!typed) return {};
  const auto [one, one_error, other, other_error] = *typed;
  const auto agreement = compare_headings(Bearing<True>::degrees(one), one_error,
                                          Bearing<True>::degrees(other), other_error);
  if (!agreement) return in_trouble(agreement.error());
  return {.lines = {words::agreement(*agreement)}};
}

}  // namespace

void update(AimState& state, Shared& shared, const Action& action) {
  visit(action, AimActions{}, AimUpdater(state, shared));
}

void derive(AimState& state, const Shared& shared) {
  state = AimState{.dial_up = state.dial_up};
  const bool on_aim = shared.place == Place::Aim && shared.sheet == Sheet::None;
  if (on_aim || shared.sheet == Sheet::Ways) derive_ways(state, shared);
  if (shared.sheet == Sheet::Checks) {
    state.reciprocal = reciprocal_check(shared.form);
    state.agreement = agreement_check(shared.form);
  }
  if (shared.sheet == Sheet::Handle) state.handle = handle_turn(shared);
}

}  // namespace mastwise
