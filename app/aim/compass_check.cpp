#include "app/aim/compass_check.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"
#include "core/sky/sun.hpp"

#include <cmath>

namespace mastwise {
namespace {

std::optional<KnownDirection> along_shadow(const Shared& shared) {
  const sky::Shadow shadow = sky::plumb_shadow(*shared.findings.position, moment_of(shared));
  if (shadow.why_none) return std::nullopt;
  const double clock_deg = clock_error_min(shared) * std::fabs(shadow.error_per_clock_minute_deg);
  return KnownDirection{.by = CompassCheckBy::sun,
                        .bearing = shadow.sun.azimuth.reciprocal(),
                        .sigma_deg = std::hypot(kSight_deg, clock_deg)};
}

std::optional<KnownDirection> toward_star(const Shared& shared, const SkyAhead& sky) {
  for (const sky::GuideBody body : sky.guides) {
    const sky::Guide guide = sky::guide_at(body, *shared.findings.position, moment_of(shared));
    if (guide.why_none) continue;
    const double clock_deg = clock_error_min(shared) * std::fabs(guide.turn_deg_per_min);
    return KnownDirection{
        .by = CompassCheckBy::star,
        .bearing = guide.azimuth,
        .sigma_deg = std::hypot(star_sight_deg(guide.apparent_altitude_deg), clock_deg),
        .body = body};
  }
  return std::nullopt;
}

std::optional<KnownDirection> toward_landmark(const Shared& shared) {
  const auto landmark = landmark_of(shared);
  if (!landmark) return std::nullopt;
  const auto stop_m = heading_context(shared).stop_error_m.value_or(kTypedPosition_m);
  const double error_m = std::hypot(landmark->error_m, stop_m);
  const PathBetween path = path_between(*shared.findings.position, landmark->position);
  if (path.distance_m <= error_m) return std::nullopt;
  return KnownDirection{
      .by = CompassCheckBy::landmark,
      .bearing = path.bearing,
      .sigma_deg = std::hypot(kSight_deg, angle_of_error_deg(error_m, path.distance_m))};
}

}  // namespace

std::optional<Landmark> landmark_of(const Shared& shared) {
  const auto place = shared.form.place(Field::LandmarkPlace);
  if (!place) return std::nullopt;
  const std::string name = shared.form.name(Field::LandmarkPlace);
  return Landmark{.name = name,
                  .town = !name.empty(),
                  .position = *place,
                  .error_m = name.empty() ? kTransmitter_m : kDotOfTown_m};
}

std::vector<KnownDirection> known_directions(const Shared& shared,
                                             const std::optional<SkyAhead>& sky) {
  std::vector<KnownDirection> known;
  if (!shared.findings.position) return known;
  if (const auto shadow = along_shadow(shared)) known.push_back(*shadow);
  if (const auto star = sky ? toward_star(shared, *sky) : std::nullopt) known.push_back(*star);
  if (const auto landmark = toward_landmark(shared)) known.push_back(*landmark);
  return known;
}

CompassSight sight_of(const Shared& shared, const KnownDirection& known, double read_deg) {
  return {.by = known.by,
          .bearing = known.bearing,
          .bearing_sigma_deg = known.sigma_deg,
          .read = Bearing<Magnetic>::degrees(read_deg),
          .taken_at = *shared.findings.position,
          .standing = shared.stop.standing,
          .at = moment_of(shared)};
}

std::optional<Turn> ring_turn(const Shared& shared) {
  const auto& set = shared.settings.compass_set;
  if (!set || !shared.findings.field) return std::nullopt;
  constexpr double kHalfMark_deg = 0.5;
  const double here_deg = shared.findings.field->declination.east_deg();
  const Turn turn = Turn::clockwise_deg(here_deg - set->east_deg);
  if (turn.size_deg() <= kHalfMark_deg) return std::nullopt;
  return turn;
}

bool local_anomaly(const Shared& shared) {
  const Findings& found = shared.findings;
  if (shared.stop.standing != Standing::well_clear || !found.field) return false;
  if (!found.compass_check || !found.compass_check->usable() || found.compass_agrees) return false;
  constexpr double kSigmas = 3.0;
  return found.compass_check->off.size_deg() >
         kSigmas * std::hypot(found.field->declination_sigma_deg,
                              found.compass_check->correction->sigma_deg);
}

}  // namespace mastwise
