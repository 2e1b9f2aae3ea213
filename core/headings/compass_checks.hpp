#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace mastwise {

// Two spots, each sighted from the other with the same compass.
struct ReciprocalCheck {
  Turn disagreement;  // the second reading minus the reciprocal of the first
  bool agree;         // within kReciprocalTolerance_deg of 180 degrees
  // If they disagree, the deviation (east positive) at one spot if the other has none. Two readings
  // cannot tell which spot has it.
  std::optional<Turn> deviation_if_at_first;
  std::optional<Turn> deviation_if_at_second;
};

// Common practice, no source.
constexpr double kReciprocalTolerance_deg = 2.0;

// The deviation that may remain, one sigma, degrees, where two readings agree: both spots have the
// independent deviation `deviation_deg`, and each reading errs by `reading_deg` (over 0). The
// readings tell only the difference D of two deviations of variance d^2, so the first keeps d^2 -
// d^4 / (2 d^2 + 2 r^2), never less than half of its variance. Source: conditional variance of a
// normal pair.
double deviation_after_reciprocal_deg(double deviation_deg, double reading_deg);

// A check of the compass against something whose direction is known. It holds for the spot.
enum class CompassCheckBy : std::uint8_t { sun, star, landmark };

// How much less sure a check is after a time and at a distance from where it was made, one sigma,
// degrees: the earth's field wanders in a day, things are moved, and iron differs from spot to
// spot. Our choice, no source. Both at least 0.
double check_age_sigma_deg(double hours, double moved_m);
constexpr double kCheckDrift_deg_per_h = 0.25;
constexpr double kCheckDrift_deg_per_100m = 1.0;

// Two independent estimates of one figure, both one sigma over 0: 1 / sqrt(1/a^2 + 1/b^2), the
// error of their weighted mean.
double joint_sigma_deg(double first_deg, double second_deg);

// `first_to_second` is read at the first spot, `second_to_first` at the second. A compass with a
// deviation of d east reads d too low.
ReciprocalCheck check_reciprocal(Bearing<Magnetic> first_to_second,
                                 Bearing<Magnetic> second_to_first);

// A source of compass deviation.
enum class NeedlePull { vehicle, wire_fence, power_line };

// The distance to keep between it and the compass.
struct KeepAway {
  NeedlePull from;
  double least_m;
  std::optional<double> better_m;
  std::string_view source;
};
// Sorted by distance.
std::span<const KeepAway> keep_away_distances();

// Whether two measurements of one direction can both be right.
enum class Verdict {
  agree,         // within one sigma of their difference
  agree_poorly,  // within two
  in_doubt,      // within three
  one_is_wrong,  // beyond
};

struct Agreement {
  Turn difference;   // the second minus the first
  double sigma_deg;  // of the difference: the root of the sum of both squares
  double sigmas;     // the difference in sigmas
  Verdict verdict;
  bool operator==(const Agreement&) const = default;
};

// Both sigmas in degrees, finite, at least 0 and not both 0; the error names the fault. For
// independent normal errors 68, 95 and 99.7 % of differences are within one, two and three sigma.
// An error that both methods share (such as the rig's heading) makes them agree too well.
Result<Agreement> compare_headings(Turn second_less_first, double first_sigma_deg,
                                   double second_sigma_deg);
// The two directions must be relative to the same north or dial.
template <class North>
Result<Agreement> compare_headings(Bearing<North> first, double first_sigma_deg,
                                   Bearing<North> second, double second_sigma_deg) {
  return compare_headings(second - first, first_sigma_deg, second_sigma_deg);
}

enum class NorthMistakeKind {
  map_north_as_magnetic,  // a compass follows the true bearing: off by D
  declination_twice,      // the magnetic bearing on a compass that is set for D: off by -D
  wrong_sign,             // D added instead of subtracted: off by 2 D
};

// A common mistake with north, and where the antenna then points.
struct NorthMistake {
  NorthMistakeKind kind = NorthMistakeKind::map_north_as_magnetic;
  Bearing<True> heading;  // the correct one, and what a plain compass reads along it
  Bearing<Magnetic> magnetic;
  Bearing<True> aims_at;
  Bearing<Magnetic> needle;  // what a plain compass reads along that aim
  Turn off;                  // from the correct heading; clockwise is to the right
  bool operator==(const NorthMistake&) const = default;
};

struct NorthMistakes {
  NorthMistake map_north_as_magnetic, declination_twice, wrong_sign;
};

// The results of the mistakes with north for a heading here.
NorthMistakes north_mistakes(Bearing<True> heading, Declination declination);

}  // namespace mastwise
