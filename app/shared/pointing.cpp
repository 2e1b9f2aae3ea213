#include "app/shared/dial_checks.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {
namespace {

// In whole days: as milliseconds the least floor would overflow.
bool before_floor(const Shared& shared) {
  return std::chrono::floor<std::chrono::days>(shared.machine_time) < shared.clock_floor;
}

// The deviation where the compass is read, and what the checks at this stop leave of it.
void set_deviation(const Shared& shared, HeadingContext& context) {
  const Findings& found = shared.findings;
  context.deviation_sigma_deg = unchecked_deviation_deg(shared, context.standing);
  if (!found.compass_check || !found.compass_check->usable()) return;
  const double check_deg = found.compass_check->correction->sigma_deg;
  const auto& place_deg = context.deviation_sigma_deg;
  context.deviation_sigma_deg =
      found.compass_agrees && place_deg ? joint_sigma_deg(*place_deg, check_deg) : check_deg;
  context.deviation_source = kCheckedSource;
}

}  // namespace

double clock_error_min(const Shared& shared) {
  constexpr double kMachineClock_min = 1.0;
  return shared.receiver.fix(shared.now).utc ? 0.0 : kMachineClock_min;
}

UtcTime moment_of(const Shared& shared) {
  const auto utc = shared.receiver.fix(shared.now).utc;
  if (utc) return *utc;
  if (!before_floor(shared)) return shared.machine_time;
  return UtcTime(shared.clock_floor) + shared.now.time_since_epoch();
}

bool clock_is_wrong(const Shared& shared) {
  if (before_floor(shared)) return true;
  const auto& trusted = shared.receiver.date();
  if (!trusted || shared.link.recorded) return false;
  // The receiver's date is of the last fix; yesterday's fix does not make the clock wrong.
  const auto today = std::chrono::floor<std::chrono::days>(shared.machine_time);
  return std::chrono::abs(today - trusted->date) > std::chrono::days(1) &&
         shared.receiver.fix(shared.now).utc.has_value();
}

std::optional<Bearing<Magnetic>> on_compass_here(const Shared& shared, Bearing<True> bearing) {
  const Findings& found = shared.findings;
  if (!found.field) return std::nullopt;
  if (found.compass_check && found.compass_check->usable() && !found.compass_agrees) {
    return as_magnetic(aim::to_dial(bearing, *found.compass_check->correction));
  }
  return to_magnetic(bearing, found.field->declination);
}

double nose_sigma_deg(const Shared& shared, const Nose& nose) {
  if (nose.origin != Nose::Origin::ByHand) return nose.sigma_deg;
  const auto& field = shared.findings.field;
  if (!field) return kUnsaidHeading_deg;
  return typed_heading_sigma_deg(nose.read_at, field->declination_sigma_deg, field->horizontal_nt);
}

HeadingContext heading_context(const Shared& shared) {
  return heading_context(shared, shared.stop.standing);
}

HeadingContext heading_context(const Shared& shared, std::optional<Standing> standing) {
  const Findings& found = shared.findings;
  HeadingContext context;
  if (found.card) context.distance_m = found.card->distance_m;
  const auto parked = shared.parked.result();
  const bool by_hand = shared.stop.source == PositionSource::ByHand;
  context.stop_error_m = kTypedPosition_m;
  if (by_hand) {
    context.stop_error_m = shared.stop.by_hand_error_m;
  } else if (parked && parked->scatter_m) {
    context.stop_error_m = *parked->scatter_m;
  }
  context.transmitter_error_m = kTransmitter_m;
  if (!by_hand && parked) context.walk_end_error_m = kWalkEnd_m;
  if (found.field) context.declination_sigma_deg = found.field->declination_sigma_deg;
  context.sensor_deviation = found.sensor_deviation;
  context.standing = standing;
  set_deviation(shared, context);
  const auto& iron = shared.tablet_iron.fit;
  if (standing && found.field && motion::usable(iron) && !shared.settings.tablet_points.empty()) {
    context.tablet =
        TabletErrors{.reading_deg = motion::usual_sigma_deg(*iron, found.field->inclination_deg),
                     .deviation_deg = deviation_sigma_deg(*standing, found.field->horizontal_nt)};
  }
  if (shared.stop.nose) context.rig_heading_sigma_deg = nose_sigma_deg(shared, *shared.stop.nose);
  if (shared.settings.handle) {
    if (const auto handle = handle_of(*shared.settings.handle)) {
      context.handle_zero_sigma_deg = handle->sigma_deg();
      context.handle_play_deg = handle->mechanism().play_deg;
    }
  }
  return context;
}

}  // namespace mastwise
