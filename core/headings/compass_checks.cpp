#include "core/headings/compass_checks.hpp"

#include <array>
#include <cmath>

namespace mastwise {
namespace {

constexpr std::string_view kTradition = "field-manual tradition, common practice, no source";

constexpr std::array kKeepAway{
    KeepAway{NeedlePull::vehicle, 5.0, 18.0, kTradition},
    KeepAway{NeedlePull::wire_fence, 10.0, std::nullopt, kTradition},
    KeepAway{NeedlePull::power_line, 55.0, std::nullopt, kTradition},
};

Verdict verdict_of(double sigmas) {
  if (sigmas <= 1.0) return Verdict::agree;
  if (sigmas <= 2.0) return Verdict::agree_poorly;
  return sigmas <= 3.0 ? Verdict::in_doubt : Verdict::one_is_wrong;
}

NorthMistake mistake(NorthMistakeKind kind, Bearing<True> heading, Declination declination,
                     double off_deg) {
  const Turn off = Turn::clockwise_deg(off_deg);
  const Bearing<True> aims_at = heading + off;
  return {.kind = kind,
          .heading = heading,
          .magnetic = to_magnetic(heading, declination),
          .aims_at = aims_at,
          .needle = to_magnetic(aims_at, declination),
          .off = off};
}

}  // namespace

ReciprocalCheck check_reciprocal(Bearing<Magnetic> first_to_second,
                                 Bearing<Magnetic> second_to_first) {
  const Turn disagreement = second_to_first - first_to_second.reciprocal();
  ReciprocalCheck check{.disagreement = disagreement,
                        .agree = disagreement.size_deg() <= kReciprocalTolerance_deg,
                        .deviation_if_at_first = std::nullopt,
                        .deviation_if_at_second = std::nullopt};
  if (check.agree) return check;
  check.deviation_if_at_first = disagreement;
  check.deviation_if_at_second = -disagreement;
  return check;
}

double deviation_after_reciprocal_deg(double deviation_deg, double reading_deg) {
  const double variance = deviation_deg * deviation_deg;
  const double of_difference = 2.0 * (variance + reading_deg * reading_deg);
  return std::sqrt(variance - variance * variance / of_difference);
}

double check_age_sigma_deg(double hours, double moved_m) {
  return std::hypot(kCheckDrift_deg_per_h * hours, kCheckDrift_deg_per_100m * moved_m / 100.0);
}

double joint_sigma_deg(double first_deg, double second_deg) {
  return first_deg * second_deg / std::hypot(first_deg, second_deg);
}

std::span<const KeepAway> keep_away_distances() {
  return kKeepAway;
}

Result<Agreement> compare_headings(Turn difference, double first_sigma_deg,
                                   double second_sigma_deg) {
  const double sigma_deg = std::hypot(first_sigma_deg, second_sigma_deg);
  const bool usable = first_sigma_deg >= 0.0 && second_sigma_deg >= 0.0 &&
                      std::isfinite(sigma_deg) && sigma_deg > 0.0;
  if (!usable) {
    return Error{
        .what = "the errors of the two directions must be 0 degrees or more, and not both 0",
        .where = "comparison of two directions",
        .remedy = "enter how far off each may be"};
  }
  const double sigmas = difference.size_deg() / sigma_deg;
  return Agreement{.difference = difference,
                   .sigma_deg = sigma_deg,
                   .sigmas = sigmas,
                   .verdict = verdict_of(sigmas)};
}

NorthMistakes north_mistakes(Bearing<True> heading, Declination declination) {
  using enum NorthMistakeKind;
  const double east_deg = declination.east_deg();
  return {.map_north_as_magnetic = mistake(map_north_as_magnetic, heading, declination, east_deg),
          .declination_twice = mistake(declination_twice, heading, declination, -east_deg),
          .wrong_sign = mistake(wrong_sign, heading, declination, 2.0 * east_deg)};
}

}  // namespace mastwise
