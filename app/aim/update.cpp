#include "app/aim/update.hpp"

#include "app/aim/compass_check.hpp"
#include "app/aim/handle.hpp"
#include "app/aim/moved.hpp"
#include "app/shared/actions.hpp"
#include "app/words/checks.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/sky/guide_bodies.hpp"
#include "core/sky/sun.hpp"
#include "core/sky/sun_marks.hpp"

#include <algorithm>
#include <cmath>
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
  void operator()(const act::ForgetTablet&) {
    remember(shared_, "Tablet compass deleted")
        .also.push_back(act::TabletBack{shared_.settings.tablet_points});
    shared_.settings.tablet_points.clear();
    shared_.tablet_iron.seen.clear();
  }
  void operator()(const act::TabletBack& back) { shared_.settings.tablet_points = back.points; }
  void operator()(const act::ForgetCorrection&) {
    remember(shared_, "Correction deleted");
    shared_.stop.strong_stations.clear();
    shared_.stop.sights.clear();
    shared_.stop.reciprocal.reset();
  }
  void operator()(const act::StandAt& stand) {
    remember(shared_, "Place to stand");
    shared_.stop.standing = stand.standing;
  }
  void operator()(const act::CheckCompass& check) {
    const auto read = shared_.form.number(Field::CompassRead_deg);
    const auto known = std::find_if(state_.known.begin(), state_.known.end(),
                                    [&](const KnownDirection& one) { return one.by == check.by; });
    if (!read || known == state_.known.end()) return;
    remember(shared_, "Compass checked");
    std::erase_if(shared_.stop.sights, [&](const CompassSight& one) { return one.by == check.by; });
    shared_.stop.sights.push_back(sight_of(shared_, *known, *read));
    shared_.form.numbers.erase(Field::CompassRead_deg);
  }
  void operator()(const act::KeepReciprocal&) {
    const auto both = numbers(shared_.form, Field::ThereBearing_deg, Field::BackBearing_deg);
    if (!both || !shared_.findings.position) return;
    remember(shared_, "Compass checked");
    const auto check = check_reciprocal(Bearing<Magnetic>::degrees((*both)[0]),
                                        Bearing<Magnetic>::degrees((*both)[1]));
    shared_.stop.reciprocal = KeptReciprocal{.disagreement_deg = check.disagreement.clockwise_deg(),
                                             .taken_at = *shared_.findings.position,
                                             .standing = shared_.stop.standing,
                                             .at = moment_of(shared_)};
  }
  void operator()(const act::CompassIsSet&) {
    if (!shared_.findings.field) return;
    shared_.settings.compass_set = CompassSetting{shared_.findings.field->declination.east_deg()};
  }

 private:
  AimState& state_;
  Shared& shared_;
};

constexpr double kUsualWalk_m = 100.0;

// The search takes milliseconds, so it holds for ten minutes and while the rig stays within about a
// kilometer, which moves the sun by 0.01 degree.
bool still_holds(const SkyAhead& sky, Position position, Bearing<True> heading, UtcTime from) {
  constexpr double kSamePlace_deg = 0.01, kSameHeading_deg = 0.05;
  return sky.from == from &&
         std::fabs(sky.position.latitude_deg() - position.latitude_deg()) <= kSamePlace_deg &&
         std::fabs(sky.position.longitude_deg() - position.longitude_deg()) <= kSamePlace_deg &&
         (sky.heading - heading).size_deg() <= kSameHeading_deg;
}

void look_ahead(std::optional<SkyAhead>& sky, Position position, Bearing<True> heading,
                UtcTime now) {
  const UtcTime from =
      std::chrono::floor<std::chrono::duration<std::int64_t, std::ratio<600>>>(now);
  if (sky && still_holds(*sky, position, heading, from)) return;
  sky = SkyAhead{.position = position,
                 .heading = heading,
                 .from = from,
                 .marks = sky::sun_marks(position, from, heading)};
  for (const sky::Guide& guide : sky::guides_now(position, from)) sky->guides.push_back(guide.body);
}

void add_sky(SayingInputs& inputs, const SkyAhead& sky) {
  constexpr std::size_t kMarks = 4, kGuides = 3;
  for (const sky::SunMark& mark : sky.marks) {
    if (mark.time > inputs.now && inputs.sun_marks.size() < kMarks)
      inputs.sun_marks.push_back(mark);
  }
  for (const sky::GuideBody body : sky.guides) {
    if (inputs.guides.size() == kGuides) break;
    const sky::Guide guide = sky::guide_at(body, inputs.from, inputs.now);
    if (!guide.why_none) inputs.guides.push_back(guide);
  }
}

SayingInputs saying_inputs(const Shared& shared, const SkyAhead& sky) {
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
  inputs.landmark = landmark_of(shared);
  inputs.now = moment_of(shared);
  inputs.context.clock_error_min = clock_error_min(shared);
  const sky::SunPlace sun = sky::sun_at(*found.position, inputs.now);
  if (!sky::why_no_shadow(sun)) {
    const auto later = sky::sun_at(*found.position, inputs.now + std::chrono::minutes(5));
    inputs.sun = SunNow{sun.azimuth, later.azimuth};
  }
  add_sky(inputs, sky);
  return inputs;
}

void derive_ways(AimState& state, const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.card || !found.position) return;
  look_ahead(state.sky, *found.position, found.card->bearing_true, moment_of(shared));
  Sayings said = say_heading(saying_inputs(shared, *state.sky));
  state.ways = std::move(said.sayings);
  state.ways_left_out = std::move(said.left_out);
  if (found.field) {
    state.mistake =
        north_mistakes(found.card->bearing_true, found.field->declination).map_north_as_magnetic;
  }
}

// The zones wander by tens of kilometers a year, which the small globe does not show.
void find_weak_fields(std::optional<WeakFields>& weak, const World& world, UtcTime date) {
  const auto month = std::chrono::floor<std::chrono::months>(date);
  if (weak && weak->month == month) return;
  weak = WeakFields{.month = month, .around_poles = weak_fields(world.magnetic, date)};
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
  if (const auto* found = action.get_if<act::StationsFound>()) follow_move(state, found->answer);
}

void derive(AimState& state, const Shared& shared, const World& world) {
  state = AimState{.reached = std::move(state.reached),
                   .moved = std::move(state.moved),
                   .dial_up = state.dial_up,
                   .sky = std::move(state.sky),
                   .weak = std::move(state.weak)};
  const bool on_aim = shared.place == Place::Aim && shared.sheet == Sheet::None;
  if (on_aim || shared.sheet == Sheet::Ways) derive_ways(state, shared);
  state.ring_turn = ring_turn(shared);
  state.anomaly = local_anomaly(shared);
  if (shared.sheet == Sheet::Checks) {
    const Findings& found = shared.findings;
    if (found.card && found.position) {
      look_ahead(state.sky, *found.position, found.card->bearing_true, moment_of(shared));
    }
    state.known = known_directions(shared, state.sky);
    state.compass_read = shared.form.number(Field::CompassRead_deg).has_value();
    state.reciprocal = reciprocal_check(shared.form);
    state.agreement = agreement_check(shared.form);
  }
  if (shared.sheet == Sheet::Handle) state.handle = handle_turn(shared);
  if (shared.sheet == Sheet::Needle) find_weak_fields(state.weak, world, shared.findings.date);
}

}  // namespace mastwise
